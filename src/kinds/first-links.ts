// What a card is joined to when it is put on the sheet: what stands before it, where the water and the power come from.

import type { LinkGiven } from "../graph/types.ts";
import type { Kinds } from "./kind.ts";

/** A card as far as joining needs it. */
export type Standing = {
  readonly id: string;
  readonly kind: string;
  readonly givens: Readonly<Record<string, unknown>>;
};

type LinkEntry = { readonly value: string | readonly string[]; readonly unit: "" };

const linkRow = (kinds: Kinds, kind: string, name: string): LinkGiven | null => {
  const row = kinds[kind]?.rows.find((candidate) => candidate.name === name);
  return row?.row === "link" ? row : null;
};

function entryFor(row: LinkGiven, id: string): LinkEntry {
  return { value: row.many ? [id] : id, unit: "" };
}

/** Links of a fresh card to cards that stand already. */
export function linksForward(
  kinds: Kinds,
  cards: readonly Standing[],
  kind: string,
): Readonly<Record<string, LinkEntry>> {
  const links: Record<string, LinkEntry> = {};
  for (const [name, which] of Object.entries(kinds[kind]?.joins ?? {})) {
    const row = linkRow(kinds, kind, name);
    const fits = cards.filter((card) => row?.kinds.includes(card.kind));
    const target = which === "one_before" ? (fits.at(-2) ?? fits.at(-1)) : fits.at(-1);
    const isTaken = Object.values(links).some(({ value }) => value === target?.id);
    if (row && target && !isTaken) links[name] = entryFor(row, target.id);
  }
  return links;
}

/** Links of standing cards to a fresh one: only where there was nothing yet that the link could have led to. */
export function linksBack(
  kinds: Kinds,
  cards: readonly Standing[],
  fresh: { readonly id: string; readonly kind: string },
): readonly { readonly card: string; readonly given: string; readonly entry: LinkEntry }[] {
  return cards.flatMap((card) =>
    Object.keys(kinds[card.kind]?.joins ?? {}).flatMap((given) => {
      const row = linkRow(kinds, card.kind, given);
      const isOpen = row?.kinds.includes(fresh.kind) && card.givens[given] === undefined;
      const hadNothing = !cards.some((other) => row?.kinds.includes(other.kind));
      return row && isOpen && hadNothing ? [{ card: card.id, given, entry: entryFor(row, fresh.id) }] : [];
    }),
  );
}
