// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const ROOF_SPANS: Spans = {
  footprint: [
    [50, "ft2"],
    [4000, "ft2"],
  ],
  length: [
    [6, "ft"],
    [100, "ft"],
  ],
  width: [
    [4, "ft"],
    [60, "ft"],
  ],
  overhang: [
    [0, "ft"],
    [3, "ft"],
  ],
  runoff_coefficient: [
    [0.3, "1"],
    [0.95, "1"],
  ],
  wetting_loss: [
    [0, "mm"],
    [2, "mm"],
  ],
  first_flush: [
    [0, "mm"],
    // As far as its table is not sure of it.
    [3, "mm"],
  ],
  design_storm: [
    [1, "in/h"],
    [10, "in/h"],
  ],
  downspout_diameter: [
    [2, "in"],
    [6, "in"],
  ],
  downspout_count: [
    [1, "1"],
    [6, "1"],
  ],
  standpipe_bore: [
    [2, "in"],
    [8, "in"],
  ],
};
