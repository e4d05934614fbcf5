// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const LINE_SPANS: Spans = {
  length: [
    [5, "ft"],
    [1000, "ft"],
  ],
  bore: [
    [0.25, "in"],
    [2, "in"],
  ],
  valve_bore: [
    [1.5, "mm"],
    [25, "mm"],
  ],
  shut_level: [
    [2, "in"],
    [60, "in"],
  ],
  reference_share: [
    [5, "%"],
    [100, "%"],
  ],
  fittings_k: [
    [0, "1"],
    [30, "1"],
  ],
  valve_coefficient: [
    [0.4, "1"],
    [0.9, "1"],
  ],
  valve_band: [
    [5, "mm"],
    [150, "mm"],
  ],
};
