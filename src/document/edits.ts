// Edits of numbers and settings: worksheet in, worksheet out, frozen, with everything untouched left the same object.

import { mapCard, withEntry } from "./entries.ts";
import { entryFits } from "./entry-fits.ts";
import { frozen } from "./freeze.ts";
import { LIMITS } from "./limits.ts";
import { sameData } from "./same.ts";
import type { Card, Entry, Worksheet } from "./worksheet.ts";

function unfit(entry: Entry | null): boolean {
  return entry !== null && !entryFits(entry);
}

function withGiven(card: Card, name: string, entry: Entry | null): Card {
  const givens = withEntry(card.givens, name, entry);
  return givens === card.givens ? card : { ...card, givens };
}

/**
 * Sets a given of a card.
 *
 * @param entry the new entry, or null: back to the usual value
 * @returns the worksheet; the same one where the entry does not fit in (`entryFits`)
 */
export function setGiven(worksheet: Worksheet, cardId: string, name: string, entry: Entry | null): Worksheet {
  if (unfit(entry)) return worksheet;
  return frozen(mapCard(worksheet, cardId, (card) => withGiven(card, name, frozen(entry))));
}

/** Sets what was measured of a row, or takes it out by null. */
export function setMeasured(
  worksheet: Worksheet,
  cardId: string,
  name: string,
  entry: Entry | null,
): Worksheet {
  if (unfit(entry)) return worksheet;
  return frozen(
    mapCard(worksheet, cardId, (card) => {
      const measured = withEntry(card.measured, name, frozen(entry));
      return measured === card.measured ? card : { ...card, measured };
    }),
  );
}

function setOnCard(
  worksheet: Worksheet,
  cardId: string,
  name: "price" | "life",
  entry: Entry | null,
): Worksheet {
  if (unfit(entry)) return worksheet;
  return frozen(
    mapCard(worksheet, cardId, (card) => {
      if (sameData(card[name] ?? null, entry)) return card;
      if (entry !== null) return { ...card, [name]: frozen(entry) };
      const { [name]: _gone, ...rest } = card;
      return rest;
    }),
  );
}

/** Sets what the thing cost, or takes it out by null. */
export function setPrice(worksheet: Worksheet, cardId: string, entry: Entry | null): Worksheet {
  return setOnCard(worksheet, cardId, "price", entry);
}

/** Sets how long the thing lasts, or takes it out by null. */
export function setLife(worksheet: Worksheet, cardId: string, entry: Entry | null): Worksheet {
  return setOnCard(worksheet, cardId, "life", entry);
}

/** Sets what something that can be bought for a card would cost, or takes it out by null. */
export function setOffer(worksheet: Worksheet, cardId: string, name: string, entry: Entry | null): Worksheet {
  if (unfit(entry)) return worksheet;
  return frozen(
    mapCard(worksheet, cardId, (card) => {
      const before = card.offers ?? {};
      const offers = withEntry(before, name, frozen(entry));
      if (offers === before) return card;
      const { offers: _before, ...rest } = card;
      return Object.keys(offers).length === 0 ? rest : { ...rest, offers };
    }),
  );
}

export type WorksheetSettings = Pick<
  Worksheet,
  "title" | "units" | "locale" | "currency" | "datum" | "made_by" | "made_on"
>;

const LONGEST: Readonly<Record<string, number>> = { currency: LIMITS.unit };

/** Sets the worksheet's own settings, overlong ones cut; numbers stay as they were typed, in the units they were typed in. */
export function setWorksheet(worksheet: Worksheet, settings: Partial<WorksheetSettings>): Worksheet {
  const cut = Object.entries(settings).map(([name, text]) => [
    name,
    text.slice(0, LONGEST[name] ?? LIMITS.title),
  ]);
  const next: Worksheet = { ...worksheet, ...Object.fromEntries(cut) };
  return sameData(next, worksheet) ? worksheet : frozen(next);
}
