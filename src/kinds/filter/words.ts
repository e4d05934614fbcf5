// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import roofs from "../../../shared/roofs.json";
import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

export const words: KindWords = {
  rows: {
    on: "The line, roof or pump hose it is in.",
    k: ["On the speed in the hose; the maker may give a curve instead.", PRACTICE],
    clogged_share: [
      "The share of its mesh that is blinded by then. The answers are for that moment.",
      PRACTICE,
    ],
    clean_every: ["How often somebody rinses it.", PRACTICE],
    clean_passes: [
      "Of the roof's water, the share that goes on to the tank; the rest rinses the mesh and runs off.",
      `${roofs.sources.STEP}: 0.9 unless its maker says otherwise`,
    ],
    k_in_use: [
      "The same flow through what is left of the mesh: the loss grows with the square of the speed.",
      DEFINITION,
    ],
    passes: [
      "What it lets through when clean, times the mesh that is left.",
      `in proportion to the open mesh: ${PRACTICE}`,
    ],
    head_lost: [
      "Its loss when clogged times the head of the speed in the hose.",
      "Darcy-Weisbach practice: K times the velocity head",
    ],
    cleanings: ["A year over the time between two cleanings.", DEFINITION],
    ...COST_WORDS,
  },
  cautions: {
    filter_clogs: [
      "A screen of this kind can fall from nine tenths to under a third of the water when algae or leaves blind it. Rinse it every {clean_every} at least, and after every storm.",
      roofs.sources.CAT,
    ],
    filter_bypass: [
      "Shut the line and let the pressure off before you open it. Keep the way over it open in a storm, so that water never backs up the downspout.",
      MEMORY,
    ],
  },
  frost: {
    text: "Open it, pour it out and leave its lid loose: a cup of standing water splits it.",
    source: PRACTICE,
  },
};
