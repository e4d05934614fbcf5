// A roof's share in the season.

import { readyNumber, readyWord } from "../../graph/readers.ts";
import { idOrNull, type SeasonShare, takes } from "../season-share.ts";

export const roofSeason: SeasonShare = {
  role: "roof",
  ties: [{ kind: "catches", from: "itself", to: ["drains_to"] }],
  must: ["catching_area", "coefficient_in_use", "losses", "wetting_loss", "first_flush"],
  may: ["drains_to", "catch_from", "catch_until"],
  takes: takes("roofs", (id, results) => {
    const inCoefficient = readyWord(results, "losses") === "in_coefficient";
    return {
      id,
      footprint: readyNumber(results, "catching_area"),
      runoffCoefficient: readyNumber(results, "coefficient_in_use"),
      wettingLoss: inCoefficient ? 0 : readyNumber(results, "wetting_loss"),
      firstFlush: inCoefficient ? 0 : readyNumber(results, "first_flush"),
      drainsTo: idOrNull(readyWord(results, "drains_to")),
      catchFrom: idOrNull(readyWord(results, "catch_from")),
      catchUntil: idOrNull(readyWord(results, "catch_until")),
    };
  }),
};
