// How well the sky's numbers are known, and what measures them.

import type { Doubtful } from "../doubtful.ts";

export const doubts: Doubtful = {
  measuring: { rain_scale: { with: "gauge", how: "put up a rain gauge of your own" } },
};
