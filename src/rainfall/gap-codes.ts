// Numbers such as 999, 888.8 and 99.9 that stand for a gap: told by their standing alone, above everything near them.
import type { Intake } from "./intake.ts";
import { readingOrder } from "./settle-dates.ts";

/** 999 is no day's rain in any unit; the others are where they recur. */
const CODES = [999, 888.8, 888, 99.99, 99.9, 99] as const;
const ALWAYS = 999;
/** Rain beside a code is less than this share of it: a counter that passes the number stands near it before and after. */
const NEAR = 0.5;

/** The values in the order of days and times. */
function inOrder(intake: Intake): Float64Array {
  const { rain, count } = intake.readings;
  const order = readingOrder(intake.readings);
  return order ? Float64Array.from(order, (at) => rain[at] ?? 0) : rain.slice(0, count);
}

/** The nearest value in a direction that is not the code itself, 0 where there is none. */
function beside(values: Float64Array, at: number, step: 1 | -1): number {
  let near = at + step;
  while (values[near] === values[at]) near += step;
  return values[near] ?? 0;
}

/** Whether most places of a number stand alone, and there are as many as prove a code. */
function isCode(values: Float64Array, code: number): boolean {
  let [places, alone] = [0, 0];
  values.forEach((value, at) => {
    if (value !== code) return;
    places++;
    const isNear = beside(values, at, -1) > code * NEAR || beside(values, at, 1) > code * NEAR;
    if (!isNear) alone++;
  });
  return alone >= (code === ALWAYS ? 1 : 2) && alone * 2 >= places;
}

/** Takes as missing what is such a code, and counts it. */
export function dropGapCodes(intake: Intake): void {
  const { rain, count } = intake.readings;
  const met = CODES.filter((code) => rain.subarray(0, count).includes(code));
  if (met.length === 0) return;
  const values = inOrder(intake);
  for (const code of met.filter((each) => isCode(values, each))) {
    for (let at = 0; at < count; at++) {
      if (rain[at] !== code) continue;
      rain[at] = Number.NaN;
      intake.codes.add(String(code));
    }
  }
}
