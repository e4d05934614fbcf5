// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const WEATHER_SPANS: Spans = {
  rain_scale: [
    [0.5, "1"],
    [1.5, "1"],
  ],
  eto_factor: [
    [0.7, "1"],
    [1.3, "1"],
  ],
  pan_coefficient: [
    [0.35, "1"],
    [0.85, "1"],
  ],
  years: [
    [5, "1"],
    [40, "1"],
  ],
};
