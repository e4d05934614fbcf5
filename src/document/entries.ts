// Links and formulas among a card's entries, and how to rewrite all of them at once.

import { sameData } from "./same.ts";
import type { Card, Change, Entries, Entry, EntryValue, Plan, Worksheet } from "./worksheet.ts";

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

/** A card with every given rewritten; the same card if none changes. */
export function mapGivens<C extends Card>(card: C, rewrite: Rewrite): C {
  const givens = mapEntries(card.givens, rewrite);
  return givens === card.givens ? card : { ...card, givens };
}

/** Where an entry stands: its card, that card's kind ("" where it is gone), the part of the card and the row. */
export type EntryPlace = {
  readonly card: string;
  readonly kind: string;
  readonly part: Change["part"];
  readonly row: string;
};

/** The same list if no member changes. */
function mapSame<T>(list: readonly T[], rewrite: (member: T) => T): readonly T[] {
  const next = list.map(rewrite);
  return next.every((member, index) => member === list[index]) ? list : next;
}

/** A plan with every entry in it rewritten, its cards' own and those it changes; the same plan if none changes. */
export function mapPlan(
  worksheet: Worksheet,
  plan: Plan,
  rewrite: (entry: Entry, place: EntryPlace) => Entry,
): Plan {
  const kinds = new Map([...worksheet.cards, ...plan.added].map(({ id, kind }) => [id, kind]));
  const changes = mapSame(plan.changes, (change) => {
    const { card, part, row } = change;
    const entry = change.entry && rewrite(change.entry, { card, kind: kinds.get(card) ?? "", part, row });
    return entry === change.entry ? change : { ...change, entry };
  });
  const added = mapSame(plan.added, (card) => {
    const at = (part: Change["part"]) => (entry: Entry, row: string) =>
      rewrite(entry, { card: card.id, kind: card.kind, part, row });
    const measured = mapEntries(card.measured, at("measured"));
    const next = mapGivens(card, at("givens"));
    return measured === card.measured ? next : { ...next, measured };
  });
  return changes === plan.changes && added === plan.added ? plan : { ...plan, changes, added };
}

/** The worksheet with its plans rewritten; the same worksheet if none changes. */
export function mapPlans(worksheet: Worksheet, rewrite: (plan: Plan) => Plan): Worksheet {
  const plans = worksheet.plans && mapSame(worksheet.plans, rewrite);
  return plans === undefined || plans === worksheet.plans ? worksheet : { ...worksheet, plans };
}

/** The worksheet with every given rewritten, in its plans too; the same worksheet if none changes. */
export function mapAllGivens(
  worksheet: Worksheet,
  rewrite: (entry: Entry, place: EntryPlace) => Entry,
): Worksheet {
  const cards = mapCards(worksheet.cards, (card) =>
    mapGivens(card, (entry, row) => rewrite(entry, { card: card.id, kind: card.kind, part: "givens", row })),
  );
  return mapPlans(withCards(worksheet, cards), (plan) =>
    mapPlan(worksheet, plan, (entry, place) => (place.part === "givens" ? rewrite(entry, place) : entry)),
  );
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
  return mapSame(cards, rewrite);
}

/** The worksheet with other cards, or the same one if they are the same list. */
export function withCards(worksheet: Worksheet, cards: readonly Card[]): Worksheet {
  return cards === worksheet.cards ? worksheet : { ...worksheet, cards };
}
