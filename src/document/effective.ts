// A plan laid over the sheet as it is now, and the plan that leads from one sheet to another.

import { removeCard } from "./card-edits.ts";
import { withChanges } from "./changes.ts";
import { type GivenRoles, mapCards, withCards } from "./entries.ts";
import { frozen } from "./freeze.ts";
import { isSingle, titleFromId } from "./ids.ts";
import { LIMITS } from "./limits.ts";
import { RECORD_CARD, RECORD_GIVEN } from "./record-names.ts";
import { sameData } from "./same.ts";
import type { AddedCard, Card, Change, Entries, Entry, Plan, Worksheet } from "./worksheet.ts";

/** What of a plan does not count: its card is gone from the sheet, or what it adds finds no place there. */
export type LeftOut = {
  readonly card: string;
  /** What it is called in the plan; of a card that is gone, its id as words. */
  readonly title: string;
  readonly why: "gone" | "another_kind" | "no_room";
};

export type Laid = { readonly worksheet: Worksheet; readonly left: readonly LeftOut[] };

export type Differences = Pick<Plan, "changes" | "added" | "removed">;

const find = (worksheet: Worksheet, id: string): Card | undefined =>
  worksheet.cards.find((card) => card.id === id);

const isRecord = (card: string, part: Change["part"], row: string): boolean =>
  card === RECORD_CARD && part === "givens" && row === RECORD_GIVEN;

function insertAt(worksheet: Worksheet, after: string | undefined): number {
  if (after === "") return 0;
  const behind = worksheet.cards.findIndex(({ id }) => id === after);
  return behind < 0 ? worksheet.cards.length : behind + 1;
}

/** A card of the same id has come to the sheet meanwhile: the plan's numbers stand in for its own. */
function standIn(card: Card, planned: Card): Card {
  const { price: _price, life: _life, ...bare } = card;
  const { title, givens, measured, price, life } = planned;
  return { ...bare, title, givens, measured, ...(price && { price }), ...(life && { life }) };
}

function withAdded(worksheet: Worksheet, added: AddedCard, left: LeftOut[]): Worksheet {
  const { after, ...card } = added;
  const there = find(worksheet, card.id);
  if (there && there.kind !== card.kind) {
    left.push({ card: card.id, title: card.title, why: "another_kind" });
    return worksheet;
  }
  if (there)
    return withCards(
      worksheet,
      mapCards(worksheet.cards, (one) => (one === there ? standIn(one, card) : one)),
    );
  if (worksheet.cards.length >= LIMITS.cards) {
    left.push({ card: card.id, title: card.title, why: "no_room" });
    return worksheet;
  }
  return withCards(worksheet, worksheet.cards.toSpliced(insertAt(worksheet, after), 0, card));
}

/**
 * A plan laid over the sheet as it is now: first what it does without, then what it adds, then what it changes.
 *
 * @param roles which givens are links: one to a card that the plan does without is taken out
 * @returns the worksheet as the plan has it, without plans, cards it leaves alone being the same objects; and what of the
 * plan could not be laid over. The rain record is always the sheet's
 */
export function laidOver(sheet: Worksheet, plan: Differences, roles: Pick<GivenRoles, "isLink">): Laid {
  const left: LeftOut[] = [];
  const { plans: _plans, ...bare } = sheet;
  let worksheet: Worksheet = bare;
  for (const id of plan.removed) worksheet = removeCard(worksheet, id, roles);
  for (const card of plan.added) worksheet = withAdded(worksheet, card, left);
  const stands = new Set(worksheet.cards.map(({ id }) => id));
  const ownRecord = plan.changes.filter(({ card, part, row }) => !isRecord(card, part, row));
  const changes = ownRecord.filter(({ card }) => stands.has(card));
  const gone = new Set(ownRecord.flatMap(({ card }) => (stands.has(card) ? [] : [card])));
  for (const card of gone) left.push({ card, title: titleFromId(card), why: "gone" });
  return { worksheet: frozen(withChanges(worksheet, changes)), left };
}

/** The worksheet as a plan has it, on the sheet as it is now. */
export function effective(sheet: Worksheet, plan: Differences, roles: Pick<GivenRoles, "isLink">): Worksheet {
  return laidOver(sheet, plan, roles).worksheet;
}

function entryChanges(card: string, part: "givens" | "measured", from: Entries, to: Entries): Change[] {
  const rows = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return rows.flatMap((row): Change[] => {
    const before = Object.hasOwn(from, row) ? from[row] : undefined;
    const after = Object.hasOwn(to, row) ? to[row] : undefined;
    if (sameData(before, after) || isRecord(card, part, row)) return [];
    return [{ card, part, row, entry: after ?? null }];
  });
}

function cardChanges(from: Card, to: Card): Change[] {
  const one = (part: Change["part"], before: Entry | undefined, after: Entry | undefined): Change[] =>
    sameData(before, after) ? [] : [{ card: from.id, part, row: "", entry: after ?? null }];
  const title = (text: string): Entry => ({ value: text, unit: "" });
  return [
    ...one("title", title(from.title), title(to.title)),
    ...entryChanges(from.id, "givens", from.givens, to.givens),
    ...entryChanges(from.id, "measured", from.measured, to.measured),
    ...one("price", from.price, to.price),
    ...one("life", from.life, to.life),
  ];
}

/**
 * What leads from one sheet to another: laid over the first it gives the cards of the second. No part of it are the rain
 * record, the worksheet's own settings, offers, and the order of cards that both have.
 */
export function differences(from: Worksheet, to: Worksheet, roles: Pick<GivenRoles, "isLink">): Differences {
  const isIn = (worksheet: Worksheet, card: Card) => find(worksheet, card.id)?.kind === card.kind;
  const removed = from.cards.filter((card) => !isIn(to, card) && !isSingle(card.id)).map(({ id }) => id);
  const added = to.cards.flatMap((card, at): AddedCard[] =>
    isIn(from, card) ? [] : [{ ...card, after: to.cards[at - 1]?.id ?? "" }],
  );
  const base = effective(from, { changes: [], added, removed }, roles);
  const changes = base.cards.flatMap((card) => {
    const target = find(to, card.id);
    return target ? cardChanges(card, target) : [];
  });
  return frozen({ changes, added, removed });
}
