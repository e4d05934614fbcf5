// A bed's share in the season.

import type { SeasonShare } from "../season-share.ts";
import { takes } from "../season-share.ts";
import { BED_ROWS } from "./rows.ts";
import { bedPart } from "./season-part.ts";

export const bedSeason: SeasonShare = {
  role: "bed",
  ties: [{ kind: "waters", from: ["watered_by"], to: "itself" }],
  // What of them must be ready, its part itself says.
  may: BED_ROWS,
  takes: takes("beds", bedPart),
};
