// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const WIRE_SPANS: Spans = {
  one_way_length: [
    [2, "ft"],
    [100, "ft"],
  ],
  wire_temperature: [
    [0, "degC"],
    [75, "degC"],
  ],
  wanted_drop: [
    [1, "%"],
    [10, "%"],
  ],
};
