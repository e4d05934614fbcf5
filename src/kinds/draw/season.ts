// What else is drawn, and its share in the season.

import { readyNumber, readyWord } from "../../graph/readers.ts";
import { type SeasonShare, takes } from "../season-share.ts";

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
};
