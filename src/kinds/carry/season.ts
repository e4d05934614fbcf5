// Cans and their share in the season.

import { outcomes } from "../../graph/outcomes.ts";
import { readyNumber, readyWord } from "../../graph/readers.ts";
import { gives, type SeasonShare, takes } from "../season-share.ts";

export const carrySeason: SeasonShare = {
  role: "waterer",
  ties: [{ kind: "draws", from: ["from"], to: "itself" }],
  must: ["from", "can_volume", "can_weight", "cans_at_once", "round_time", "distance"],
  takes: takes("carries", (id, results) => ({
    id,
    from: readyWord(results, "from"),
    canVolume: readyNumber(results, "can_volume"),
    cansAtOnce: readyNumber(results, "cans_at_once"),
    roundTime: readyNumber(results, "round_time"),
    distance: readyNumber(results, "distance"),
    canMass: readyNumber(results, "can_weight"),
  })),
  gives: gives("carries", ({ seasonVolume, seasonTime, seasonTrips }) =>
    outcomes({ season_volume: seasonVolume, season_time: seasonTime, season_trips: seasonTrips }),
  ),
};
