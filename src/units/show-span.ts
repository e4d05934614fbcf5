// A span as a grower reads it: both ends rounded to what the doubt between them allows, the unit said once.

import { MINUTE, MINUTES_A_DAY } from "./constants.ts";
import { MEASURES, type MeasureName } from "./measures.ts";
import { roundedDown } from "./scale.ts";
import { type ShowOptions, showQuantity } from "./show.ts";
import { spanWords } from "./span-words.ts";
import { tidy } from "./tidy.ts";
import { fromSi, toSi } from "./unit.ts";

/** A span is told in at least so many steps. */
const STEPS_WITHIN = 4;
const MINUTES = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, MINUTES_A_DAY].map((minutes) => minutes * MINUTE);

/** Step in which the ends are told, and the unit of it; of what is a time, a round one of the clock. */
function stepOf(
  width: number,
  measure: MeasureName,
  { units, unit }: ShowOptions,
): readonly [number, string] {
  const { form } = MEASURES[measure];
  if (form === "duration" || form === "clock") {
    return [MINUTES.findLast((step) => step <= width / STEPS_WITHIN) ?? MINUTE, "s"];
  }
  const shown = form === "span" ? "day" : form === "share" ? "%" : (unit ?? MEASURES[measure][units]);
  const inShown = Math.abs(fromSi(width, shown) - fromSi(0, shown));
  return [roundedDown(inShown / STEPS_WITHIN), shown];
}

/** Counting steps in doubles errs by less than this share of one. */
const DUST = 1e-9;

/**
 * An end in steps, away from the other one: what lies between the ends lies between those that are told. What is not nothing
 * is never told as nothing, what is not all never as all.
 */
function stepped(si: number, side: 1 | -1, step: number, unit: string, measure: MeasureName): number {
  const steps = fromSi(si, unit) / step;
  const outward = side === 1 ? Math.ceil(steps - DUST) : Math.floor(steps + DUST);
  const told = toSi(tidy(outward * step), unit);
  const isAll = MEASURES[measure].form === "share" && told === 1;
  return (told === 0 || isAll) && si !== told ? si : told;
}

/** Both ends of an answer that is not sure as they are told, rounded to what the doubt allows [SI unit of the measure]. */
export function toldEnds(
  low: number,
  high: number,
  measure: MeasureName,
  options: ShowOptions,
): readonly [low: number, high: number] {
  if (low === high) return [low, high];
  const [step, unit] = stepOf(high - low, measure, options);
  return [stepped(low, -1, step, unit, measure), stepped(high, 1, step, unit, measure)];
}

/**
 * Both ends of an answer that is not sure, rounded to what the doubt allows.
 * @param low [SI unit of the measure]
 */
export function showSpan(low: number, high: number, measure: MeasureName, options: ShowOptions): string {
  const [least, most] = toldEnds(low, high, measure, options);
  const text = (end: number) => showQuantity(end, measure, { ...options, rounded: true });
  return spanWords(text(least), text(most));
}
