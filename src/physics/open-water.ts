// Water lost from an open tank or a pan, and what a pan tells of the reference.

import { requireNotNegative, requireWithin } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Shallow open water over reference grass [-]: FAO-56 Table 12, less than 2 m deep. */
export const OPEN_WATER_COEFFICIENT = 1.05;

/** Share of a year's shallow-pond evaporation in each month [-], January first: Molnau et al. 1992, Univ. of Idaho. */
export const POND_MONTH_SHARES: readonly number[] = [
  0.005, 0.015, 0.03, 0.08, 0.12, 0.15, 0.19, 0.17, 0.11, 0.06, 0.04, 0.03,
];

/**
 * Water that an open surface loses in a day.
 * 1.05 ETo A
 * @param reference - reference evapotranspiration of the day [m]
 * @param area - open surface [m2]
 * @returns volume lost [m3]
 * @throws DomainError when a value is negative
 * @validity water less than 2 m deep; a small dark tank standing free may lose up to 1.3 ETo (assumption)
 * @source FAO-56 Table 12
 */
export function openWaterLoss(reference: number, area: number): number {
  requireNotNegative("reference evapotranspiration", reference, `${BOOK}, Table 12`);
  requireNotNegative("open surface", area, `${BOOK}, Table 12`);
  return OPEN_WATER_COEFFICIENT * reference * area;
}

/**
 * Reference evapotranspiration from a pan.
 * ETo = Kp Epan
 * @param panCoefficient - coefficient of the pan and its surroundings, 0.3 to 1.1 [-]
 * @param panLoss - depth that the pan lost [m]
 * @returns reference evapotranspiration over the same time [m]
 * @throws DomainError when the coefficient is outside its range or the depth negative
 * @validity means of ten days or more
 * @source FAO-56 Eq. 55
 */
export function panEvapotranspiration(panCoefficient: number, panLoss: number): number {
  requireWithin("pan coefficient", panCoefficient, [0.3, 1.1], `${BOOK}, Eq. 55`);
  requireNotNegative("pan evaporation", panLoss, `${BOOK}, Eq. 55`);
  return panCoefficient * panLoss;
}

/**
 * A year's pond evaporation spread over its months.
 * year's depth times the month's share
 * @param yearly - pond evaporation of the year [m]
 * @returns twelve depths, January first [m]
 * @throws DomainError when the depth is negative
 * @validity shallow ponds in Idaho and like climates
 * @source Molnau et al. 1992, University of Idaho
 */
export function pondEvaporationByMonth(yearly: number): readonly number[] {
  requireNotNegative("pond evaporation of the year", yearly, "Molnau et al. 1992");
  return POND_MONTH_SHARES.map((share) => share * yearly);
}
