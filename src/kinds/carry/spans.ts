// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const CARRY_SPANS: Spans = {
  can_volume: [
    [1, "gal"],
    [5, "gal"],
  ],
  can_weight: [
    [0.5, "lb"],
    [6, "lb"],
  ],
  cans_at_once: [
    [1, "1"],
    [3, "1"],
  ],
  distance: [
    [5, "ft"],
    [300, "ft"],
  ],
  weight_limit: [
    [10, "lb"],
    [60, "lb"],
  ],
  pace: [
    [1, "ft/s"],
    [5, "ft/s"],
  ],
  fill_time: [
    [5, "s"],
    [120, "s"],
  ],
  pour_time: [
    [10, "s"],
    [120, "s"],
  ],
};
