// A tank's share in the season.

import { valueOr } from "../../graph/outcomes.ts";
import { readyNumber, readyWord, valueIn } from "../../graph/readers.ts";
import type { Vessel } from "../../physics/vessel.ts";
import { NO_YEAR } from "../none-said.ts";
import { gives, idOrNull, type SeasonShare, takes } from "../season-share.ts";

export const tankSeason: SeasonShare = {
  role: "tank",
  ties: [{ kind: "spills", from: "itself", to: ["overflows_to"] }],
  must: ["vessel", "floor_height", "outlet_height", "open_surface", "start_share", "leak"],
  may: ["overflows_to"],
  takes: takes("tanks", (id, results) => ({
    id,
    vessel: valueIn(results["vessel"]) as Vessel,
    floor: readyNumber(results, "floor_height"),
    outlet: readyNumber(results, "outlet_height"),
    openArea: readyNumber(results, "open_surface"),
    overflowsTo: idOrNull(readyWord(results, "overflows_to")),
    startShare: readyNumber(results, "start_share"),
    leak: readyNumber(results, "leak"),
  })),
  gives: gives("tanks", ({ meanYearlySpill, lowestLevel, stored }) => ({
    mean_yearly_spill: valueOr(meanYearlySpill, NO_YEAR),
    lowest_level: { value: lowestLevel },
    stored: { value: stored },
  })),
};
