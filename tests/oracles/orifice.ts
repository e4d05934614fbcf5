// Flow through a hole under a head: what the head of a flow is held against.

import { requireNotNegative } from "../../src/physics/domain-error.ts";
import { GRAVITY } from "../../src/units/constants.ts";

const TORRICELLI = "Torricelli's law";

/** A hole and the head over it. */
export type OrificeHead = {
  /** Discharge coefficient times area [m2]. */
  readonly opening: number;
  /** Head over the hole's centre, or between the levels on both sides [m]. */
  readonly head: number;
};

/**
 * Flow through a hole: Cd A √(2 g h); none without head.
 *
 * @param hole the hole and its head, units at the type's fields
 * @returns flow [m3/s]
 * @throws DomainError for a negative opening or head
 * @source Torricelli; Encyclopaedia Britannica, 11th ed., vol. 14, Hydraulics (read in a copy)
 */
export function orificeFlow(hole: OrificeHead): number {
  requireNotNegative("opening", hole.opening, TORRICELLI);
  requireNotNegative("head", hole.head, TORRICELLI);
  return hole.opening * Math.sqrt(2 * GRAVITY * hole.head);
}
