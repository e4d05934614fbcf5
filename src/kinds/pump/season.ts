// A pump's share in the season: it drives its hoses with what drives it.

import type { SeasonShare } from "../season-share.ts";

export const pumpSeason: SeasonShare = {
  role: "pump",
  ties: [{ kind: "powers", from: ["powered_by"], to: "itself" }],
};
