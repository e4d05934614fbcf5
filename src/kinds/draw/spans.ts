// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const DRAW_SPANS: Spans = {
  volume: [
    [0.5, "gal"],
    [100, "gal"],
  ],
  every: [
    [1, "day"],
    [14, "day"],
  ],
};
