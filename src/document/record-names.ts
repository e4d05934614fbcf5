// Which rain records a worksheet names. The records themselves live outside it, under their content keys.

import { mapAllGivens } from "./entries.ts";
import { frozen } from "./freeze.ts";
import type { Entries, Worksheet } from "./worksheet.ts";

export const RECORD_CARD = "weather";
export const RECORD_GIVEN = "record";

function nameIn(entries: Entries): string[] {
  const value = Object.hasOwn(entries, RECORD_GIVEN) ? entries[RECORD_GIVEN]?.value : null;
  return typeof value === "string" && value !== "" ? [value] : [];
}

/** Content keys of the records a worksheet names. A plan has no record of its own. */
export function recordNames(worksheet: Worksheet): readonly string[] {
  const cards = worksheet.cards.filter((card) => card.id === RECORD_CARD);
  return [...new Set(cards.flatMap((card) => nameIn(card.givens)))];
}

/** The worksheet naming another record wherever it named one; an empty name means none. */
export function renameRecord(worksheet: Worksheet, from: string, to: string): Worksheet {
  if (from === to) return worksheet;
  return frozen(
    mapAllGivens(worksheet, (entry, { card, row }) =>
      card === RECORD_CARD && row === RECORD_GIVEN && entry.value === from ? { ...entry, value: to } : entry,
    ),
  );
}
