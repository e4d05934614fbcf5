// Rain of a month that a crop can use, by three published forms. None is for daily rain, none for a covered bed.

import { INCH, MILLIMETRE } from "../units/constants.ts";
import { requireNotNegative, requireWithin } from "./domain-error.ts";

const SCS = "USDA SCS Technical Release 21 / National Engineering Handbook 623";
const FAO = "FAO, after USDA SCS";

/**
 * Factor for the depth that the soil can store, in the SCS form of effective rain.
 * SF = 0.531747 + 0.295164 D - 0.057697 D^2 + 0.003804 D^3, D in inches
 * @param storage - usable soil storage D, 0 to 7.5 in [m]
 * @returns factor [-]
 * @throws DomainError outside that range
 * @validity storage up to about 7.5 in
 * @source USDA SCS TR-21 / NEH 623, as restated in public code
 */
export function soilStorageFactor(storage: number): number {
  requireWithin("usable soil storage", storage, [0, 7.5 * INCH], SCS);
  const inches = storage / INCH;
  return 0.531747 + 0.295164 * inches - 0.057697 * inches ** 2 + 0.003804 * inches ** 3;
}

/**
 * Effective rain of a month by the SCS form, never more than the rain nor than the crop uses.
 * Pe = SF (0.70917 P^0.82416 - 0.11556) 10^(0.02426 ETc), inches a month
 * @param rain - rain of the month [m]
 * @param cropUse - crop evapotranspiration of the month [m]
 * @param storage - usable soil storage [m]
 * @returns effective rain of the month [m]
 * @throws DomainError when a depth is negative or the storage outside 0 to 7.5 in
 * @validity monthly sums; 0 where so little rain makes the form negative
 * @source USDA SCS TR-21 / NEH 623, as restated in public code
 */
export function effectiveRainScs(rain: number, cropUse: number, storage: number): number {
  requireNotNegative("rain of the month", rain, SCS);
  requireNotNegative("crop use of the month", cropUse, SCS);
  const wet = 0.70917 * (rain / INCH) ** 0.82416 - 0.11556;
  const effective = soilStorageFactor(storage) * wet * 10 ** (0.02426 * (cropUse / INCH)) * INCH;
  return Math.max(0, Math.min(effective, rain, cropUse));
}

/**
 * Effective rain of a month by the simple USDA form.
 * P (125 - 0.2 P) / 125 up to 250 mm, else 125 + 0.1 P, mm a month
 * @param rain - rain of the month [m]
 * @returns effective rain of the month [m]
 * @throws DomainError when the rain is negative
 * @validity monthly sums
 * @source FAO form of the USDA SCS method, as restated in public code
 */
export function effectiveRainUsda(rain: number): number {
  requireNotNegative("rain of the month", rain, FAO);
  const depth = rain / MILLIMETRE;
  return (depth <= 250 ? (depth * (125 - 0.2 * depth)) / 125 : 125 + 0.1 * depth) * MILLIMETRE;
}

/**
 * Dependable rain of a month by the FAO/AGLW form.
 * 0.8 P - 25 from 75 mm on, else 0.6 P - 10 and never below 0, mm a month
 * @param rain - rain of the month [m]
 * @returns effective rain of the month [m]
 * @throws DomainError when the rain is negative
 * @validity monthly sums
 * @source FAO/AGLW, as restated in public code
 */
export function effectiveRainDependable(rain: number): number {
  requireNotNegative("rain of the month", rain, FAO);
  const depth = rain / MILLIMETRE;
  return (depth >= 75 ? 0.8 * depth - 25 : Math.max(0, 0.6 * depth - 10)) * MILLIMETRE;
}
