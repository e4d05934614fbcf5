// Putting cards on the sheet already joined to what stands there, one by one or a whole place at once.

import { addCard } from "../document/card-edits.ts";
import { setGiven } from "../document/edits.ts";
import type { Card, Worksheet } from "../document/worksheet.ts";
import type { Result } from "../graph/types.ts";
import { linksBack, linksForward } from "../kinds/first-links.ts";
import { FIRST_NUMBERS } from "../kinds/first-numbers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { layOut, type Wish } from "../kinds/lay-out.ts";

/** Adds a card, joined to what stands before it, and what waited for such a card joined to it. */
export function addJoined(worksheet: Worksheet, kind: string, title: string): Worksheet {
  const before = worksheet.cards;
  const added = addCard(worksheet, kind, { title, givens: linksForward(CARD_KINDS, before, kind) });
  const fresh = added.cards.at(-1);
  if (added === worksheet || !fresh) return worksheet;
  return linksBack(CARD_KINDS, before, fresh).reduce(
    (sheet, { card, given, entry }) => setGiven(sheet, card, given, entry),
    added,
  );
}

/** Puts a whole place on the sheet; what it assumes is marked as usual values. */
export function laidOut(worksheet: Worksheet, wish: Wish): Worksheet {
  const parts = layOut(wish, worksheet.units);
  const ids = new Map<string, string>();
  let sheet = worksheet;
  for (const { key, kind, title, givens } of parts) {
    const known = new Set(sheet.cards.map((card) => card.id));
    sheet = addCard(sheet, kind, { title, givens });
    const fresh = sheet.cards.find((card) => !known.has(card.id));
    if (fresh) ids.set(key, fresh.id);
  }
  for (const { key, links } of parts) {
    for (const [given, target] of Object.entries(links)) {
      const value =
        typeof target === "string" ? (ids.get(target) ?? "") : target.map((to) => ids.get(to) ?? "");
      sheet = setGiven(sheet, ids.get(key) ?? "", given, { value, unit: "" });
    }
  }
  return sheet;
}

/** What nobody but the grower knows and nobody has said yet, in the order in which one would measure it. */
export function stillToSay(
  cards: readonly Card[],
  result: (id: string) => Result | undefined,
): readonly string[] {
  // An empty sheet is asked what there is, not how big it is.
  if (cards.every((card) => CARD_KINDS[card.kind]?.single)) return [];
  return Object.entries(FIRST_NUMBERS).flatMap(([kind, numbers]) =>
    cards
      .filter((card) => card.kind === kind)
      .flatMap((card) =>
        numbers
          .filter(({ row, unlessReady, unlessGiven }) => {
            const entry = card.givens[row];
            const isSaid = entry !== undefined && entry.from !== "default";
            const isAnswered = unlessReady && result(`${card.id}.${unlessReady}`)?.state === "ready";
            return !isSaid && !isAnswered && !(unlessGiven && card.givens[unlessGiven]?.value);
          })
          .map(({ row }) => `${card.id}.${row}`),
      ),
  );
}
