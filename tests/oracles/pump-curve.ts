// A duty at another speed by the affinity laws: what the curve at another voltage is held against.

import { requirePositive } from "../../src/physics/domain-error.ts";

const AFFINITY = "affinity laws of centrifugal pumps";

/** What a pump does at one speed. */
export type PumpDuty = {
  /** Volume a time [m3/s]. */
  readonly flow: number;
  /** Head made [m]. */
  readonly head: number;
  /** Power at the shaft [W]. */
  readonly power: number;
};

/**
 * The like duty of a pump at another speed: flow with the speed, head with its square, power with its cube.
 *
 * @param duty at the first speed, units at the type's fields
 * @param speedRatio new speed over the first, above 0 [-]
 * @returns duty at the new speed, units at the type's fields
 * @throws DomainError for a ratio that is not above 0
 * @source affinity laws, as in Crane TP-410 example 7.33 (read second-hand)
 */
export function dutyAtSpeed(duty: PumpDuty, speedRatio: number): PumpDuty {
  requirePositive("ratio of speeds", speedRatio, AFFINITY);
  return {
    flow: duty.flow * speedRatio,
    head: duty.head * speedRatio ** 2,
    power: duty.power * speedRatio ** 3,
  };
}
