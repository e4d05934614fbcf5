// A gravity line's share in the season.

import { isReady, numberIn, numberOf, readyNumber, readyWord } from "../../graph/readers.ts";
import { idOrNull, type SeasonShare, takes } from "../season-share.ts";

export const lineSeason: SeasonShare = {
  ties: [
    {
      kind: "feeds",
      from: ["from"],
      to: ["to"],
      passes: { blocked: "blocked", heights: { over: "must_stand_over", brim: "full_source" } },
    },
  ],
  must: [
    "from",
    "length",
    "bore",
    "roughness",
    "all_k",
    "valve_band",
    "runs_from",
    "end_height",
    "lift",
    "check_valve",
  ],
  may: ["to", "opening", "shut_level", "blocked"],
  takes: takes("lines", (id, results, input) => {
    const opening = results["opening"];
    if (opening?.state === "failed") return { reason: opening.problem.text };
    return {
      id,
      from: readyWord(results, "from"),
      to: idOrNull(readyWord(results, "to")),
      length: readyNumber(results, "length"),
      bore: readyNumber(results, "bore"),
      roughness: readyNumber(results, "roughness"),
      fittingsK: readyNumber(results, "all_k"),
      opening: numberIn(opening),
      valveBand: readyNumber(results, "valve_band"),
      shutLevel: isReady(opening) ? numberIn(results["shut_level"]) : null,
      startHeight: readyNumber(results, "runs_from"),
      endHeight: readyNumber(results, "end_height"),
      lift: readyNumber(results, "lift"),
      checkValve: readyWord(results, "check_valve") === "yes",
      blocked: idOrNull(readyWord(results, "blocked")),
      viscosity: numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density"),
    };
  }),
};
