// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { DEFINITION } from "../sources.ts";

export const words: KindWords = {
  rows: {
    currency:
      "The sign, code or word for all money of this worksheet. Amounts stay as they are: nothing is converted.",
    total: ["The prices of all parts that have one.", DEFINITION],
    yearly: ["Each price over how long the part lasts; parts without a life are left out.", DEFINITION],
    per_volume: ["The yearly cost over the water that reached the beds in a usual season.", DEFINITION],
  },
  cautions: {},
};
