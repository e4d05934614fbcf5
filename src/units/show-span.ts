// A span as a grower reads it: both ends rounded to what the doubt between them allows, the unit said once.

import { MINUTE, MINUTES_A_DAY } from "./constants.ts";
import { MEASURES, type MeasureName } from "./measures.ts";
import { roundedDown } from "./scale.ts";
import { type ShowOptions, showQuantity } from "./show.ts";
import { spanWords } from "./span-words.ts";
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

/** What is not nothing is never told as nothing, what is not all never as all. */
function stepped(si: number, step: number, unit: string, measure: MeasureName): number {
  const told = toSi(Number((Math.round(fromSi(si, unit) / step) * step).toPrecision(12)), unit);
  const isAll = MEASURES[measure].form === "share" && told === 1;
  return (told === 0 || isAll) && si !== told ? si : told;
}

/**
 * Both ends of an answer that is not sure, rounded to what the doubt allows.
 * @param low [SI unit of the measure]
 */
export function showSpan(low: number, high: number, measure: MeasureName, options: ShowOptions): string {
  const shown = { ...options, rounded: true };
  if (low === high) return showQuantity(low, measure, shown);
  const [step, unit] = stepOf(high - low, measure, options);
  const text = (end: number) => showQuantity(stepped(end, step, unit, measure), measure, shown);
  return spanWords(text(low), text(high));
}
