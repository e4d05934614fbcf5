// A joint's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const teeSeason: SeasonShare = { role: "joint" };
