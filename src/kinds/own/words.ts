// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";

export const words: KindWords = {
  rows: {
    name: "What this number is.",
    formula: "Names of other numbers with + − × ÷, and measures like 20 gal.",
    unit: "gal, min, ft ... Leave it empty to let the formula decide.",
    note: "Why you want to know it.",
    value: ["Your own formula.", "your own line"],
  },
  cautions: {},
};
