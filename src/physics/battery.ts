// What a battery really gives: by its health, depth, cold, rate of discharge, losses and rest.

import { DAY, HOUR, ZERO_CELSIUS } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const PEUKERT = "Peukert's law";
const COLD = "simplified IEEE method for lead batteries in the cold";
const TEST = "US Bureau of Reclamation, Storage Battery Maintenance (1997)";

/** Days of the month in which a battery's loss at rest is stated [day]. */
const MONTH = 30;
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

/** A battery as it is reckoned with. */
export type Battery = {
  /** Charge on its label, at its rating time [C]. */
  readonly ratedCapacity: number;
  /** [V] */
  readonly nominalVoltage: number;
  /** Share of the labelled charge that it still holds [-]. */
  readonly health: number;
  /** Share of its charge that may be drawn [-]. */
  readonly depthOfDischarge: number;
  /** Capacity needed at its temperature over that when warm, 1 for lithium [-]. */
  readonly coldMultiplier: number;
};

/**
 * Charge that may be drawn slowly: capacity × health × depth / cold.
 *
 * @param battery units at the type's fields
 * @returns charge [C]
 * @throws DomainError for a capacity of 0, a share outside 0..1 (health: 0..1.5) or a multiplier under 1
 * @source definition; the cold after coldMultiplier
 */
export function usableCharge(battery: Battery): number {
  requirePositive("rated capacity", battery.ratedCapacity, TEST);
  // A new battery may well hold more than its label says.
  requireWithin("health", battery.health, [0, 1.5], TEST);
  requireWithin("depth of discharge", battery.depthOfDischarge, [0, 1], TEST);
  requireWithin("cold multiplier", battery.coldMultiplier, [1, 5], COLD);
  return (battery.ratedCapacity * battery.health * battery.depthOfDischarge) / battery.coldMultiplier;
}

/**
 * Energy that may be drawn slowly: usable charge × voltage.
 *
 * @param battery units at the type's fields
 * @returns energy [J]
 * @throws DomainError as usableCharge, and for a voltage of 0
 * @source definition
 */
export function usableEnergy(battery: Battery): number {
  requirePositive("nominal voltage", battery.nominalVoltage, TEST);
  return usableCharge(battery) * battery.nominalVoltage;
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
 * Peukert's exponent from two full discharges: ln(t2 / t1) / ln(I1 / I2).
 *
 * @param one.current steady current of the first [A]
 * @param one.time from full to empty of the first [s]
 * @param other.current steady current of the second [A]
 * @param other.time from full to empty of the second [s]
 * @returns exponent [-]
 * @throws DomainError for equal currents, or anything not above 0
 * @source Peukert's law solved for its exponent
 */
export function peukertExponent(
  one: { readonly current: number; readonly time: number },
  other: { readonly current: number; readonly time: number },
): number {
  for (const test of [one, other]) {
    requirePositive("current", test.current, PEUKERT);
    requirePositive("time", test.time, PEUKERT);
  }
  if (one.current === other.current) {
    throw new DomainError("second current", other.current, "another than the first", PEUKERT);
  }
  return Math.log(other.time / one.time) / Math.log(one.current / other.current);
}

/**
 * Time a test would take at 27 °C: Mr (1 - 0.009 (T - 27 °C)).
 *
 * @param time that the test took [s]
 * @param temperature of the battery [K]
 * @returns time at 27 °C [s]
 * @throws DomainError outside 24..32 °C
 * @source user guide of a deep-cycle battery (from memory)
 */
export function testTimeAt27(time: number, temperature: number): number {
  requireNotNegative("time of the test", time, TEST);
  const celsius = temperature - ZERO_CELSIUS;
  requireWithin("battery temperature in °C", celsius, [24 - 1e-9, 32 + 1e-9], "deep-cycle battery guide");
  return time * (1 - 0.009 * (celsius - 27));
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

/**
 * Charge left after a rest: the stated share goes each month of 30 days.
 *
 * @param charge at the start [C]
 * @param monthlyShare lost each month, 0..1 [-]
 * @param time of rest [s]
 * @returns charge [C]
 * @throws DomainError for a negative charge or time, or a share outside 0..1
 * @source definition of a monthly rate
 */
export function chargeAfterRest(charge: number, monthlyShare: number, time: number): number {
  requireNotNegative("charge", charge, TEST);
  requireWithin("monthly loss", monthlyShare, [0, 1], TEST);
  requireNotNegative("time of rest", time, TEST);
  return charge * (1 - monthlyShare) ** (time / (MONTH * DAY));
}

/**
 * Days that the usable energy lasts without any charge; Infinity where nothing is used.
 *
 * @param usable energy in the battery [J]
 * @param daily energy used each day [J]
 * @returns time [s]
 * @throws DomainError for a negative energy
 * @source definition
 */
export function timeWithoutSun(usable: number, daily: number): number {
  requireNotNegative("usable energy", usable, TEST);
  requireNotNegative("daily energy", daily, TEST);
  return daily === 0 ? Infinity : (usable / daily) * DAY;
}

/**
 * Rated energy of a battery that is to last through days without charge: E × days / depth × cold.
 *
 * @param need.daily energy used each day [J]
 * @param need.days without charge [-]
 * @param need.depthOfDischarge share that may be drawn [-]
 * @param need.coldMultiplier at its temperature [-]
 * @returns rated energy [J]
 * @throws DomainError for a depth outside 0..1 or anything not above 0
 * @source worked sizing at batteries-solar.blogspot.com (read)
 */
export function batteryFor(need: {
  readonly daily: number;
  readonly days: number;
  readonly depthOfDischarge: number;
  readonly coldMultiplier: number;
}): number {
  requirePositive("daily energy", need.daily, COLD);
  requirePositive("days without charge", need.days, COLD);
  requirePositive("depth of discharge", need.depthOfDischarge, COLD);
  requireWithin("depth of discharge", need.depthOfDischarge, [0, 1], COLD);
  requireWithin("cold multiplier", need.coldMultiplier, [1, 5], COLD);
  return ((need.daily * need.days) / need.depthOfDischarge) * need.coldMultiplier;
}
