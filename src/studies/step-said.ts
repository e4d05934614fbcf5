// What a step of the number in hand is called: how much more or less, or where it leads to.

import type { Entry } from "../document/worksheet.ts";
import { MEASURES } from "../units/measures.ts";
import { displayParts, type ShowOptions, showNumber, showQuantity } from "../units/show.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";
import { type Axis, entryStepped, type TurnedRow } from "./turn.ts";

const FIGURES = 4;
/** What goes on a step's button. */
const LENGTH = 10;
/** Steps that differ by less than this share of one are the same. */
const SAME = 1e-6;

/** How far a step leads [unit of the axis] where a step back leads home; null where it only leads to the next round value or size. */
function wholeStep(axis: Axis, from: number, to: number, by: 1 | -1): number | null {
  if (axis.form !== "number" || axis.scale.sizes) return null;
  const back = entryStepped(axis, to, by === 1 ? -1 : 1, false);
  const [there, home] = [to, from].map((si) => fromSi(si, axis.scale.unit)) as [number, number];
  const isHome =
    typeof back?.value === "number" && Math.abs(back.value - home) <= SAME * Math.abs(there - home);
  return isHome ? tidy(Math.abs(there - home)) : null;
}

/**
 * "+25", "−15 s", "to 250"; a sign alone where that is too long or there is no number; null where there is no step.
 *
 * @param from what stands there, as it is read [SI]
 * @param next where the step leads
 */
export function stepSaid(
  { row, axis }: { readonly row: TurnedRow; readonly axis: Axis },
  from: number | string | null,
  next: Entry | null,
  by: 1 | -1,
  options: ShowOptions,
): string | null {
  if (!next) return null;
  const sign = by === 1 ? "+" : "−";
  if (row.row !== "given" || typeof next.value !== "number") return sign;
  const to = toSi(next.value, next.unit);
  const size = typeof from === "number" ? wholeStep(axis, from, to, by) : null;
  const text =
    size === null
      ? `to ${displayParts(to, row.measure, { ...options, unit: next.unit, figures: FIGURES, rounded: false }).number}`
      : `${sign}${sizeSaid(size, next.unit, MEASURES[row.measure].form, options)}`;
  return text.length > LENGTH ? sign : text;
}

function sizeSaid(
  size: number,
  unit: string,
  form: (typeof MEASURES)[keyof typeof MEASURES]["form"],
  options: ShowOptions,
): string {
  const isTime = form === "duration" || form === "clock";
  return isTime
    ? showQuantity(toSi(size, unit), "duration", options)
    : showNumber(size, FIGURES, options.locale);
}
