// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const TEE_SPANS: Spans = {
  height: [
    [-10, "ft"],
    [30, "ft"],
  ],
};
