// A battery's exponent from two discharges: the discharge time, turned round.

import { DomainError, requirePositive } from "../../src/physics/domain-error.ts";

const PEUKERT = "Peukert's law";

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
