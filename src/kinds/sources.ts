// Where numbers come from when it is no publication, and the words of the rows that every priced kind has.

import type { RowWords } from "../graph/words.ts";

export const DEFINITION = "definition";
export const PRACTICE = "common practice, no source";
export const MEMORY = "from memory";
export const RECORD = "your record";

export const COST_WORDS: Readonly<Record<string, RowWords>> = {
  price: "What you paid, or would pay, for this part.",
  life: "How long it serves before it is bought again.",
};
