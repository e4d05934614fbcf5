// A roof's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const roofSeason: SeasonShare = {
  role: "roof",
  ties: [{ kind: "catches", from: "itself", to: ["drains_to"] }],
};
