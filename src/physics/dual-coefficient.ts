// Crop and bare ground apart: what leaves through the plant, and what the wet top of the soil loses.

import { DomainError, requireNotNegative, requireWithin } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";
const EQ_71 = `${BOOK}, Eq. 71`;
const EQ_74 = `${BOOK}, Eq. 74`;

/**
 * Depth that the top of a soil can lose to the air.
 * TEW = (FC - 0.5 WP) Ze
 * @param fieldCapacity - water left after draining [m/m]
 * @param wiltingPoint - water that roots cannot take [m/m]
 * @param depth - depth that dries by evaporation, 0.10 to 0.15 [m]
 * @returns total evaporable water [m]
 * @throws DomainError unless 0 <= WP < FC <= 1 and the depth is within 0.05 to 0.2 m
 * @validity any soil
 * @source FAO-56 Eq. 73
 */
export function evaporableWater(fieldCapacity: number, wiltingPoint: number, depth: number): number {
  if (!(wiltingPoint >= 0 && wiltingPoint < fieldCapacity && fieldCapacity <= 1)) {
    throw new DomainError(
      "field capacity",
      fieldCapacity,
      "above the wilting point, at most 1",
      `${BOOK}, Eq. 73`,
    );
  }
  requireWithin("depth that dries", depth, [0.05, 0.2], `${BOOK}, Eq. 73`);
  return (fieldCapacity - 0.5 * wiltingPoint) * depth;
}

/**
 * Crop coefficient where only a share of the ground is wetted, or where plants stand alone.
 * Kc = Kcb x canopy + (Kc - Kcb) x wetted share: the plants' own thirst stays, what the ground between them loses goes with it
 * @param given.coefficient - crop coefficient of the wholly wetted bed Kc [-]
 * @param given.basal - basal coefficient Kcb, what the plants take themselves; counted as Kc at the most [-]
 * @param given.wetted - share of the ground that is wetted, 0 to 1 [-]
 * @param given.canopy - share of the ground that full-grown canopies cover, 0 to 1 [-]
 * @returns crop coefficient over all the ground [-]
 * @throws DomainError when a coefficient is negative or a share outside 0 to 1
 * @validity ground that is wetted by watering; rain wets the rest too, which this leaves out
 * @source FAO-56 Eq. 75 and examples 33 and 34: evaporation is in proportion to the exposed and wetted share
 */
export function partlyWettedCoefficient(given: {
  readonly coefficient: number;
  readonly basal: number;
  readonly wetted: number;
  readonly canopy: number;
}): number {
  const { coefficient, wetted, canopy } = given;
  requireNotNegative("crop coefficient", coefficient, `${BOOK}, Eq. 75`);
  requireNotNegative("basal coefficient", given.basal, `${BOOK}, Eq. 75`);
  requireWithin("wetted share", wetted, [0, 1], `${BOOK}, Eq. 75`);
  requireWithin("covered share", canopy, [0, 1], `${BOOK}, Eq. 75`);
  const basal = Math.min(given.basal, coefficient);
  return wetted === 1 && canopy === 1 ? coefficient : basal * canopy + (coefficient - basal) * wetted;
}

/**
 * What bare ground loses to the air on a day, water having come before.
 * E = Kr Ke max ETo, at most what is left; Kr = 1 up to REW, then (TEW - De) / (TEW - REW)
 * @param depletion - water missing from the layer that dries, after the day's water De [m]
 * @param soil - what that layer can lose in all (TEW) and at full rate (REW) [m]
 * @param reference - reference evapotranspiration of the day [m]
 * @param most - evaporation from wet ground over the reference; 1.15 if left out [-]
 * @returns evaporation of the day [m]
 * @throws DomainError when a depth is negative or REW not below TEW
 * @validity bare ground; daily steps
 * @source FAO-56 Eq. 71, 73, 74 with Eq. 79's limit; 1.15 of wet bare ground after Annex 7
 */
export function bareGroundLoss(
  depletion: number,
  soil: { readonly total: number; readonly readily: number },
  reference: number,
  most = WET_BARE_GROUND,
): number {
  requireNotNegative("depletion", depletion, EQ_74);
  requireNotNegative("reference evapotranspiration", reference, EQ_71);
  const { total, readily } = soil;
  if (!(readily >= 0 && readily < total)) {
    throw new DomainError("readily evaporable water", readily, "0 to below the total", EQ_74);
  }
  const share = depletion <= readily ? 1 : Math.max(0, (total - depletion) / (total - readily));
  return Math.min(Math.max(0, total - depletion), share * most * reference);
}

/** Evaporation from wet bare ground over reference evapotranspiration [-]: FAO-56 Annex 7. */
const WET_BARE_GROUND = 1.15;
