// Which rain records a worksheet names. The records themselves live outside it, under their content keys.

import { mapCards, mapGivens, withCards } from "./entries.ts";
import { frozen } from "./freeze.ts";
import type { Entries, Worksheet } from "./worksheet.ts";

const CARD = "weather";
const GIVEN = "record";

function nameIn(entries: Entries): string[] {
  const value = Object.hasOwn(entries, GIVEN) ? entries[GIVEN]?.value : null;
  return typeof value === "string" && value !== "" ? [value] : [];
}

/** Content keys of the records a worksheet names, in its options too. */
export function recordNames(worksheet: Worksheet): readonly string[] {
  const cards = worksheet.cards.filter((card) => card.id === CARD);
  const names = cards.flatMap((card) => [card.givens, ...Object.values(card.options ?? {})].flatMap(nameIn));
  return [...new Set(names)];
}

/** The worksheet naming another record wherever it named one; an empty name means none. */
export function renameRecord(worksheet: Worksheet, from: string, to: string): Worksheet {
  const cards = mapCards(worksheet.cards, (card) =>
    card.id === CARD
      ? mapGivens(card, (entry, given) =>
          given === GIVEN && entry.value === from && from !== to ? { ...entry, value: to } : entry,
        )
      : card,
  );
  return frozen(withCards(worksheet, cards));
}
