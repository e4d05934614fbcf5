// How much more or less than reference grass a crop uses, through its life.

import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Crop coefficients [-] and the days of the four stages [day]: initial, development, middle, late. */
export type CropCurve = {
  readonly kcInitial: number;
  readonly kcMiddle: number;
  readonly kcEnd: number;
  readonly stages: readonly [number, number, number, number];
};

/**
 * Days from planting to the end of the last stage.
 * L = L ini + L dev + L mid + L late
 * @param stages - days of the four stages [day]
 * @returns length of the crop's life [day]
 * @throws DomainError when a stage is negative or all are zero
 * @validity any crop with four stages
 * @source FAO-56 ch. 6, Fig. 34
 */
export function cropLife(stages: CropCurve["stages"]): number {
  for (const days of stages) {
    requireNotNegative("days of a stage", days, `${BOOK}, Eq. 66`);
  }
  const life = stages[0] + stages[1] + stages[2] + stages[3];
  requirePositive("length of the crop's life", life, `${BOOK}, Eq. 66`);
  return life;
}

/**
 * Crop coefficient on a day; null before planting and after the last stage.
 * Level in the first and third stage, Kc = Kc before + (i - days before) / days of the stage (Kc next - Kc before) else
 * @param curve - coefficients and days of the stages [-]
 * @param daysSincePlanting - 0 on the day of planting, which is day i = 1 of the source [day]
 * @returns crop coefficient, or null outside the crop's life [-]
 * @throws DomainError when a stage is negative or all are zero
 * @validity any crop with four stages
 * @source FAO-56 Eq. 66, example 28
 */
export function cropCoefficient(curve: CropCurve, daysSincePlanting: number): number | null {
  const life = cropLife(curve.stages);
  if (!(daysSincePlanting >= 0 && daysSincePlanting < life)) return null;
  const day = daysSincePlanting + 1;
  const [initial, development, middle, late] = curve.stages;
  if (day <= initial) return curve.kcInitial;
  if (day <= initial + development) {
    return curve.kcInitial + ((day - initial) / development) * (curve.kcMiddle - curve.kcInitial);
  }
  const lateStart = initial + development + middle;
  if (day <= lateStart) return curve.kcMiddle;
  // A fraction of a day before the end would otherwise run past Kc end.
  return curve.kcMiddle + Math.min(1, (day - lateStart) / late) * (curve.kcEnd - curve.kcMiddle);
}

/**
 * Four stages stretched or shortened in proportion to a given length of life, whole days kept.
 * Each stage end is moved to the nearest whole day of end times (wanted / listed)
 * @param stages - days of the four stages as listed [day]
 * @param life - wanted days from planting to the end [day]
 * @returns days of the four stages, their sum the wanted one [day]
 * @throws DomainError when the wanted life is not a whole number of at least four days
 * @validity as far as the crop's stages keep their shares of its life
 * @source common practice, no source
 */
export function stretchedStages(stages: CropCurve["stages"], life: number): CropCurve["stages"] {
  if (!(Number.isInteger(life) && life >= 4)) {
    throw new DomainError(
      "length of the crop's life",
      life,
      "whole, at least 4 days",
      "common practice, no source",
    );
  }
  const ratio = life / cropLife(stages);
  const first = Math.round(stages[0] * ratio);
  const second = Math.round((stages[0] + stages[1]) * ratio);
  const third = Math.round((stages[0] + stages[1] + stages[2]) * ratio);
  return [first, second - first, third - second, life - third];
}

/**
 * Middle or end crop coefficient corrected for wind and dryness of the air.
 * Kc = Kc table + [0.04 (u2 - 2) - 0.004 (RHmin - 45)] (h / 3)^0.3
 * @param given.coefficient - coefficient of the table [-]
 * @param given.wind - mean wind at 2 m in that stage, 1 to 6 [m/s]
 * @param given.lowestHumidity - mean lowest relative humidity in that stage, 0.20 to 0.80 [-]
 * @param given.height - mean height of the crop in that stage, 0.1 to 10 [m]
 * @returns corrected coefficient [-]
 * @throws DomainError outside these ranges
 * @validity the ranges given; end coefficients under 0.45 are not corrected, see `adjustedKcEnd`
 * @source FAO-56 Eq. 62, 65, 70
 */
export function adjustedKc(given: {
  readonly coefficient: number;
  readonly wind: number;
  readonly lowestHumidity: number;
  readonly height: number;
}): number {
  return given.coefficient + climateCorrection(given);
}

/**
 * End crop coefficient corrected for wind and dryness; a crop that is let dry keeps that of the table.
 * As `adjustedKc` where the table's coefficient is at least 0.45, else unchanged
 * @param given - as for `adjustedKc`, units there [-]
 * @returns corrected coefficient [-]
 * @throws DomainError outside the ranges of `adjustedKc`
 * @validity the ranges of `adjustedKc`
 * @source FAO-56 Eq. 65
 */
export function adjustedKcEnd(given: Parameters<typeof adjustedKc>[0]): number {
  return given.coefficient >= 0.45 ? adjustedKc(given) : given.coefficient;
}

/**
 * What wind and dryness add to a crop coefficient.
 * [0.04 (u2 - 2) - 0.004 (RHmin - 45)] (h / 3)^0.3
 * @param given.wind - mean wind at 2 m, 1 to 6 [m/s]
 * @param given.lowestHumidity - mean lowest relative humidity, 0.20 to 0.80 [-]
 * @param given.height - height of the crop, 0.1 to 10 [m]
 * @returns addition to the coefficient [-]
 * @throws DomainError outside these ranges
 * @validity the ranges given
 * @source FAO-56 Eq. 62
 */
export function climateCorrection(given: {
  readonly wind: number;
  readonly lowestHumidity: number;
  readonly height: number;
}): number {
  requireWithin("wind", given.wind, [1, 6], `${BOOK}, Eq. 62`);
  requireWithin("lowest humidity", given.lowestHumidity, [0.2, 0.8], `${BOOK}, Eq. 62`);
  requireWithin("height of the crop", given.height, [0.1, 10], `${BOOK}, Eq. 62`);
  const percent = given.lowestHumidity * 100;
  return (0.04 * (given.wind - 2) - 0.004 * (percent - 45)) * (given.height / 3) ** 0.3;
}

/** One of several crops that share a bed: its share of the ground [-], its height [m] and its coefficient [-]. */
export type SharedCrop = { readonly share: number; readonly height: number; readonly coefficient: number };

/**
 * Crop coefficient of crops that grow together, weighted by the ground each covers and its height.
 * Kc = sum(f h Kc) / sum(f h)
 * @param crops - share of the ground f [-], height h [m] and coefficient of each [-]
 * @returns crop coefficient of all together [-]
 * @throws DomainError when there is no crop, or a share or height is not above zero
 * @validity crops side by side whose leaves mingle
 * @source FAO-56 ch. 10, example 46
 */
export function intercropCoefficient(crops: readonly SharedCrop[]): number {
  let weight = 0;
  let weighted = 0;
  for (const crop of crops) {
    if (!(crop.share > 0))
      throw new DomainError("share of a crop", crop.share, "above 0", `${BOOK}, example 46`);
    if (!(crop.height > 0))
      throw new DomainError("height of a crop", crop.height, "above 0", `${BOOK}, example 46`);
    weight += crop.share * crop.height;
    weighted += crop.share * crop.height * crop.coefficient;
  }
  if (weight === 0) throw new DomainError("number of crops", 0, "at least 1", `${BOOK}, example 46`);
  return weighted / weight;
}
