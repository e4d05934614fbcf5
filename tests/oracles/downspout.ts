// The roof that a downspout drains, as codes tabulate it: what its capacity is held against.

import { requireNotNegative, requirePositive } from "../../src/physics/domain-error.ts";
import { downspoutCapacity } from "../../src/physics/downspout.ts";

const STORM = "rain rate times area";

/**
 * Flow that a storm brings to a roof's downspouts: area times rain rate, nothing lost.
 *
 * @param footprint plan area [m2]
 * @param rainRate of the design storm [m/s]
 * @returns flow [m3/s]
 * @throws DomainError for a negative number
 * @source definition; 1 in/h on 96.25 ft2 is 1 gpm
 */
export function stormFlow(footprint: number, rainRate: number): number {
  requireNotNegative("footprint", footprint, STORM);
  requireNotNegative("rain rate", rainRate, STORM);
  return footprint * rainRate;
}

/**
 * Area of roof that a downspout drains in a storm: capacity over rain rate.
 *
 * @param bore inside diameter [m]
 * @param rainRate of the design storm [m/s]
 * @returns plan area [m2]
 * @throws DomainError when either is not above 0
 * @source downspoutCapacity; National Standard Plumbing Code 2006 Table 13.6.1 has the same products (read)
 */
export function drainedArea(bore: number, rainRate: number): number {
  requirePositive("rain rate", rainRate, STORM);
  return downspoutCapacity(bore) / rainRate;
}
