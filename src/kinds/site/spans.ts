// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const SITE_SPANS: Spans = {
  latitude: [
    [-60, "deg"],
    [65, "deg"],
  ],
  elevation: [
    [0, "m"],
    [3000, "m"],
  ],
  minutes_per_day: [
    [10, "min"],
    [240, "min"],
  ],
  water_at: [
    [4, "h"],
    [21, "h"],
  ],
  water_temperature: [
    [5, "degC"],
    [30, "degC"],
  ],
};
