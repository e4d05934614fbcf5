// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const FILTER_SPANS: Spans = {
  k: [
    [0.2, "1"],
    [200, "1"],
  ],
  clogged_share: [
    [0, "%"],
    [90, "%"],
  ],
  clean_every: [
    [1, "day"],
    [120, "day"],
  ],
  clean_passes: [
    [50, "%"],
    [100, "%"],
  ],
};
