// Reference evapotranspiration under a plastic cover: less light, hardly any wind, perhaps warmer.

import { meanSaturationVapourPressure } from "./air.ts";
import { requireWithin } from "./domain-error.ts";
import {
  LEAST_WIND,
  type PenmanMonteithGiven,
  penmanMonteith,
  penmanMonteithParts,
} from "./reference-evapotranspiration.ts";

/** What a cover does: share of the light it lets through [-], wind under it [m/s], how much warmer it is [K]. */
export type Cover = { readonly lightShare: number; readonly wind: number; readonly warmer: number };

const ASSUMED = "assumption: FAO-56 Eq. 6 with the light and wind under the cover";

/**
 * Reference evapotranspiration under a cover.
 * Penman-Monteith with Rn times the light share, the wind under the cover and warmer air of the same relative humidity
 * @param given - weather outside, as for `penmanMonteith`, units there [-]
 * @param cover.lightShare - share of the light that comes through, 0.2 to 1; about 0.70 for plastic [-]
 * @param cover.wind - wind under the cover, 0.5 closed to 1 with the sides up, at most 6 [m/s]
 * @param cover.warmer - warmer than outside by, 0 to 15 [K]
 * @returns reference evapotranspiration of the day under the cover [m]
 * @throws DomainError outside these ranges
 * @validity an estimate where no factor was measured; 0.6 to 0.9 of the outside are usual
 * @source FAO-56 Eq. 6; light share 0.69 of a plastic solar greenhouse, Water 14(15) 2410
 */
export function coveredPenmanMonteith(given: PenmanMonteithGiven, cover: Cover): number {
  requireWithin("light share", cover.lightShare, [0.2, 1], ASSUMED);
  requireWithin("wind under the cover", cover.wind, [LEAST_WIND, 6], ASSUMED);
  requireWithin("warmth under the cover", cover.warmer, [0, 15], ASSUMED);
  const outside = penmanMonteithParts(given);
  const highest = given.highest + cover.warmer;
  const lowest = given.lowest + cover.warmer;
  // Warmer air under a cover is moister too, as the crop's own water stays in: the relative humidity is kept.
  const moister = meanSaturationVapourPressure(highest, lowest) / outside.saturation;
  return penmanMonteith({
    ...given,
    highest,
    lowest,
    vapour: outside.vapour * moister,
    wind: cover.wind,
    sun: outside.solar,
    netShare: cover.lightShare,
  });
}
