// What else is drawn, and its share in the season.

import { valueOr } from "../../graph/outcomes.ts";
import { readyNumber, readyWord } from "../../graph/readers.ts";
import { gives, type SeasonShare, takes } from "../season-share.ts";

export const drawSeason: SeasonShare = {
  role: "draw",
  ties: [{ kind: "draws", from: ["from"], to: "itself" }],
  must: ["from", "volume", "every"],
  takes: takes("draws", (id, results) => ({
    id,
    from: readyWord(results, "from"),
    volume: readyNumber(results, "volume"),
    every: readyNumber(results, "every"),
  })),
  gives: gives("draws", ({ seasonVolume, shareMet, daysShort }) => ({
    season_volume: { value: seasonVolume },
    share_met: valueOr(shareMet, "nothing was due in the season"),
    days_short: { value: daysShort },
  })),
};
