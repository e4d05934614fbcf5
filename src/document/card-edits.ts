// Edits of whole cards: adding, removing, copying, naming, moving. Links and formulas elsewhere follow.

import { renameInFormula } from "../formula/rename.ts";
import { copyTitle } from "./copy-title.ts";
import {
  type EntryPlace,
  type GivenRoles,
  mapAllGivens,
  mapCard,
  mapPlans,
  relink,
  withCards,
} from "./entries.ts";
import { frozen } from "./freeze.ts";
import { freshId, idProblem, isSingle, titleFromId } from "./ids.ts";
import { LIMITS } from "./limits.ts";
import type { Card, Entries, Entry, Plan, Worksheet } from "./worksheet.ts";

export type NewCard = {
  readonly title?: string;
  readonly givens?: Entries;
  /** Id of the card behind which it is put; else it comes last. */
  readonly after?: string;
};

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
  const cards = worksheet.cards.filter((card) => card.id !== id);
  const unlink = (entry: Entry, { kind, row }: EntryPlace) =>
    roles.isLink(kind, row) ? relink(entry, id, null) : entry;
  const unlinked = mapAllGivens(withCards(worksheet, cards), unlink);
  // A plan that brings a card of that id itself keeps its links to it.
  const plans = worksheet.plans?.map((plan, at) =>
    plan.added.some((card) => card.id === id) ? plan : (unlinked.plans?.[at] ?? plan),
  );
  return frozen(plans === undefined ? unlinked : { ...unlinked, plans });
}

/** Changes what a card is called on the screen; its id, and all that leans on it, stays. */
export function renameCard(worksheet: Worksheet, id: string, wanted: string): Worksheet {
  const title = wanted.slice(0, LIMITS.title);
  return frozen(mapCard(worksheet, id, (card) => (card.title === title ? card : { ...card, title })));
}

function renameInPlan(plan: Plan, from: string, to: string): Plan {
  const id = (one: string): string => (one === from ? to : one);
  const changes = plan.changes.map((change) => (change.card === from ? { ...change, card: to } : change));
  const added = plan.added.map((card) => {
    const after = card.after === undefined ? {} : { after: id(card.after) };
    return { ...card, id: id(card.id), ...after };
  });
  return { ...plan, changes, added, removed: plan.removed.map(id) };
}

/** Follows an id into an entry. */
function renameIn(
  entry: Entry,
  { kind, row }: EntryPlace,
  from: string,
  to: string,
  roles: GivenRoles,
): Entry {
  if (roles.isLink(kind, row)) return relink(entry, from, to);
  if (typeof entry.value !== "string" || !roles.isFormula(kind, row)) return entry;
  const value = renameInFormula(entry.value, from, to);
  return value === entry.value ? entry : { ...entry, value };
}

/**
 * Changes a card's id, with every link to it and every formula of the user's that names it, in the plans too.
 *
 * @returns the worksheet, the same one where `idProblem` has a reason against it or a formula would grow too long to keep
 */
export function changeId(worksheet: Worksheet, from: string, to: string, roles: GivenRoles): Worksheet {
  if (from === to || idProblem(worksheet, from, to) !== null) return worksheet;
  let fits = true;
  const followed = mapAllGivens(worksheet, (entry, place) => {
    const next = renameIn(entry, place, from, to, roles);
    fits &&= typeof next.value !== "string" || next.value.length <= LIMITS.text;
    return next;
  });
  if (!fits) return worksheet;
  const renamed = mapCard(followed, from, (card) => ({ ...card, id: to }));
  return frozen(mapPlans(renamed, (plan) => renameInPlan(plan, from, to)));
}

/** Moves a card to another place in the list; `to` beyond an end means that end. */
export function moveCard(worksheet: Worksheet, id: string, to: number): Worksheet {
  const from = worksheet.cards.findIndex((card) => card.id === id);
  const card = worksheet.cards[from];
  const target = Math.min(Math.max(0, Math.trunc(to)), worksheet.cards.length - 1);
  if (!card || target === from) return worksheet;
  return frozen(withCards(worksheet, worksheet.cards.toSpliced(from, 1).toSpliced(target, 0, card)));
}
