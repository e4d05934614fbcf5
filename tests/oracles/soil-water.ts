// The soil's day of the published schedules, by which stress and depletion fraction are checked.

import { DomainError, requireNotNegative } from "../../src/physics/domain-error.ts";

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

/** One sum settles the usual day quickly; only a wrong one is searched for its name. */
function requireDepths(depths: Required<SoilDayGiven>): void {
  const { depletion, total, rain, irrigation, cropUse, runoff, rise } = depths;
  const least = Math.min(depletion, total, rain, irrigation, cropUse, runoff, rise);
  if (least >= 0 && depletion + total + rain + irrigation + cropUse + runoff + rise < Infinity) return;
  for (const [name, depth] of Object.entries(depths)) {
    requireNotNegative(`${name} of the day`, depth, `${BOOK}, Eq. 85`);
  }
}
