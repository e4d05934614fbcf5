// A panel's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const panelSeason: SeasonShare = {
  role: "panel",
  ties: [{ kind: "charges", from: "itself", to: ["charges"] }],
};
