// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const SEASON_SPANS: Spans = {
  hold_days: [
    [0, "1"],
    [30, "1"],
  ],
  dip_doubt: [
    [0, "in"],
    [2, "in"],
  ],
};
