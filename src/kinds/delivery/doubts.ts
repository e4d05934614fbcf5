// How well a hose's numbers are known, and what measures them.

import type { Doubtful, Measuring } from "../doubtful.ts";

const TIMED: Measuring = {
  with: "bucket",
  how: "time a bucket at the end of its hose",
  into: ["bucket_time"],
};

export const doubts: Doubtful = {
  measuring: {
    hose_bore: TIMED,
    fittings_k: TIMED,
    head_k: TIMED,
    set_up: { with: "clock", how: "look at the clock the next time" },
  },
};
