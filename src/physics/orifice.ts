// Water through a hole, a seat or a nozzle. "Opening" is its area times its discharge coefficient.

import { GRAVITY } from "../units/constants.ts";
import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";
import { boreArea } from "./pipe-friction.ts";

const TORRICELLI = "Torricelli's law";

/** Discharge coefficient of a sharp-edged hole [-]: Encyclopaedia Britannica, 11th ed., Hydraulics (read in a copy). */
export const SHARP_EDGE = 0.62;

/** A hole and the flow through it. */
export type OrificeFlow = {
  /** Discharge coefficient times area [m2]. */
  readonly opening: number;
  /** Volume a time [m3/s]. */
  readonly flow: number;
};

/**
 * Effective opening of a round hole: discharge coefficient times area.
 *
 * @param bore diameter of the hole [m]
 * @param coefficient discharge coefficient, above 0 to 1 [-]
 * @returns effective opening [m2]
 * @throws DomainError outside those ranges
 * @source definition
 */
export function openingOf(bore: number, coefficient: number): number {
  requireNotNegative("hole diameter", bore, TORRICELLI);
  requirePositive("discharge coefficient", coefficient, TORRICELLI);
  requireWithin("discharge coefficient", coefficient, [0, 1], TORRICELLI);
  return coefficient * boreArea(bore);
}

/**
 * Head that drives a flow through a hole: (Q / Cd A)² / 2g.
 *
 * @param hole the hole and its flow, units at the type's fields
 * @returns head [m]
 * @throws DomainError for a negative flow or an opening of 0
 * @source Torricelli, as in orificeFlow
 */
export function orificeHead(hole: OrificeFlow): number {
  requirePositive("opening", hole.opening, TORRICELLI);
  requireNotNegative("flow", hole.flow, TORRICELLI);
  return (hole.flow / hole.opening) ** 2 / (2 * GRAVITY);
}

/**
 * A hole's loss coefficient on the speed in the pipe before it: (area of the bore / Cd A)².
 *
 * @param bore inside diameter of the pipe [m]
 * @param opening discharge coefficient times area of the hole [m2]
 * @returns loss coefficient [-]
 * @throws DomainError when either is not above 0
 * @source definition
 */
export function orificeK(bore: number, opening: number): number {
  requirePositive("bore", bore, TORRICELLI);
  requirePositive("opening", opening, TORRICELLI);
  return (boreArea(bore) / opening) ** 2;
}
