// How well a line's numbers are known, and what measures them.

import type { Doubtful, Measuring } from "../doubtful.ts";

const TIMED: Measuring = {
  with: "bucket",
  how: "time a bucket at its lower end",
  into: ["flow", "refill_time"],
};

export const doubts: Doubtful = {
  measuring: { valve_bore: TIMED, valve_coefficient: TIMED, fittings_k: TIMED, bore: TIMED },
};
