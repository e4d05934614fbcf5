// How far a number that was worked out is rounded where it is shown: as a grower says it. Its working gives it whole.
// The steps are those of the screen's design; those of litres are chosen to be about as fine.

import type { Measure } from "./measures.ts";
import { parseUnit } from "./unit.ts";

/** From so much on in steps of so much. */
type Steps = readonly (readonly [from: number, step: number])[];

const GALLONS: Steps = [
  [500, 10],
  [100, 5],
];
const LITRES: Steps = [
  [1000, 10],
  [100, 5],
];
const STEPS: Readonly<Record<string, Steps>> = { gal: GALLONS, "imp gal": GALLONS, L: LITRES };

const FIGURES = 3;
/** Counts and days are whole from here on, and halves below. */
const WHOLE_FROM = 10;
/** All but rounding of a sum is all [%]. */
const DUST = 1e-7;

const stepped = (value: number, step: number): number => Math.round(value / step) * step;

/** To so many figures, without the last bits that this leaves. */
const figured = (value: number, figures = FIGURES): number => Number(value.toPrecision(figures));

/** Halves below ten and whole from there; of what would be nothing its first figure, so that some is never none. */
function halves(value: number): number {
  const rounded = Math.abs(value) < WHOLE_FROM ? stepped(value, 0.5) : Math.round(value);
  return rounded === 0 ? figured(value, 1) : rounded;
}

/** Whether a share is all there is, as it is shown: below, nothing reads as 100 %. */
export const isWholeShare = (share: number): boolean => share * 100 > 100 - DUST;

/** A share in percent: whole, under one its first figure; 100 only where all is there. */
export function roundedPercent(percent: number): number {
  if (isWholeShare(percent / 100))
    return percent < 100 + DUST ? 100 : Math.max(101, figured(Math.round(percent)));
  if (Math.abs(percent) < 1) return figured(percent, 1);
  return Math.min(99, Math.round(percent));
}

/** A count: a whole one is never another; else halves below ten. */
export const roundedCount = (count: number): number => (Number.isInteger(count) ? count : halves(count));

/** Days of a span. */
export const roundedDays = (days: number): number => figured(halves(days));

/** Whether so many figures give it whole. */
const isWhole = (value: number, figures: number): boolean =>
  Math.abs(value - figured(value, figures)) <= Math.abs(value) * DUST;

/**
 * A usual value, which nobody typed: as the table has it where that is short, else to two figures: its table had it in
 * another unit, and was no finer.
 */
export const roundedUsual = (value: number): number =>
  value === 0 || isWhole(value, FIGURES) ? value : figured(value, 2);

const CENTS = 100;
const isCents = (value: number): boolean =>
  Math.abs(value * CENTS - Math.round(value * CENTS)) < CENTS * DUST;

/** Money: a sum of what was typed to the cent stays so; what is divided is whole from ten. */
function roundedMoney(value: number): number {
  if (isCents(value)) return value;
  return Math.abs(value) < WHOLE_FROM ? figured(value) : figured(Math.round(value));
}

/** A number in a unit, three figures at the most, water in round steps. */
function roundedPlain(value: number, unitText: string): number {
  const rounded = figured(value);
  const steps = STEPS[parseUnit(unitText)?.text ?? unitText];
  const [, step] = steps?.find(([from]) => Math.abs(rounded) >= from) ?? [];
  return step === undefined ? rounded : figured(stepped(value, step));
}

/**
 * The number that is shown in the place of one that was worked out.
 * @param value [unitText]
 */
export function roundedIn(value: number, unitText: string, { form }: Pick<Measure, "form">): number {
  if (!Number.isFinite(value) || value === 0) return value;
  if (form === "count") return roundedCount(value);
  if (form === "money") return roundedMoney(value);
  return roundedPlain(value, unitText);
}
