// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const DELIVERY_SPANS: Spans = {
  hose_length: [
    [5, "ft"],
    [300, "ft"],
  ],
  hose_bore: [
    [0.375, "in"],
    [1.5, "in"],
  ],
  fittings_k: [
    [0, "1"],
    [20, "1"],
  ],
  head_k: [
    [0, "1"],
    [200, "1"],
  ],
  rose_holes: [
    [5, "1"],
    [300, "1"],
  ],
  rose_hole: [
    [0.5, "mm"],
    [4, "mm"],
  ],
  tank_share: [
    [5, "%"],
    [100, "%"],
  ],
  lowest_water: [
    [0, "in"],
    [6, "in"],
  ],
  outlet_height: [
    [-5, "ft"],
    [30, "ft"],
  ],
  set_up: [
    [0, "min"],
    [20, "min"],
  ],
};
