// Water between field capacity and wilting point in the root zone, as depths: how much, when it runs short, one day of it.

import { MILLIMETRE } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Depths that roots can take: in all, and without stress [m]. */
export type AvailableWater = { readonly total: number; readonly readily: number };

/**
 * Water that a soil holds for roots, per depth of soil.
 * FC - WP
 * @param fieldCapacity - water left after draining, by volume [m/m]
 * @param wiltingPoint - water that roots cannot take, by volume [m/m]
 * @returns water held between both [m/m]
 * @throws DomainError unless 0 <= wilting point < field capacity <= 1
 * @validity any soil
 * @source FAO-56 Eq. 82
 */
export function heldWater(fieldCapacity: number, wiltingPoint: number): number {
  if (!(wiltingPoint >= 0 && fieldCapacity > wiltingPoint && fieldCapacity <= 1)) {
    const limit = "above the wilting point, at most 1";
    throw new DomainError("field capacity", fieldCapacity, limit, `${BOOK}, Eq. 82`);
  }
  return fieldCapacity - wiltingPoint;
}

/**
 * Total and readily available water of a root zone.
 * TAW = (FC - WP) Zr; RAW = p TAW
 * @param given.held - water held between field capacity and wilting point, see `heldWater` [m/m]
 * @param given.rootDepth - depth of the roots [m]
 * @param given.depletion - share p that can be used without stress, 0 to 1 [-]
 * @returns total and readily available depth [m]
 * @throws DomainError when a value is negative or the share outside 0 to 1
 * @validity any soil
 * @source FAO-56 Eq. 82 and 83
 */
export function availableWater(given: {
  readonly held: number;
  readonly rootDepth: number;
  readonly depletion: number;
}): AvailableWater {
  if (!(given.held >= 0 && given.held <= 1)) {
    throw new DomainError("held water", given.held, "0 to 1", `${BOOK}, Eq. 82`);
  }
  requireNotNegative("root depth", given.rootDepth, `${BOOK}, Eq. 82`);
  if (!(given.depletion >= 0 && given.depletion <= 1)) {
    throw new DomainError("depletion fraction", given.depletion, "0 to 1", `${BOOK}, Eq. 83`);
  }
  const total = given.held * given.rootDepth;
  return { total, readily: given.depletion * total };
}

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
    throw new DomainError("depletion fraction", tableFraction, "0 to 1", `${BOOK}, Table 22`);
  }
  requireNotNegative("crop use", cropUse, `${BOOK}, Table 22`);
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
  requireNotNegative("rain", rain, `${BOOK}, ch. 8`);
  requireNotNegative("reference evapotranspiration", reference, `${BOOK}, ch. 8`);
  return rain < 0.2 * reference ? 0 : rain;
}

/** One day of a root zone; depths [m]. `rise` is water that climbs from a water table, `runoff` rain that runs off. */
export type SoilDayGiven = {
  readonly depletion: number;
  readonly total: number;
  readonly rain: number;
  readonly irrigation: number;
  readonly cropUse: number;
  readonly runoff?: number;
  readonly rise?: number;
};

/** What a day did to a root zone [m]; `use` is less than asked only where the soil ran out. */
export type SoilDay = { readonly depletion: number; readonly drained: number; readonly use: number };

/**
 * One day of the root zone's water, with the day's water coming before the crop's use or after it.
 * Dr = Dr before - (P - RO) - I - CR + ETc + DP, 0 <= Dr <= TAW; all above field capacity drains the same day
 * @param given.depletion - water missing below field capacity at the start [m]
 * @param given.total - total available water [m]
 * @param given.rain - rain that counts [m]
 * @param given.irrigation - water given that reaches the roots [m]
 * @param given.cropUse - crop evapotranspiration after stress [m]
 * @param given.runoff - rain that runs off; 0 if left out [m]
 * @param given.rise - water from below; 0 if left out [m]
 * @param order - `early`: water comes first, as in example 38; `late`: the crop's use comes first, as Eq. 88
 * @returns depletion at the end, drained water and actual use [m]
 * @throws DomainError when a depth is negative, runoff exceeds the rain or depletion the total
 * @validity daily steps
 * @source FAO-56 Eq. 85, 86, 88; example 38
 */
export function soilDay(given: SoilDayGiven, order: "early" | "late"): SoilDay {
  const { depletion, total, rain, irrigation, cropUse, runoff = 0, rise = 0 } = given;
  requireDepths({ depletion, total, rain, irrigation, cropUse, runoff, rise });
  if (runoff > rain) throw new DomainError("runoff", runoff, "at most the rain", `${BOOK}, Eq. 85`);
  if (depletion > total * (1 + 1e-9)) {
    throw new DomainError("depletion", depletion, "at most the total available water", `${BOOK}, Eq. 86`);
  }
  const water = rain - runoff + irrigation + rise;
  if (order === "early") {
    const wetted = Math.max(0, depletion - water);
    const use = Math.min(cropUse, Math.max(0, total - wetted));
    return { depletion: wetted + use, drained: Math.max(0, water - depletion), use };
  }
  const use = Math.min(cropUse, Math.max(0, total - depletion + water));
  const left = depletion - water + use;
  return { depletion: Math.max(0, left), drained: Math.max(0, -left), use };
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

/**
 * Share of its potential use that a crop must have had, told from its harvest.
 * ETa / ETc = 1 - (1 - Ya / Ym) / Ky
 * @param responseFactor - yield response factor Ky of the crop [-]
 * @param harvestShare - harvest over the harvest without thirst, 0 to 1 [-]
 * @returns actual over potential crop use, 0 to 1 [-]
 * @throws DomainError when the factor is not above zero, or the harvest is lower than thirst alone can make it
 * @validity a season's mean
 * @source FAO-56 Eq. 90, example 44
 */
export function useShareOfHarvest(responseFactor: number, harvestShare: number): number {
  const share = 1 - (1 - harvestShare) / responseFactor;
  requirePositive("yield response factor", responseFactor, `${BOOK}, Eq. 90`);
  if (!(share >= 0 && share <= 1)) {
    throw new DomainError("share of the harvest", harvestShare, "what thirst can explain", `${BOOK}, Eq. 90`);
  }
  return share;
}

/** One sum settles the usual day quickly; only a wrong one is searched for its name. */
function requireDepths(depths: Required<SoilDayGiven>): void {
  const { depletion, total, rain, irrigation, cropUse, runoff, rise } = depths;
  const least = Math.min(depletion, total, rain, irrigation, cropUse, runoff, rise);
  if (least >= 0 && depletion + total + rain + irrigation + cropUse + runoff + rise < Infinity) return;
  for (const [name, depth] of Object.entries(depths)) {
    requireNotNegative(`${name} of the day`, depth, `${BOOK}, Eq. 85`);
  }
}
