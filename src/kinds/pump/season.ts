// A pump's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const pumpSeason: SeasonShare = {
  role: "pump",
  ties: [{ kind: "powers", from: ["powered_by"], to: "itself" }],
};
