// The span that a number is turned and tried over: its ends, whether it runs evenly or in ratios, and the values along it.

import type { NumberGiven } from "../graph/types.ts";
import { MEASURES } from "../units/measures.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** Ends in `unit`, both included; `ratio`: even steps of the logarithm; `whole`: whole numbers only. */
export type Scale = {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly ratio: boolean;
  readonly whole: boolean;
};

/** A span runs in ratios from so many times on between its ends. */
const RATIO_FROM = 20;
/** A number with no usual span of its own is tried from a quarter of itself to four times itself. */
const OWN_REACH = 4;
/** Ends are rounded outward to so many figures, values between them to more. */
const END_FIGURES = 2;
const VALUE_FIGURES = 4;

/** A scale between two ends, given in either order [unit]. */
export function scaleBetween(one: number, other: number, unit: string, whole = false): Scale {
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  return { low, high, unit, ratio: low > 0 && high / low >= RATIO_FROM, whole };
}

/** Rounded away from the middle to the figures of an end. */
function outward(value: number, up: boolean): number {
  if (value === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - END_FIGURES + 1);
  const rounded = (up ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9)) * step;
  return Number(rounded.toPrecision(END_FIGURES + 2));
}

function ownSpan(value: number): readonly [number, number] {
  if (value === 0) return [0, 1];
  const [a, b] = [value / OWN_REACH, value * OWN_REACH];
  return [Math.min(a, b), Math.max(a, b)];
}

/**
 * The scale of a number row: its usual span, or one around its own value, widened to hold all values that must be on it.
 *
 * @param unit in which it is shown
 * @param held values that must be on the scale, the present one first [SI]
 */
export function scaleOf(row: NumberGiven, unit: string, held: readonly number[]): Scale {
  const values = held.map((value) => fromSi(value, unit));
  const usual = row.usual?.map(([value, typed]) => fromSi(toSi(value, typed), unit));
  const [low = 0, high = 1] = usual ?? ownSpan(values[0] ?? 1);
  const within = (value: number) =>
    Math.min(Math.max(value, fromSi(row.min ?? -Infinity, unit)), fromSi(row.max ?? Infinity, unit));
  const whole = MEASURES[row.measure].form === "count";
  const least = within(outward(Math.min(low, high), false));
  const most = within(outward(Math.max(low, high), true));
  const ends = [least, most, ...values];
  return scaleBetween(Math.min(...ends), Math.max(...ends), unit, whole);
}

/** Where a value stands on the scale, 0 at its low end and 1 at its high one. */
export function placeOn({ low, high, ratio }: Scale, value: number): number {
  if (high === low) return 0;
  return ratio ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
}

/** The value at a place of the scale, its ends exactly. */
export function valueAt({ low, high, ratio, whole }: Scale, place: number): number {
  if (place <= 0) return low;
  if (place >= 1) return high;
  const raw = ratio ? low * (high / low) ** place : low + (high - low) * place;
  return whole ? Math.round(raw) : Number(raw.toPrecision(ratio ? VALUE_FIGURES : 12));
}

/** Rising values of a scale, so many at the most, both ends among them. */
export function valuesOf(scale: Scale, count: number): readonly number[] {
  if (scale.high === scale.low || count < 2) return [scale.low];
  const values = Array.from({ length: count }, (_, at) => valueAt(scale, at / (count - 1)));
  return [...new Set(values)];
}
