// A tank's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const tankSeason: SeasonShare = {
  role: "tank",
  ties: [{ kind: "spills", from: "itself", to: ["overflows_to"] }],
};
