// What a battery really gives: by its health, depth, cold, rate of discharge, losses and rest.

import { HOUR, ZERO_CELSIUS } from "../units/constants.ts";
import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const PEUKERT = "Peukert's law";
const COLD = "simplified IEEE method for lead batteries in the cold";
const TEST = "US Bureau of Reclamation, Storage Battery Maintenance (1997)";

/** Hours over which a lead battery's capacity is rated [s]. */
export const RATING_TIME = 20 * HOUR;

/** Capacity needed over that at 26.7 °C, by temperature in °C: the B1 points. */
const COLD_POINTS: readonly (readonly [number, number])[] = [
  [-6.7, 1.59],
  [-1.1, 1.4],
  [4.4, 1.3],
  [10, 1.19],
  [15.6, 1.11],
  [21.2, 1.04],
  [26.7, 1],
];

/**
 * Capacity that a lead battery needs in the cold over what it needs when warm; 1 above 26.7 °C.
 *
 * @param temperature of the battery [K]
 * @returns multiplier [-]
 * @throws DomainError below -6.7 or above 50 °C
 * @validity lead batteries; straight lines between the seven points
 * @source "simplified IEEE method" at batteries-solar.blogspot.com (read)
 */
export function coldMultiplier(temperature: number): number {
  const celsius = temperature - ZERO_CELSIUS;
  // Degrees typed in Celsius come back from kelvin a little off.
  const rounding = 1e-9;
  requireWithin("battery temperature in °C", celsius, [-6.7 - rounding, 50], COLD);
  const above = COLD_POINTS.findIndex(([point]) => point >= celsius);
  const [warmer, colder] = [COLD_POINTS[above], COLD_POINTS[above - 1]];
  if (!warmer) return 1;
  if (!colder) return warmer[1];
  return colder[1] + ((warmer[1] - colder[1]) * (celsius - colder[0])) / (warmer[0] - colder[0]);
}

/** A steady discharge by Peukert's law. */
export type Discharge = {
  /** Charge it gives over the rating time [C]. */
  readonly capacity: number;
  /** Time over which that is rated [s]. */
  readonly ratingTime: number;
  /** Current that is drawn [A]. */
  readonly current: number;
  /** Peukert's exponent, 1 for a battery that does not mind haste [-]. */
  readonly exponent: number;
};

/**
 * Time from full to empty at a steady current: H (C / (I H))^k.
 *
 * @param discharge capacity, rating, current and exponent, units at the type's fields
 * @returns time [s]
 * @throws DomainError when one is not above 0, or for an exponent outside 1..1.6
 * @validity steady currents near and above the rated one; below it more than the rated charge is never given
 * @source Peukert (1897) in the form read at batterystuff.com
 */
export function dischargeTime(discharge: Discharge): number {
  const { capacity, ratingTime, current, exponent } = discharge;
  requirePositive("capacity", capacity, PEUKERT);
  requirePositive("rating time", ratingTime, PEUKERT);
  requirePositive("current", current, PEUKERT);
  requireWithin("Peukert exponent", exponent, [1, 1.6], PEUKERT);
  const ratio = capacity / (current * ratingTime);
  // Slower than rated the law would promise more than the battery holds.
  return ratio >= 1 ? capacity / current : ratingTime * ratio ** exponent;
}

/**
 * Charge that a battery gives at a steady current: I times dischargeTime.
 *
 * @param discharge capacity, rating, current and exponent, units at the type's fields
 * @returns charge [C]
 * @throws DomainError as dischargeTime
 * @source Peukert (1897), as in dischargeTime
 */
export function dischargedCharge(discharge: Discharge): number {
  return discharge.current * dischargeTime(discharge);
}

/**
 * Health of a battery from a full one run down with a steady load and a clock: the share of its label at which
 * dischargeTime gives just the time that was seen.
 *
 * @param time from full to empty [s]
 * @param label labelled capacity, its rating, the current of the test and the exponent, units at the type's fields
 * @returns share of the labelled charge [-]
 * @throws DomainError for a negative time, or as dischargeTime
 * @validity a battery that was full at the start and is stopped at its lowest voltage
 * @source Peukert's law solved for capacity; with exponent 1 time over rated time, US Bureau of Reclamation, Storage
 * Battery Maintenance (1997) (read)
 */
export function healthFromTest(time: number, label: Discharge): number {
  requireNotNegative("time of the test", time, TEST);
  requirePositive("time that the label promises", dischargeTime(label), PEUKERT);
  const share = time / label.ratingTime;
  const ratio = share >= 1 ? share : share ** (1 / label.exponent);
  return (ratio * label.current * label.ratingTime) / label.capacity;
}
