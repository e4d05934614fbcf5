// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const PANEL_SPANS: Spans = {
  rated_power: [
    [5, "W"],
    [400, "W"],
  ],
  health: [
    [40, "%"],
    [100, "%"],
  ],
  count: [
    [1, "1"],
    [6, "1"],
  ],
  tilt: [
    [0, "deg"],
    [90, "deg"],
  ],
  azimuth: [
    [0, "deg"],
    [360, "deg"],
  ],
  losses: [
    [0, "1"],
    [0.5, "1"],
  ],
  dirt: [
    [0, "%"],
    [30, "%"],
  ],
};
