// Links and formulas among a card's entries, and how to rewrite all of them at once.

import { sameData } from "./same.ts";
import type { Card, Entries, Entry, EntryValue, Worksheet } from "./worksheet.ts";

/** What the card kinds know of a given that this folder does not. */
export type GivenRoles = {
  /** Whether the given of that kind of card holds a card's id, or a list of ids. */
  readonly isLink: (kind: string, given: string) => boolean;
  /** Whether the given of that kind of card holds formula text of the user's. */
  readonly isFormula: (kind: string, given: string) => boolean;
};

export type Rewrite = (entry: Entry, given: string) => Entry;

/** The same entries if none changes, else new ones; each untouched entry stays the same object. */
export function mapEntries(entries: Entries, rewrite: Rewrite): Entries {
  let changed = false;
  const next: Record<string, Entry> = {};
  for (const [name, entry] of Object.entries(entries)) {
    const rewritten = rewrite(entry, name);
    changed ||= rewritten !== entry;
    next[name] = rewritten;
  }
  return changed ? next : entries;
}

/** A card with every given rewritten, in its options too; the same card if none changes. */
export function mapGivens(card: Card, rewrite: Rewrite): Card {
  const givens = mapEntries(card.givens, rewrite);
  let changed = givens !== card.givens;
  if (!card.options) return changed ? { ...card, givens } : card;
  const options: Record<string, Entries> = {};
  for (const [name, entries] of Object.entries(card.options)) {
    const rewritten = mapEntries(entries, rewrite);
    changed ||= rewritten !== entries;
    options[name] = rewritten;
  }
  return changed ? { ...card, givens, options } : card;
}

/** A link entry in which one id is replaced by another, or taken out when there is no other. */
export function relink(entry: Entry, from: string, to: string | null): Entry {
  const { value } = entry;
  if (value === from) return { ...entry, value: to };
  if (!Array.isArray(value) || !value.includes(from)) return entry;
  const list = value as Exclude<EntryValue, string | number | null>;
  return {
    ...entry,
    value: to === null ? list.filter((id) => id !== from) : list.map((id) => (id === from ? to : id)),
  };
}

/** Entries with one of them set, or taken out by null; the same entries if that changes nothing. */
export function withEntry(entries: Entries, name: string, entry: Entry | null): Entries {
  const before = Object.hasOwn(entries, name) ? entries[name] : undefined;
  if (entry === null) {
    if (before === undefined) return entries;
    const { [name]: _gone, ...rest } = entries;
    return rest;
  }
  return sameData(before, entry) ? entries : { ...entries, [name]: entry };
}

/** The worksheet with one card rewritten; the same worksheet if there is no such card or it does not change. */
export function mapCard(worksheet: Worksheet, id: string, rewrite: (card: Card) => Card): Worksheet {
  return withCards(
    worksheet,
    mapCards(worksheet.cards, (card) => (card.id === id ? rewrite(card) : card)),
  );
}

/** The same list if no card changes. */
export function mapCards(cards: readonly Card[], rewrite: (card: Card) => Card): readonly Card[] {
  const next = cards.map(rewrite);
  return next.every((card, index) => card === cards[index]) ? cards : next;
}

/** The worksheet with other cards, or the same one if they are the same list. */
export function withCards(worksheet: Worksheet, cards: readonly Card[]): Worksheet {
  return cards === worksheet.cards ? worksheet : { ...worksheet, cards };
}
