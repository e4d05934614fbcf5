// A battery's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const batterySeason: SeasonShare = { role: "battery" };
