// The scale of a number row: what the trade has of it, widened to hold what stands there.

import type { NumberGiven } from "../graph/types.ts";
import { MEASURES } from "../units/measures.ts";
import { type Scale, scaleBetween, scaleIn } from "../units/scale.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** A number with no usual span of its own is tried from a quarter of itself to four times itself. */
const OWN_REACH = 4;
/** Ends are rounded outward to so many figures. */
const END_FIGURES = 2;

/** Rounded away from the middle to the figures of an end. */
function outward(value: number, up: boolean): number {
  if (value === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - END_FIGURES + 1);
  const rounded = (up ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9)) * step;
  return Number(rounded.toPrecision(END_FIGURES + 2));
}

const isCounted = ({ measure }: NumberGiven): boolean => MEASURES[measure].form === "count";

function withinLimits(row: NumberGiven, unit: string, low: number, high: number): readonly [number, number] {
  const within = (value: number) =>
    Math.min(Math.max(value, fromSi(row.min ?? -Infinity, unit)), fromSi(row.max ?? Infinity, unit));
  return [within(low), within(high)];
}

/** Both ends rounded outward, of what is counted whole, within what the row takes [unit]. */
function roundEnds(row: NumberGiven, unit: string, one: number, other: number): readonly [number, number] {
  const [low, high] = [outward(Math.min(one, other), false), outward(Math.max(one, other), true)];
  // Half a bed is none.
  return isCounted(row)
    ? withinLimits(row, unit, Math.ceil(low), Math.floor(high))
    : withinLimits(row, unit, low, high);
}

/** The scale of a row in another unit, its ends round in that one too. */
export function scaleRoundIn(scale: Scale, row: NumberGiven, unit: string): Scale {
  const there = scaleIn(scale, unit);
  if (there === scale) return scale;
  const [low, high] = roundEnds(row, unit, there.low, there.high);
  return { ...there, low, high };
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
  const whole = isCounted(row);
  const [least, most] = roundEnds(row, unit, low, high);
  const ends = [least, most, ...values];
  return scaleBetween(Math.min(...ends), Math.max(...ends), unit, whole);
}
