// The dual coefficient of the published schedules, crop and top of the soil day by day, by which what a run does is checked.

import {
  DomainError,
  requireNotNegative,
  requirePositive,
  requireWithin,
} from "../../src/physics/domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";
const EQ_71 = `${BOOK}, Eq. 71`;
const EQ_74 = `${BOOK}, Eq. 74`;

/**
 * Most that crop and wet ground together can use.
 * Kc max = max(1.2 + correction, Kcb + 0.05), the correction as in Eq. 62
 * @param basal - basal crop coefficient Kcb [-]
 * @param correction - what wind and dryness add, see `climateCorrection` [-]
 * @returns upper limit of the crop coefficient [-]
 * @throws DomainError when the basal coefficient is negative
 * @validity wetting every three days or rarer; ground of normal surroundings
 * @source FAO-56 Eq. 72
 */
export function mostCoefficient(basal: number, correction: number): number {
  requireNotNegative("basal coefficient", basal, `${BOOK}, Eq. 72`);
  return Math.max(1.2 + correction, basal + 0.05);
}

/**
 * Share of the ground that a crop covers, from its basal coefficient.
 * fc = ((Kcb - Kc min) / (Kc max - Kc min))^(1 + 0.5 h), Kc min 0.15
 * @param basal - basal coefficient Kcb, at least 0.15 [-]
 * @param most - upper limit Kc max [-]
 * @param height - height of the crop [m]
 * @returns covered share [-]
 * @throws DomainError when the basal coefficient is not within 0.15 to the limit
 * @validity annual crops
 * @source FAO-56 Eq. 76
 */
export function coveredShare(basal: number, most: number, height: number): number {
  requireWithin("basal coefficient", basal, [0.15, most], `${BOOK}, Eq. 76`);
  requireNotNegative("height of the crop", height, `${BOOK}, Eq. 76`);
  return ((basal - 0.15) / (most - 0.15)) ** (1 + 0.5 * height);
}

/**
 * Share of the ground that is both wet and open to the sun.
 * few = min(1 - fc, fw); under drip fw is times (1 - 0.67 fc)
 * @param covered - share covered by the crop fc, 0 to 0.99 [-]
 * @param wetted - share wetted fw, above 0 to 1 [-]
 * @param drip - whether the water drips under the leaves
 * @returns exposed and wetted share [-]
 * @throws DomainError when a share is outside its range
 * @validity any method
 * @source FAO-56 Eq. 75, example 34
 */
export function exposedShare(covered: number, wetted: number, drip: boolean): number {
  requireWithin("covered share", covered, [0, 0.99], `${BOOK}, Eq. 75`);
  requireWithin("wetted share", wetted, [0.01, 1], `${BOOK}, Eq. 75`);
  return Math.min(1 - covered, drip ? wetted * (1 - 0.67 * covered) : wetted);
}

/** The top of the soil on a day: depths [m], shares and coefficients [-]. */
export type TopSoilDay = {
  readonly depletion: number;
  readonly total: number;
  readonly readily: number;
  readonly rain: number;
  readonly irrigation: number;
  readonly wetted: number;
  readonly exposed: number;
  readonly basal: number;
  readonly most: number;
  readonly reference: number;
};

/** What came of it: depths [m] and the evaporation coefficient [-]. */
export type TopSoilResult = {
  readonly depletion: number;
  readonly drained: number;
  readonly evaporationCoefficient: number;
  readonly cropUse: number;
};

/**
 * Coefficient of evaporation from the ground.
 * Ke = min(Kr (Kc max - Kcb), few Kc max); Kr = 1 up to REW, then (TEW - De) / (TEW - REW)
 * @param given.depletion - water missing from the top of the soil De [m]
 * @param given.total - total evaporable water TEW [m]
 * @param given.readily - readily evaporable water REW [m]
 * @param given.exposed - exposed and wetted share few [-]
 * @param given.basal - basal coefficient Kcb [-]
 * @param given.most - upper limit Kc max [-]
 * @returns evaporation coefficient [-]
 * @throws DomainError when REW is not below TEW or Kcb above the limit
 * @validity daily steps
 * @source FAO-56 Eq. 71 and 74
 */
export function evaporationCoefficient(
  given: Pick<TopSoilDay, "depletion" | "total" | "readily" | "exposed" | "basal" | "most">,
): number {
  const { depletion, total, readily, exposed, basal, most } = given;
  if (!(readily >= 0 && readily < total)) {
    throw new DomainError("readily evaporable water", readily, "0 to below the total", EQ_74);
  }
  requireWithin("basal coefficient", basal, [0, most], EQ_71);
  requireNotNegative("depletion", depletion, EQ_74);
  const share = depletion <= readily ? 1 : Math.max(0, (total - depletion) / (total - readily));
  return Math.min(share * (most - basal), exposed * most);
}

/**
 * One day of the top of the soil, water coming early in the day.
 * De = De before - P - I / fw + Ke ETo / few + DPe, 0 <= De <= TEW; ETc = (Kcb + Ke) ETo
 * @param given.depletion - water missing at the start De [m]
 * @param given.total - total evaporable water TEW [m]
 * @param given.readily - readily evaporable water REW [m]
 * @param given.rain - rain of the day [m]
 * @param given.irrigation - irrigation over the whole bed [m]
 * @param given.wetted - share that the irrigation wets fw [-]
 * @param given.exposed - exposed and wetted share few [-]
 * @param given.basal - basal coefficient Kcb [-]
 * @param given.most - upper limit Kc max [-]
 * @param given.reference - reference evapotranspiration of the day [m]
 * @returns depletion at the end, water drained from the top, crop use [m] and evaporation coefficient [-]
 * @throws DomainError when a value is outside its range
 * @validity roots' use from the top layer left out, as the source does
 * @source FAO-56 Eq. 77, 79, 80; example 35
 */
export function topSoilDay(given: TopSoilDay): TopSoilResult {
  for (const name of ["rain", "irrigation", "reference"] as const) {
    requireNotNegative(name, given[name], `${BOOK}, Eq. 77`);
  }
  requireWithin("wetted share", given.wetted, [0.01, 1], `${BOOK}, Eq. 77`);
  requireWithin("exposed share", given.exposed, [0.01, 1], `${BOOK}, Eq. 77`);
  const water = given.rain + given.irrigation / given.wetted;
  const start = Math.max(0, given.depletion - water);
  const wanted = evaporationCoefficient({ ...given, depletion: start });
  // Eq. 79: no more can leave than is there.
  const most = (Math.max(0, given.total - start) * given.exposed) / given.reference;
  const coefficient = given.reference > 0 ? Math.min(wanted, most) : wanted;
  return {
    depletion: start + (coefficient * given.reference) / given.exposed,
    drained: Math.max(0, water - given.depletion),
    evaporationCoefficient: coefficient,
    cropUse: (given.basal + coefficient) * given.reference,
  };
}

/**
 * Mean days between two wettings.
 * tw = days of the stage / (wettings + 0.5)
 * @param days - days of the stage [day]
 * @param wettings - wettings in that stage [-]
 * @returns days between two wettings [day]
 * @throws DomainError when the days are not above zero or the wettings negative
 * @validity wettings spread over the stage
 * @source FAO-56 Annex 7
 */
export function daysBetweenWettings(days: number, wettings: number): number {
  requirePositive("days of the stage", days, `${BOOK}, Annex 7`);
  requireWithin("wettings", wettings, [0, Number.MAX_VALUE], `${BOOK}, Annex 7`);
  return days / (wettings + 0.5);
}
