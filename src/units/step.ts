// How far an arrow key moves a number, and the ends of a slider around it.

import { parseUnit } from "./unit.ts";

export type SliderRange = { readonly min: number; readonly max: number; readonly step: number };

const STEPS_WITHIN_A_VALUE = 20;
/** A slider reaches at least half as far again as the value. */
const REACH = 1.5;
const STEPS_ON_A_SLIDER = 100;
/** Below this a power of ten is no longer an exact enough double to count steps with. */
const SMALLEST_SIZE = 1e-300;

/** The largest of 1, 2 or 5 times a power of ten that is not above a positive size. */
function roundStep(givenSize: number): number {
  const size = Math.max(givenSize, SMALLEST_SIZE);
  const exponent = Math.floor(Math.log10(size) + 1e-9);
  const lead = size / 10 ** exponent;
  const first = lead >= 5 - 1e-9 ? 5 : lead >= 2 - 1e-9 ? 2 : 1;
  return Number(`${first}e${exponent}`);
}

/** The least of 1, 2, 4, 5 or 10 times a power of ten that is not below a positive size. */
function roundReach(givenSize: number): number {
  const size = Math.max(givenSize, SMALLEST_SIZE);
  const exponent = Math.floor(Math.log10(size) + 1e-9);
  const lead = size / 10 ** exponent;
  return Number(`${[1, 2, 4, 5].find((first) => first >= lead - 1e-9) ?? 10}e${exponent}`);
}

/** The step of an arrow key, about a twentieth of the value; one degree, and one in a hundred for a percentage. */
export function stepFor(value: number, unit: string): number {
  const known = parseUnit(unit);
  if (known?.dimension.point) return 1;
  const size = Math.abs(value);
  if (known?.text === "%") return size >= 5 || size === 0 ? 1 : roundStep(size / STEPS_WITHIN_A_VALUE);
  return size === 0 || !Number.isFinite(size) ? 1 : roundStep(size / STEPS_WITHIN_A_VALUE);
}

function naturalEnds(value: number, unit: string): readonly [number, number] {
  const known = parseUnit(unit);
  if (known?.dimension.point) return [Math.floor(value) - 20, Math.ceil(value) + 20];
  if (known?.text === "%" && value >= 0 && value <= 100) return [0, 100];
  if (value === 0) return [0, 10];
  const reach = roundReach(Math.abs(value) * REACH);
  return value > 0 ? [0, reach] : [-reach, 0];
}

/**
 * A slider around a value: from nothing to half as far again or somewhat more, within the limits where there are any.
 * @param min the least the number may be [unit]
 * @param max the most the number may be [unit]
 * @returns the ends, which always hold the value, and the step [unit]
 */
export function sliderRange(value: number, unit: string, min?: number, max?: number): SliderRange {
  const [low, high] = naturalEnds(value, unit);
  const least = Math.min(value, Math.max(low, min ?? Number.NEGATIVE_INFINITY));
  const most = Math.max(value, Math.min(high, max ?? Number.POSITIVE_INFINITY));
  const width = most - least;
  return {
    min: least,
    max: most,
    step: width > 0 ? roundStep(width / STEPS_ON_A_SLIDER) : stepFor(value, unit),
  };
}
