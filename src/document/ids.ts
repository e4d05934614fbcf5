// Ids of cards: made from a title, checked before they are changed.

import { LIMITS } from "./limits.ts";
import { FORBIDDEN_NAMES } from "./plain.ts";
import { ID_PATTERN, SINGLE_CARDS, type Worksheet } from "./worksheet.ts";

/** Ids that formulas, or the objects themselves, give a meaning of their own. */
const RESERVED: ReadonlySet<string> = new Set([...SINGLE_CARDS, "measured", ...FORBIDDEN_NAMES]);

const LONGEST_WISH = 40;

/** Whether the id belongs to a card that exists exactly once. */
export function isSingle(id: string): boolean {
  return (SINGLE_CARDS as readonly string[]).includes(id);
}

function slug(text: string): string {
  const plain = text
    .normalize("NFKD")
    .replace(/\p{Mark}/gu, "")
    .toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, "_")
    .slice(0, LONGEST_WISH)
    .replace(/^_+|_+$/g, "");
}

/** What a card is called that has no title, or that is gone: its id as words. */
export function titleFromId(id: string): string {
  const words = id.replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Ids of the cards there are and of those that a plan would add. */
function takenIds(worksheet: Worksheet): ReadonlySet<string> {
  const planned = (worksheet.plans ?? []).flatMap(({ added }) => added);
  return new Set([...worksheet.cards, ...planned].map((card) => card.id));
}

/**
 * An id that no card of the worksheet has, nor one that a plan would add.
 *
 * @param worksheet where it must be free
 * @param kind card kind, used where the title gives no id
 * @param title wished-for name, as "Blue tank"
 * @returns as `blue_tank`, or `blue_tank_2` where that is taken
 */
export function freshId(worksheet: Worksheet, kind: string, title = ""): string {
  const wishes = [slug(title), slug(kind), "card"];
  const wish = wishes.find((text) => ID_PATTERN.test(text)) ?? "card";
  const taken = takenIds(worksheet);
  const isFree = (id: string) => !taken.has(id) && !RESERVED.has(id);
  if (isFree(wish)) return wish;
  const stem = wish.replace(/_\d+$/, "");
  let count = 2;
  while (!isFree(`${stem}_${count}`)) count += 1;
  return `${stem}_${count}`;
}

/**
 * Why a card's id cannot be changed so.
 *
 * @returns one sentence, or null where it can
 */
export function idProblem(worksheet: Worksheet, from: string, to: string): string | null {
  if (!worksheet.cards.some((card) => card.id === from)) return `There is no card "${from}".`;
  if (isSingle(from)) return `The card "${from}" exists once and keeps its name.`;
  if (!ID_PATTERN.test(to) || to.length > LIMITS.id) {
    return "A short name begins with a small letter and has small letters, digits and underscores only.";
  }
  if (RESERVED.has(to)) return `The name "${to}" has a meaning of its own.`;
  if (to !== from && takenIds(worksheet).has(to)) return `Another card is called "${to}".`;
  return null;
}
