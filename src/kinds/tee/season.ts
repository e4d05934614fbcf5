// A joint's share in the season.

import { readyNumber } from "../../graph/readers.ts";
import { type SeasonShare, takes } from "../season-share.ts";

export const teeSeason: SeasonShare = {
  role: "joint",
  must: ["height"],
  takes: takes("tees", (id, results) => ({ id, height: readyNumber(results, "height") })),
};
