// Water between field capacity and wilting point in the root zone, as depths: how much, when it runs short, one day of it.

import { MILLIMETRE } from "../units/constants.ts";
import { DomainError, requireNotNegative } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";
const TABLE_22 = `${BOOK}, Table 22`;
const CHAPTER_8 = `${BOOK}, ch. 8`;

/**
 * Share of the available water that can be used without stress, for the day's crop use.
 * p = p table + 0.04 (5 - ETc), ETc in mm/d, within 0.1 to 0.8
 * @param tableFraction - share of the table, which is for 5 mm a day [-]
 * @param cropUse - crop evapotranspiration of the day [m]
 * @returns share, within the 0.1 to 0.8 that the source allows [-]
 * @throws DomainError when the table's share is outside 0 to 1 or the use negative
 * @validity crop use of a day
 * @source FAO-56 ch. 8, Table 22 footnote 2
 */
export function depletionFraction(tableFraction: number, cropUse: number): number {
  if (!(tableFraction >= 0 && tableFraction <= 1)) {
    throw new DomainError("depletion fraction", tableFraction, "0 to 1", TABLE_22);
  }
  requireNotNegative("crop use", cropUse, TABLE_22);
  return Math.min(0.8, Math.max(0.1, tableFraction + 0.04 * (5 - cropUse / MILLIMETRE)));
}

/**
 * Stress coefficient: the share of its full use that a crop takes when water is short.
 * Ks = (TAW - Dr) / (TAW - RAW) once Dr is above RAW; 1 until then; 0 from TAW on
 * @param depletion - water missing below field capacity Dr [m]
 * @param total - total available water TAW [m]
 * @param readily - readily available water RAW [m]
 * @returns stress coefficient, 0 to 1 [-]
 * @throws DomainError when a value is not a number or the readily available water outside 0 to TAW
 * @validity any root zone
 * @source FAO-56 Eq. 84
 */
export function stress(depletion: number, total: number, readily: number): number {
  if (Number.isNaN(depletion)) throw new DomainError("depletion", depletion, "a number", `${BOOK}, Eq. 84`);
  if (!(readily >= 0 && readily <= total)) {
    throw new DomainError("readily available water", readily, "0 to the total", `${BOOK}, Eq. 84`);
  }
  if (depletion <= readily) return 1;
  return depletion >= total ? 0 : (total - depletion) / (total - readily);
}

/**
 * Depth of the roots as they grow in a straight line.
 * Zr = start + (end - start) min(1, t / days to full)
 * @param start - depth at planting [m]
 * @param end - depth when full grown [m]
 * @param daysSincePlanting - 0 on the day of planting [day]
 * @param daysToFull - days until full grown, in the source the start of the middle stage [day]
 * @returns depth of the roots [m]
 * @throws DomainError when a depth or number of days is negative
 * @validity annual crops; the full depth from the first day where `daysToFull` is 0
 * @source FAO-56 Annex 8 (from memory)
 */
export function rootDepth(start: number, end: number, daysSincePlanting: number, daysToFull: number): number {
  for (const depth of [start, end]) {
    requireNotNegative("root depth", depth, `${BOOK}, Annex 8`);
  }
  for (const days of [daysSincePlanting, daysToFull]) {
    requireNotNegative("days of root growth", days, `${BOOK}, Annex 8`);
  }
  return daysSincePlanting >= daysToFull ? end : start + ((end - start) * daysSincePlanting) / daysToFull;
}

/**
 * Rain that counts for a crop: a sprinkle that dries off the leaves does not.
 * P where P >= 0.2 ETo, else 0
 * @param rain - rain of the day [m]
 * @param reference - reference evapotranspiration of the day [m]
 * @returns rain that counts [m]
 * @throws DomainError when a depth is negative
 * @validity daily rain
 * @source FAO-56 ch. 8, on Eq. 85
 */
export function rainThatCounts(rain: number, reference: number): number {
  requireNotNegative("rain", rain, CHAPTER_8);
  requireNotNegative("reference evapotranspiration", reference, CHAPTER_8);
  return rain < 0.2 * reference ? 0 : rain;
}

/**
 * Share of the harvest that is likely lost to thirst.
 * 1 - Ya / Ym = Ky (1 - ETa / ETc), 1 at the most
 * @param responseFactor - yield response factor Ky of the crop [-]
 * @param useShare - actual over potential crop use in the season, 0 to 1 [-]
 * @returns likely loss, 0 to 1 [-]
 * @throws DomainError when the factor is negative or the share outside 0 to 1
 * @validity a season's mean; a loss cannot be more than the whole harvest
 * @source FAO-56 Eq. 90
 */
export function yieldLoss(responseFactor: number, useShare: number): number {
  requireNotNegative("yield response factor", responseFactor, `${BOOK}, Eq. 90`);
  if (!(useShare >= 0 && useShare <= 1)) {
    throw new DomainError("share of potential use", useShare, "0 to 1", `${BOOK}, Eq. 90`);
  }
  return Math.min(1, responseFactor * (1 - useShare));
}
