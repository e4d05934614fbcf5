// Putting a card of another kind in the place of one that a card links to: cans for a pump.

import { addCard } from "./card-edits.ts";
import { setGiven } from "./edits.ts";
import type { Card, Worksheet } from "./worksheet.ts";

export type Swap = {
  /** Kinds of the cards that go and of the one that comes. */
  readonly from: string;
  readonly to: string;
  /** Link that a new card takes over from the one it stands in for. */
  readonly keep: string;
  /** What a new card is called. */
  readonly title: string;
};

const linkOf = (card: Card | undefined, name: string): string | null => {
  const value = card?.givens[name]?.value;
  return typeof value === "string" ? value : null;
};

/**
 * Swaps the cards of one kind in a card's list of links for one of another kind: one that has the same link as the first
 * that goes, else a new one. The cards that go stay in the worksheet.
 *
 * @returns the worksheet; the same one where the list has no card of that kind
 */
export function swapped(worksheet: Worksheet, cardId: string, name: string, swap: Swap): Worksheet {
  const card = worksheet.cards.find(({ id }) => id === cardId);
  const value = card?.givens[name]?.value;
  const ids = Array.isArray(value) ? value.filter((item): item is string => typeof item === "string") : [];
  const find = (id: string) => worksheet.cards.find((other) => other.id === id);
  const first = ids.map(find).find((other) => other?.kind === swap.from);
  if (!first) return worksheet;
  const kept = linkOf(first, swap.keep);
  const standIn = worksheet.cards.find(
    (other) => other.kind === swap.to && linkOf(other, swap.keep) === kept,
  );
  const known = new Set(worksheet.cards.map(({ id }) => id));
  const after = standIn
    ? worksheet
    : addCard(worksheet, swap.to, {
        title: swap.title,
        after: first.id,
        givens: kept === null ? {} : { [swap.keep]: { value: kept, unit: "" } },
      });
  const comes = standIn?.id ?? after.cards.find(({ id }) => !known.has(id))?.id;
  if (comes === undefined) return worksheet;
  const next = ids.flatMap((id) => {
    if (id === first.id) return [comes];
    return find(id)?.kind === swap.from || id === comes ? [] : [id];
  });
  return setGiven(after, cardId, name, { value: next, unit: "" });
}
