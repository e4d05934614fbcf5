// Water carried by hand: rounds, weight, time, and what it asks of a body.

import { requireNotNegative, requirePositive } from "./domain-error.ts";

/**
 * Rounds it takes to carry a volume of water.
 * ceil(volume / (can volume cans at once))
 * @param volume - water to be carried [m3]
 * @param canVolume - water in one can [m3]
 * @param cansAtOnce - cans carried in a round [-]
 * @returns number of rounds, the last one perhaps not full [-]
 * @throws DomainError when the volume is negative, the can has no size or no can is carried
 * @validity cans filled to the same mark
 * @source definition
 */
export function tripsFor(volume: number, canVolume: number, cansAtOnce: number): number {
  requirePositive("cans at once", cansAtOnce, "definition");
  return Math.ceil(cansFor(volume, canVolume) / cansAtOnce);
}

/**
 * Cans that hold a volume of water.
 * ceil(volume / can volume)
 * @param volume - water to be carried [m3]
 * @param canVolume - water in one can [m3]
 * @returns number of cans, the last one perhaps not full [-]
 * @throws DomainError when the volume is negative or the can has no size
 * @validity cans filled to the same mark
 * @source definition
 */
export function cansFor(volume: number, canVolume: number): number {
  requireNotNegative("water to be carried", volume, "definition");
  requirePositive("can volume", canVolume, "definition");
  // Water that fills a whole number of cans must not need one more for a rounding in the last bit.
  return Math.ceil((volume / canVolume) * (1 - 1e-12));
}
