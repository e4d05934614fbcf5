// Cans and their share in the season.

import type { SeasonShare } from "../season-share.ts";

export const carrySeason: SeasonShare = {
  role: "waterer",
  ties: [{ kind: "draws", from: ["from"], to: "itself" }],
};
