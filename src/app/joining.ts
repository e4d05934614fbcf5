// Putting a card on the sheet already joined to what stands there.

import { addCard } from "../document/card-edits.ts";
import { setGiven } from "../document/edits.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { linksBack, linksForward } from "../kinds/first-links.ts";
import type { Kinds } from "../kinds/kind.ts";

/** Adds a card, joined to what stands before it, and what waited for such a card joined to it. */
export function addJoined(kinds: Kinds, worksheet: Worksheet, kind: string, title: string): Worksheet {
  const before = worksheet.cards;
  const added = addCard(worksheet, kind, { title, givens: linksForward(kinds, before, kind) });
  const fresh = added.cards.at(-1);
  if (added === worksheet || !fresh) return worksheet;
  return linksBack(kinds, before, fresh).reduce(
    (sheet, { card, given, entry }) => setGiven(sheet, card, given, entry),
    added,
  );
}
