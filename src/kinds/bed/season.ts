// A bed's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const bedSeason: SeasonShare = {
  role: "bed",
  ties: [{ kind: "waters", from: ["watered_by"], to: "itself" }],
};
