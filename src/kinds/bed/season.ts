// A bed's share in the season.

import { gives, type SeasonShare, takes } from "../season-share.ts";
import { bedGets } from "./gets.ts";
import { BED_ROWS } from "./rows.ts";
import { bedPart } from "./season-part.ts";

export const bedSeason: SeasonShare = {
  role: "bed",
  ties: [{ kind: "waters", from: ["watered_by"], to: "itself" }],
  // What of them must be ready, its part itself says.
  may: BED_ROWS,
  takes: takes("beds", bedPart),
  gives: gives("beds", bedGets),
};
