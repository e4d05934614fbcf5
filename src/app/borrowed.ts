// Numbers of somebody else's place in a received worksheet: marked on arrival, listed until they are replaced.

import { mapAllGivens } from "../document/entries.ts";
import { frozen } from "../document/freeze.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { CARD_KINDS } from "../kinds/index.ts";

/** Names of the givens of a card kind that a received worksheet has from its maker's place. */
const localNumbers = (kind: string): readonly string[] => CARD_KINDS[kind]?.local ?? [];

const isFilled = ({ value }: Entry): boolean => value !== null && value !== "";

/** Every number of the place changed alike, in the plans too. */
function mapLocal(
  worksheet: Worksheet,
  change: (entry: Entry, card: string, name: string) => Entry,
): Worksheet {
  return frozen(
    mapAllGivens(worksheet, (entry, { card, kind, row }) =>
      localNumbers(kind).includes(row) && isFilled(entry) ? change(entry, card, row) : entry,
    ),
  );
}

/** The worksheet with every number of its maker's place marked as borrowed. */
export function markBorrowed(worksheet: Worksheet): Worksheet {
  return mapLocal(worksheet, (entry) => ({ ...entry, from: "borrowed" }));
}

/** Ids of what is still borrowed, as the worksheet is now. */
export function borrowedIn(worksheet: Worksheet): readonly string[] {
  return worksheet.cards.flatMap((card) =>
    localNumbers(card.kind).flatMap((name) => {
      const entry = card.givens[name];
      return entry && isFilled(entry) && entry.from === "borrowed" ? [`${card.id}.${name}`] : [];
    }),
  );
}

/**
 * The marks taken off again: the place is one's own after all.
 *
 * @param original the worksheet as it arrived, if it is still known: it says where each number came from
 */
export function unmarkBorrowed(worksheet: Worksheet, original: Worksheet | null): Worksheet {
  return mapLocal(worksheet, (entry, cardId, name) => {
    if (entry.from !== "borrowed") return entry;
    const { from: _, ...bare } = entry;
    const was = original?.cards.find(({ id }) => id === cardId)?.givens[name]?.from;
    return was ? { ...bare, from: was } : bare;
  });
}
