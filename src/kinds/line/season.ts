// A gravity line's share in the season.

import type { SeasonShare } from "../season-share.ts";

export const lineSeason: SeasonShare = {
  ties: [
    {
      kind: "feeds",
      from: ["from"],
      to: ["to"],
      passes: { blocked: "blocked", over: "must_stand_over", brim: "full_source" },
    },
  ],
};
