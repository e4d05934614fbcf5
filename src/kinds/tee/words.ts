// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, PRACTICE } from "../sources.ts";

export const words: KindWords = {
  rows: {
    height: "Of the joint, above height nought.",
    head: [
      "The height at which as much water arrives as leaves, with every float down and the upper tanks at their usual share.",
      "continuity at a joint, as in the three-reservoir problem of hydraulics texts; Churchill 1977",
    ],
    lowest_end: ["The lowest end of the lines that leave it.", DEFINITION],
    ...COST_WORDS,
  },
  cautions: {
    tee_sucks_air: [
      "Water would stand lower here than the joint itself, so it is under suction: air gets in at every loose clamp. Lay the joint lower, or a wider line to it.",
      DEFINITION,
    ],
    tee_shares: [
      "Two floats open together fill more slowly than one alone; when one shuts, the other gets the whole line.",
      "continuity at a joint",
    ],
  },
  frost: {
    text: "Open it and let it drip dry: water stays in a joint when its hoses are dry.",
    source: PRACTICE,
  },
};
