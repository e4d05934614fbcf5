// Edits of whole cards: adding, removing, copying, naming, moving. Links and formulas elsewhere follow.

import { renameInFormula } from "../formula/rename.ts";
import { copyTitle } from "./copy-title.ts";
import { type GivenRoles, mapCard, mapCards, mapGivens, relink, withCards } from "./entries.ts";
import { frozen } from "./freeze.ts";
import { freshId, idProblem, isSingle } from "./ids.ts";
import { LIMITS } from "./limits.ts";
import type { Card, Entries, Worksheet } from "./worksheet.ts";

export type NewCard = {
  readonly title?: string;
  readonly givens?: Entries;
  /** Id of the card behind which it is put; else it comes last. */
  readonly after?: string;
};

function titleFromId(id: string): string {
  const words = id.replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Whether one more card fits. */
function hasRoom(worksheet: Worksheet): boolean {
  return worksheet.cards.length < LIMITS.cards;
}

function insert(worksheet: Worksheet, card: Card, after: string | undefined): Worksheet {
  const behind = after === undefined ? -1 : worksheet.cards.findIndex((other) => other.id === after);
  const at = behind < 0 ? worksheet.cards.length : behind + 1;
  return frozen(withCards(worksheet, worksheet.cards.toSpliced(at, 0, frozen(card))));
}

/**
 * Adds a card. Its id is `freshId(worksheet, kind, title)`; a single card has its kind for an id and is added once only.
 *
 * @returns the worksheet with the card, or the same worksheet where it is full or has that single card
 */
export function addCard(worksheet: Worksheet, kind: string, card: NewCard = {}): Worksheet {
  if (!hasRoom(worksheet)) return worksheet;
  const single = isSingle(kind);
  if (single && worksheet.cards.some((other) => other.id === kind)) return worksheet;
  const id = single ? kind : freshId(worksheet, kind, card.title);
  const title = card.title?.trim().slice(0, LIMITS.title) || titleFromId(id);
  return insert(worksheet, { id, kind, title, givens: card.givens ?? {}, measured: {} }, card.after);
}

/** Puts a copy of a card behind it, with the same numbers and links; the single cards cannot be copied. */
export function copyCard(worksheet: Worksheet, id: string): Worksheet {
  const original = worksheet.cards.find((card) => card.id === id);
  if (!original || isSingle(id) || !hasRoom(worksheet)) return worksheet;
  const title = copyTitle(original.title);
  return insert(worksheet, { ...original, id: freshId(worksheet, original.kind, original.id), title }, id);
}

/** Takes a card out, and out of every link that names it; the single cards stay. */
export function removeCard(worksheet: Worksheet, id: string, roles: Pick<GivenRoles, "isLink">): Worksheet {
  if (isSingle(id) || !worksheet.cards.some((card) => card.id === id)) return worksheet;
  const rest = worksheet.cards.filter((card) => card.id !== id);
  const unlinked = mapCards(rest, (card) =>
    mapGivens(card, (entry, given) => (roles.isLink(card.kind, given) ? relink(entry, id, null) : entry)),
  );
  return frozen(withCards(worksheet, unlinked));
}

/** Changes what a card is called on the screen; its id, and all that leans on it, stays. */
export function renameCard(worksheet: Worksheet, id: string, wanted: string): Worksheet {
  const title = wanted.slice(0, LIMITS.title);
  return frozen(mapCard(worksheet, id, (card) => (card.title === title ? card : { ...card, title })));
}

function renameInCard(card: Card, from: string, to: string, roles: GivenRoles): Card {
  const renamed = card.id === from ? { ...card, id: to } : card;
  return mapGivens(renamed, (entry, given) => {
    if (roles.isLink(card.kind, given)) return relink(entry, from, to);
    if (typeof entry.value !== "string" || !roles.isFormula(card.kind, given)) return entry;
    const value = renameInFormula(entry.value, from, to);
    return value === entry.value ? entry : { ...entry, value };
  });
}

function hasFittingTexts(card: Card): boolean {
  return [card.givens, ...Object.values(card.options ?? {})].every((entries) =>
    Object.values(entries).every(({ value }) => typeof value !== "string" || value.length <= LIMITS.text),
  );
}

/**
 * Changes a card's id, with every link to it and every formula of the user's that names it.
 *
 * @returns the worksheet, the same one where `idProblem` has a reason against it or a formula would grow too long to keep
 */
export function changeId(worksheet: Worksheet, from: string, to: string, roles: GivenRoles): Worksheet {
  if (from === to || idProblem(worksheet, from, to) !== null) return worksheet;
  const cards = mapCards(worksheet.cards, (card) => renameInCard(card, from, to, roles));
  return cards.every(hasFittingTexts) ? frozen(withCards(worksheet, cards)) : worksheet;
}

/** Moves a card to another place in the list; `to` beyond an end means that end. */
export function moveCard(worksheet: Worksheet, id: string, to: number): Worksheet {
  const from = worksheet.cards.findIndex((card) => card.id === id);
  const card = worksheet.cards[from];
  const target = Math.min(Math.max(0, Math.trunc(to)), worksheet.cards.length - 1);
  if (!card || target === from) return worksheet;
  return frozen(withCards(worksheet, worksheet.cards.toSpliced(from, 1).toSpliced(target, 0, card)));
}
