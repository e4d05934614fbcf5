// A panel's share in the season: batteries and pumps are made with what it says.

import type { SeasonShare } from "../season-share.ts";

export const panelSeason: SeasonShare = {
  role: "panel",
  ties: [{ kind: "charges", from: "itself", to: ["charges"] }],
  may: ["charge_months", "supply"],
};
