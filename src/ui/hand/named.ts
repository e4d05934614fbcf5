// What a quantity is called in the hand and in the list of what moved.

import { answerName } from "../../telling/answer-names.ts";
import type { Sheet } from "../sheet.ts";

/** Its own name, or its row's label; with the part's name before it where that is not `of`. */
export function named(sheet: Sheet, id: string, of: string | null): string {
  const own = answerName(id);
  if (own !== null) return own;
  return id.split(".")[0] === of ? sheet.label(id) : sheet.place(id);
}
