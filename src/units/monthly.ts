// Monthly figures (rain, warmth, drying) in the units that a grower's own tables have.

import { MEASURES, type MeasureName, type UnitSystem } from "./measures.ts";
import { fromSi, toSi } from "./unit.ts";

/** Decimals to which such figures are commonly published. */
const DIGITS: Readonly<Record<string, number>> = { in: 2, "in/day": 3, "mm/day": 2 };
const USUAL_DIGITS = 1;
/** Decimals up to which a number counts as typed, not as turned into another unit. */
const TYPED_DIGITS = 4;
/** Significant figures that turning a number into another unit keeps. */
const KEPT = 12;

const to = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A figure rounded as it is published [unit]. */
export const roundedMonthly = (value: number, unit: string): number =>
  to(value, DIGITS[unit] ?? USUAL_DIGITS);

/** A figure as it stands in a field: what was typed stays. */
export const shownMonthly = (value: number, unit: string): number =>
  to(value, TYPED_DIGITS) === value ? value : roundedMonthly(value, unit);

/** The unit in which figures are shown and typed; a number without one has none. */
export const monthlyUnit = (measure: MeasureName, unit: string, units: UnitSystem): string =>
  unit === "" ? "" : MEASURES[measure][units];

/** A figure in another unit; in its own it stays to the last bit. */
export const monthlyIn = (value: number, from: string, unit: string): number =>
  from === unit ? value : Number(fromSi(toSi(value, from), unit).toPrecision(KEPT));
