// What of a worksheet decides the graph's shape: cards, links, own formulas, which rows have an entry or are measured.

import type { Card, Entry, Worksheet } from "../document/worksheet.ts";
import { entryAt, kindNamed } from "./card-plans.ts";
import { hasWorkedDefault, isGiven } from "./entries.ts";
import { sameData } from "./same.ts";
import type { CardKind, CardKinds, NumberGiven } from "./types.ts";

function stored(card: Card, row: NumberGiven): Entry | undefined {
  if (row.stored !== "card") return entryAt(card.givens, row.name);
  return row.name === "price" ? card.price : card.life;
}

/** Names of the text givens that a formula of the user's is made of. */
export function formulaTexts(kind: CardKind): readonly string[] {
  return kind.rows.flatMap((row) => (row.row === "user_formula" ? [row.formula, row.unit] : []));
}

function shapeOf(card: Card, kind: CardKind): unknown {
  const texts = formulaTexts(kind);
  const parts: unknown[] = [];
  for (const row of kind.rows) {
    if (row.row === "link" || texts.includes(row.name))
      parts.push(entryAt(card.givens, row.name)?.value ?? null);
    else if (row.row === "given" && hasWorkedDefault(row)) parts.push(isGiven(row, stored(card, row)));
    parts.push((entryAt(card.measured, row.name)?.value ?? null) !== null);
  }
  return parts;
}

function sameCardShape(a: Card, b: Card, kinds: CardKinds): boolean {
  if (a === b) return true;
  if (a.id !== b.id || a.kind !== b.kind) return false;
  const kind = kindNamed(kinds, a.kind);
  return !kind || sameData(shapeOf(a, kind), shapeOf(b, kind));
}

/** Whether two states of a worksheet have the same graph. */
export function sameShape(a: Worksheet, b: Worksheet, kinds: CardKinds): boolean {
  if (a.currency !== b.currency || a.cards.length !== b.cards.length) return false;
  for (let at = 0; at < a.cards.length; at++) {
    const [one, other] = [a.cards[at], b.cards[at]];
    if (one !== other && (!one || !other || !sameCardShape(one, other, kinds))) return false;
  }
  return true;
}
