// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const PUMP_SPANS: Spans = {
  open_flow: [
    [200, "gph"],
    [3000, "gph"],
  ],
  shutoff_head: [
    [1, "m"],
    [8, "m"],
  ],
  believed_share: [
    [50, "%"],
    [100, "%"],
  ],
  rated_voltage: [
    [10, "V"],
    [16, "V"],
  ],
  rated_current: [
    [1, "A"],
    [15, "A"],
  ],
  lowest_water: [
    [0, "cm"],
    [10, "cm"],
  ],
  no_load_current: [
    [0, "A"],
    [1, "A"],
  ],
};
