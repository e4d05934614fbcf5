// Putting cards on the sheet already joined to what stands there, one by one or a whole place at once.

import { addCard } from "../document/card-edits.ts";
import { setGiven } from "../document/edits.ts";
import type { Card, Worksheet } from "../document/worksheet.ts";
import { isReady } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { linksBack, linksForward } from "../kinds/first-links.ts";
import { type FirstNumber, isBare, type Kinds } from "../kinds/kind.ts";
import { layOut, type Wish } from "../kinds/lay-out.ts";

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

/** Puts a whole place on the sheet; what it assumes is marked as usual values. */
export function laidOut(kinds: Kinds, worksheet: Worksheet, wish: Wish): Worksheet {
  const parts = layOut(kinds, wish, worksheet.units);
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
  kinds: Kinds,
  cards: readonly Card[],
  result: (id: string) => Result | undefined,
): readonly string[] {
  // An empty sheet is asked what there is, not how big it is.
  if (isBare(kinds, cards)) return [];
  const isOpen = (card: Card, { row, unlessReady, unlessGiven }: FirstNumber): boolean => {
    const entry = card.givens[row];
    const isSaid = entry !== undefined && entry.from !== "default";
    const isAnswered = unlessReady !== undefined && isReady(result(`${card.id}.${unlessReady}`));
    return !isSaid && !isAnswered && !(unlessGiven && card.givens[unlessGiven]?.value);
  };
  const asked = Object.values(kinds).flatMap(({ kind, firstNumbers = [] }) =>
    cards
      .filter((card) => card.kind === kind)
      .flatMap((card) =>
        firstNumbers
          .filter((number) => isOpen(card, number))
          .map(({ row, last }) => ({ id: `${card.id}.${row}`, last: last === true })),
      ),
  );
  return [...asked.filter(({ last }) => !last), ...asked.filter(({ last }) => last)].map(({ id }) => id);
}
