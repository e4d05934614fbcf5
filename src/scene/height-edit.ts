// A tank dragged up or down: which of its numbers that changes, in steps that suit the number's own unit.

import { withFrom } from "../document/still-from.ts";
import type { Card, Entry } from "../document/worksheet.ts";
import { numberIn } from "../graph/readers.ts";
import type { NumberGiven, Result } from "../graph/types.ts";
import type { Kind } from "../kinds/kind.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** Height of one step: an inch, or 2 cm where the number is metric. */
const STEPS = { "1 in": toSi(1, "in"), "2 cm": toSi(2, "cm") };
const METRIC = ["m", "cm", "mm", "dm", "km"];

export type Movable = {
  readonly card: Card;
  readonly row: NumberGiven;
  /** Its present value [m], and the unit in which it is written. */
  readonly value: number;
  readonly unit: string;
};

/**
 * The height that a drag moves: the first of its kind's heights that is above zero, else the last.
 *
 * @param unitOf unit in which a row is shown, for one that was never typed
 */
export function movable(
  card: Card,
  { rows, drawn }: Pick<Kind, "rows" | "drawn">,
  result: (id: string) => Result | undefined,
  unitOf: (id: string) => string,
): Movable | null {
  const heights = drawn?.heights ?? [];
  const name = heights.find((one) => (numberIn(result(`${card.id}.${one}`)) ?? 0) > 0) ?? heights.at(-1);
  if (name === undefined) return null;
  const row = rows.find((candidate) => candidate.name === name);
  const id = `${card.id}.${name}`;
  const value = numberIn(result(id));
  if (row?.row !== "given" || value === null) return null;
  return { card, row, value, unit: card.givens[name]?.unit || unitOf(id) };
}

/** How far one step goes [m]. */
export const stepOf = (unit: string): number => STEPS[METRIC.includes(unit) ? "2 cm" : "1 in"];

/**
 * The entry for a height moved by so much, at a whole step from where it began and within the row's limits.
 *
 * @param by how far it is moved [m]
 * @returns null where nothing changes
 */
export function movedEntry({ card, row, value, unit }: Movable, by: number): Entry | null {
  const step = stepOf(unit);
  const wished = value + Math.round(by / step) * step;
  const kept = Math.max(
    row.min ?? Number.NEGATIVE_INFINITY,
    Math.min(row.max ?? Number.POSITIVE_INFINITY, wished),
  );
  if (Math.abs(kept - value) < step / 1000) return null;
  return withFrom({ value: tidy(fromSi(kept, unit)), unit }, [card.givens[row.name]]);
}
