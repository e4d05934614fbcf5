// The span that a number is turned and tried over: its ends, whether it runs evenly or in ratios, the places along it, and
// the round values that a grower would name.

import { HOUR, MINUTE } from "./constants.ts";
import { tidy } from "./tidy.ts";
import { fromSi, toSi } from "./unit.ts";

/**
 * Ends in `unit`, both included; `ratio`: even steps of the logarithm; `whole`: whole numbers only; `sizes`: what is sold,
 * rising, where nothing lies between two of them.
 */
export type Scale = {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly ratio: boolean;
  readonly whole: boolean;
  readonly sizes?: readonly number[];
};

/** A span runs in ratios from so many times on between its ends. */
const RATIO_FROM = 20;
/** Beyond so many times, most of its length would be of values that nobody means. */
const RATIO_UP_TO = 1e9;
/** Figures of a value between the ends. */
const VALUE_FIGURES = 4;

/** A scale between two ends, given in either order [unit]. */
export function scaleBetween(one: number, other: number, unit: string, whole = false): Scale {
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  const times = low > 0 ? high / low : 1;
  return { low, high, unit, ratio: times >= RATIO_FROM && times <= RATIO_UP_TO, whole };
}

/** The same span in another unit of the same kind; a scale that runs in ratios goes on doing so. */
export function scaleIn(scale: Scale, unit: string): Scale {
  if (unit === scale.unit) return scale;
  const [low, high] = [scale.low, scale.high].map((end) => tidy(fromSi(toSi(end, scale.unit), unit)));
  const sizes = scale.sizes?.map((size) => sizeIn(size, scale.unit, unit));
  return { ...scale, low: low ?? scale.low, high: high ?? scale.high, unit, ...(sizes ? { sizes } : {}) };
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
  return whole ? Math.round(raw) : ratio ? Number(raw.toPrecision(VALUE_FIGURES)) : tidy(raw);
}

/** Rising values of a scale, so many at the most, both ends among them. */
export function valuesOf(scale: Scale, count: number): readonly number[] {
  if (scale.high === scale.low || count < 2) return [scale.low];
  const values = Array.from({ length: count }, (_, at) => valueAt(scale, at / (count - 1)));
  return [...new Set(values)];
}

const SIZE_FIGURES = 3;
/** Sizes are told in whole millimeters from so many on: five eighths of an inch are sold as 16 mm. */
const WHOLE_MILLIMETERS = 9;
/** Nearer than this it is the same size by another name: 19 mm and three quarters of an inch. */
const SAME_SIZE = 0.02;

/** A size in another unit, as it is called there. */
const named = (size: number, unit: string): number =>
  unit === "mm" && size >= WHOLE_MILLIMETERS ? Math.round(size) : Number(size.toPrecision(SIZE_FIGURES));

/** The scale where only some sizes are sold, given in another unit. */
export function scaleOfSizes(scale: Scale, sizes: readonly number[], unit: string): Scale {
  return { ...scale, sizes: sizes.map((size) => sizeIn(size, unit, scale.unit)) };
}

const sizeIn = (size: number, from: string, to: string): number =>
  from === to ? size : named(fromSi(toSi(size, from), to), to);

/** An even scale has at least so many steps between its ends, twice and a half as many at the most. */
const STEPS_BETWEEN_ENDS = 60;
/** Counting steps in doubles errs by less than this share of one. */
const DUST = 1e-9;
const TIMES_COARSE = 10;

/** The largest of 1, 2 or 5 times a power of ten that is not above a positive size. */
export function roundedDown(size: number): number {
  const exponent = Math.floor(Math.log10(size) + DUST);
  const lead = size / 10 ** exponent;
  const first = lead >= 5 - DUST ? 5 : lead >= 2 - DUST ? 2 : 1;
  return Number(`${first}e${exponent}`);
}

/**
 * The step at a value of a scale in ratios: a twentieth of the decade's beginning up to twice that, a fifth (or, from ten
 * on, a quarter) beyond. Every bend of this ladder is itself a rung of the steps on both sides of it.
 */
function ratioStep(value: number, up: boolean): number {
  const exponent = Math.floor(Math.log10(value) + (up ? DUST : -DUST));
  const decade = Number(`1e${exponent}`);
  const lead = value / decade;
  if (up ? lead < 2 - DUST : lead <= 2 + DUST) return tidy(decade * 0.05);
  return tidy(decade * (decade >= 100 ? 0.25 : 0.2));
}

/** What is shown in so many figures hides a finer step. */
const SHOWN_FIGURES = 3;
/** A short scale has at least so many steps, whether each is seen or not. */
const FEWEST_STEPS = 5;

/** The one step of an even scale. */
function evenStep({ low, high }: Scale): number {
  const step = roundedDown((high - low) / STEPS_BETWEEN_ENDS);
  const size = Math.max(Math.abs(low), Math.abs(high));
  const seen = Number(`1e${Math.floor(Math.log10(size) + DUST) - SHOWN_FIGURES + 1}`);
  return step < seen && seen * FEWEST_STEPS <= high - low ? seen : step;
}

/** Units of what is told by the clock [s]. */
const CLOCK_UNITS: ReadonlyMap<string, number> = new Map([
  ["s", 1],
  ["min", MINUTE],
  ["h", HOUR],
]);
const CLOCK_STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600];
/** Up to so much in steps of so much; each bend is a rung of the steps on both sides of it [s]. */
const CLOCK_LADDER: readonly (readonly [upTo: number, step: number])[] = [
  [5, 0.5],
  [20, 1],
  [60, 5],
  [300, 15],
  [1200, 60],
  [3600, 300],
  [10_800, 900],
  [43_200, 1800],
];

/** The step of what is told by the clock [unit]; null where it is finer than that. */
function clockStep(scale: Scale, value: number, up: boolean): number | null {
  const unit = CLOCK_UNITS.get(scale.unit);
  if (unit === undefined) return null;
  const even = ((scale.high - scale.low) * unit) / STEPS_BETWEEN_ENDS;
  if (!scale.ratio) {
    const step = CLOCK_STEPS.findLast((size) => size <= even * (1 + DUST));
    return step === undefined ? null : step / unit;
  }
  const seconds = Math.max(value, scale.low) * unit;
  if (up ? seconds < 1 - DUST : seconds <= 1 + DUST) return null;
  const rung = CLOCK_LADDER.find(([upTo]) =>
    up ? seconds < upTo * (1 - DUST) : seconds <= upTo * (1 + DUST),
  );
  return (rung?.[1] ?? HOUR) / unit;
}

function stepAt(scale: Scale, value: number, up: boolean): number {
  const clock = clockStep(scale, value, up);
  if (clock !== null) return clock;
  const step = scale.ratio ? ratioStep(Math.max(value, scale.low), up) : evenStep(scale);
  return scale.whole ? Math.max(1, Math.round(step)) : step;
}

/** The next round value above or below, on or off the scale. */
function nextRound(scale: Scale, value: number, up: boolean): number {
  const { sizes } = scale;
  if (sizes) {
    const same = Math.abs(value) * SAME_SIZE;
    const next = up
      ? sizes.find((size) => size > value + same)
      : sizes.findLast((size) => size < value - same);
    return next ?? (up ? Infinity : -Infinity);
  }
  const step = stepAt(scale, value, up);
  const rungs = value / step;
  return tidy((up ? Math.floor(rungs + DUST) + 1 : Math.ceil(rungs - DUST) - 1) * step);
}

const isOn = ({ low, high }: Scale, value: number): boolean => value >= low && value <= high;

/**
 * The round value one step up or down, ten with `coarse`: a multiple of 1, 2, 5 or 25 times a power of ten of the unit.
 * From a round value, a step up and a step down lead back. A value off the scale comes back to it.
 *
 * @returns the same value where the scale ends before the next round one
 */
export function roundStep(scale: Scale, from: number, by: 1 | -1, coarse = false): number {
  let value = Math.min(Math.max(from, scale.low), scale.high);
  for (let left = coarse ? TIMES_COARSE : 1; left > 0; left--) {
    const next = nextRound(scale, value, by === 1);
    if (!isOn(scale, next)) break;
    value = next;
  }
  return value;
}

/** The size on the scale whose place is nearest. */
function sizeAt(scale: Scale, sizes: readonly number[], place: number): number {
  const near = sizes.filter((size) => isOn(scale, size));
  const off = (size: number) => Math.abs(placeOn(scale, size) - place);
  return near.reduce((best, size) => (off(size) < off(best) ? size : best), near[0] ?? scale.low);
}

/** The round value nearest to a place of the scale, never off it. */
export function roundAt(scale: Scale, place: number): number {
  if (scale.sizes) return sizeAt(scale, scale.sizes, place);
  const aim = valueAt({ ...scale, whole: false }, Math.min(1, Math.max(0, place)));
  const below = nextRound(scale, nextRound(scale, aim, true), false);
  const near = [below, nextRound(scale, aim, true)].filter((value) => isOn(scale, value));
  const off = (value: number) => Math.abs(placeOn(scale, value) - place);
  return near.reduce((best, value) => (off(value) < off(best) ? value : best), near[0] ?? aim);
}

/** Rising round values spread over a scale, so many at the most; sizes that are sold are all among them. */
export function roundValuesOf(scale: Scale, count: number): readonly number[] {
  if (scale.high === scale.low || count < 2) return [scale.low];
  const { sizes = [], ...plain } = scale;
  const sold = sizes.filter((size) => isOn(scale, size));
  const spread = Math.max(2, count - sold.length);
  const values = Array.from({ length: spread }, (_, at) => roundAt(plain, at / (spread - 1)));
  return [...new Set([...values, ...sold])].sort((a, b) => a - b);
}
