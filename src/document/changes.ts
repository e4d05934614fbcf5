// Changes to a worksheet as a list, as plans and questions have them: each sets one entry of one card, or takes it away.

import { renameCard } from "./card-edits.ts";
import { setGiven, setLife, setMeasured, setPrice } from "./edits.ts";
import type { Change, Worksheet } from "./worksheet.ts";

export type { Change };

function changed(worksheet: Worksheet, { card, part, row, entry }: Change): Worksheet {
  switch (part) {
    case "givens":
      return setGiven(worksheet, card, row, entry);
    case "measured":
      return setMeasured(worksheet, card, row, entry);
    case "price":
      return setPrice(worksheet, card, entry);
    case "life":
      return setLife(worksheet, card, entry);
    default:
      return typeof entry?.value === "string" ? renameCard(worksheet, card, entry.value) : worksheet;
  }
}

/** The worksheet with all changes made, one after the other; one of a card that is not there changes nothing. */
export function withChanges(worksheet: Worksheet, changes: readonly Change[]): Worksheet {
  return changes.reduce(changed, worksheet);
}
