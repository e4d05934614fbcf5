// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const BED_SPANS: Spans = {
  length: [
    [4, "ft"],
    [100, "ft"],
  ],
  width: [
    [1.5, "ft"],
    [20, "ft"],
  ],
  pot_count: [
    [1, "1"],
    [100, "1"],
  ],
  pot_volume: [
    [0.5, "gal"],
    [25, "gal"],
  ],
  pot_spread: [
    [0.25, "ft2"],
    [10, "ft2"],
  ],
  plant_spread: [
    [0.25, "ft2"],
    [10, "ft2"],
  ],
  root_depth: [
    [6, "in"],
    [36, "in"],
  ],
  wetted_share: [
    [20, "%"],
    [100, "%"],
  ],
  young_days: [
    [0, "1"],
    [30, "1"],
  ],
  cover_factor: [
    [0.4, "1"],
    [1, "1"],
  ],
  cover_light: [
    [30, "%"],
    [95, "%"],
  ],
  wetted_every: [
    [1, "day"],
    [14, "day"],
  ],
  wetted_depth: [
    [0.1, "in"],
    [2, "in"],
  ],
  worth_weight: [
    [1, "1"],
    [10, "1"],
  ],
  efficiency: [
    [40, "%"],
    [95, "%"],
  ],
  priority: [
    [1, "1"],
    [10, "1"],
  ],
  fixed_volume: [
    [2, "gal"],
    [200, "gal"],
  ],
  fixed_every: [
    [1, "day"],
    [14, "day"],
  ],
  let_go_dry_days: [
    [3, "1"],
    [60, "1"],
  ],
  usual_volume: [
    [2, "gal"],
    [200, "gal"],
  ],
};
