// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const TANK_SPANS: Spans = {
  capacity: [
    [20, "gal"],
    [5000, "gal"],
  ],
  count: [
    [1, "1"],
    [12, "1"],
  ],
  water_height: [
    [12, "in"],
    [96, "in"],
  ],
  diameter: [
    [12, "in"],
    [144, "in"],
  ],
  length: [
    [1, "ft"],
    [12, "ft"],
  ],
  width: [
    [1, "ft"],
    [8, "ft"],
  ],
  ground_height: [
    [-10, "ft"],
    [30, "ft"],
  ],
  stand_height: [
    [0, "ft"],
    [6, "ft"],
  ],
  outlet_height: [
    [0, "in"],
    [12, "in"],
  ],
  start_share: [
    [0, "%"],
    [100, "%"],
  ],
  leak: [
    [0, "gal/day"],
    [20, "gal/day"],
  ],
};
