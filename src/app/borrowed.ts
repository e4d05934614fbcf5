// Numbers of somebody else's place in a received worksheet: marked on arrival, listed until they are replaced.

import { localNumbers } from "../cards/local-numbers.ts";
import { setGiven } from "../document/edits.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";

type Spot = { readonly card: string; readonly name: string; readonly entry: Entry };

function spots(worksheet: Worksheet): readonly Spot[] {
  return worksheet.cards.flatMap((card) =>
    localNumbers(card.kind).flatMap((name) => {
      const entry = card.givens[name];
      return entry && entry.value !== null && entry.value !== "" ? [{ card: card.id, name, entry }] : [];
    }),
  );
}

/** The worksheet with every number of its maker's place marked as borrowed. */
export function markBorrowed(worksheet: Worksheet): Worksheet {
  return spots(worksheet).reduce<Worksheet>(
    (sheet, { card, name, entry }) => setGiven(sheet, card, name, { ...entry, from: "borrowed" }),
    worksheet,
  );
}

/** Ids of what is still borrowed. */
export function borrowedIn(worksheet: Worksheet): readonly string[] {
  return spots(worksheet)
    .filter(({ entry }) => entry.from === "borrowed")
    .map(({ card, name }) => `${card}.${name}`);
}

/**
 * The marks taken off again: the place is one's own after all.
 *
 * @param original the worksheet as it arrived, if it is still known: it says where each number came from
 */
export function unmarkBorrowed(worksheet: Worksheet, original: Worksheet | null): Worksheet {
  const before = original ? spots(original) : [];
  return spots(worksheet)
    .filter(({ entry }) => entry.from === "borrowed")
    .reduce<Worksheet>((sheet, { card, name, entry }) => {
      const { from: _, ...bare } = entry;
      const was = before.find((spot) => spot.card === card && spot.name === name)?.entry.from;
      return setGiven(sheet, card, name, was ? { ...bare, from: was } : bare);
    }, worksheet);
}
