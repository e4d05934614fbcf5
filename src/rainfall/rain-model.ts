// Twelve normals to the chain of wet and dry days and the amounts of the wet ones.
import { MILLIMETRE } from "../units/constants.ts";

/** One month of a two-state chain with gamma amounts. */
export type RainMonth = {
  /** Chance of a wet day after a dry one, and after a wet one [-]. */
  readonly wetAfterDry: number;
  readonly wetAfterWet: number;
  /** Shape [-] and scale [m] of the gamma distribution of a wet day's rain; 0 where it never rains. */
  readonly shape: number;
  readonly scale: number;
};

/** Days of each month in the mean of four years. */
export const MEAN_MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const AFTER_DRY_SHARE = 0.75;
const AFTER_WET_MORE = 0.25;
const SCALE_SLOPE = 1.83;
/** [mm], the relation was fitted in millimetres. */
const SCALE_OFFSET = 2.16;
/** The largest shape used where the mean of a wet day is too small for the relation. */
const SMALL_SHAPE = 0.999;

/**
 * Scale of the gamma distribution of a wet day's rain, from its mean: 1.83 x - 2.16 in millimetres.
 * @param meanWetDay mean rain of a wet day [m], above 0
 * @returns scale [m]; the mean over 0.999 where the relation would make the shape larger than that
 * @source Geng, Penning de Vries, Supit 1986, Agric. For. Meteorol. 36:363-376; equations read second-hand
 */
export function gammaScale(meanWetDay: number): number {
  const mean = meanWetDay / MILLIMETRE;
  const scale = SCALE_SLOPE * mean - SCALE_OFFSET;
  const least = mean / SMALL_SHAPE;
  return Math.max(scale, least) * MILLIMETRE;
}

/**
 * One month's chain and amounts from its normals.
 * @param rain mean rain of the month [m]
 * @param wetDays mean wet days of the month [-]
 * @param days days in the month [-]
 * @source Geng, Penning de Vries, Supit 1986, Agric. For. Meteorol. 36:363-376; equations read second-hand
 */
export function rainMonth(rain: number, wetDays: number, days: number): RainMonth {
  if (!(rain > 0) || !(wetDays > 0)) return { wetAfterDry: 0, wetAfterWet: 0, shape: 0, scale: 0 };
  const wetShare = Math.min(1, wetDays / days);
  const wetAfterDry = AFTER_DRY_SHARE * wetShare;
  const meanWetDay = rain / (wetShare * days);
  const scale = gammaScale(meanWetDay);
  return { wetAfterDry, wetAfterWet: AFTER_WET_MORE + wetAfterDry, shape: meanWetDay / scale, scale };
}

/** Share of wet days that a month's chain settles to [-]: p01 / (1 + p01 - p11). */
export function wetShare(month: RainMonth): number {
  const denominator = 1 + month.wetAfterDry - month.wetAfterWet;
  return denominator > 0 ? month.wetAfterDry / denominator : 1;
}
