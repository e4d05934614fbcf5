// What else is drawn, and its share in the season.

import type { SeasonShare } from "../season-share.ts";

export const drawSeason: SeasonShare = {
  role: "draw",
  ties: [{ kind: "draws", from: ["from"], to: "itself" }],
};
