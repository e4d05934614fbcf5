// Closed forms of falling levels: a tank over a hole, two tanks that level out, and any line between two waters.

import { DomainError, requireNotNegative, requirePositive } from "../../src/physics/domain-error.ts";
import { type GravityLine, gravityFlow } from "../../src/physics/gravity-line.ts";
import { integral } from "../../src/physics/integral.ts";
import { GRAVITY } from "../../src/units/constants.ts";

const SOURCE = "falling head through an orifice";

/** A head that falls while water runs through a hole. */
export type FallingHead = {
  /** Area of the water's surface, upright walls [m2]. */
  readonly surface: number;
  /** Discharge coefficient times area of the hole [m2]. */
  readonly opening: number;
  /** Head at the start [m]. */
  readonly from: number;
  /** Head at the end [m]. */
  readonly to: number;
  /** Left out: standard gravity [m/s2]. */
  readonly gravity?: number;
};

/**
 * Time in which a tank with upright walls falls from one head over a hole to a lower one:
 * 2 A (√H1 - √H2) / (Cd a √2g).
 *
 * @param tank surface, hole and heads, units at the type's fields
 * @returns time [s]
 * @throws DomainError for a negative head, one that rises, or a surface or opening of 0
 * @source Torricelli with continuity, as in any fluids text
 */
export function emptyingTime({ surface, opening, from, to, gravity = GRAVITY }: FallingHead): number {
  requirePositive("surface", surface, SOURCE);
  requirePositive("opening", opening, SOURCE);
  requireNotNegative("head at the end", to, SOURCE);
  if (!(from >= to && from < Infinity))
    throw new DomainError("head at the start", from, `${to} or more`, SOURCE);
  return (2 * surface * (Math.sqrt(from) - Math.sqrt(to))) / (opening * Math.sqrt(2 * gravity));
}

/**
 * One surface that falls as fast, under the same flow, as the difference of two waters: A1 A2 / (A1 + A2).
 *
 * @param upper surface of the water that falls [m2]
 * @param lower surface of the water that rises [m2]
 * @returns surface [m2]
 * @throws DomainError for a surface of 0
 * @source continuity: dΔh/dt = -Q (1/A1 + 1/A2)
 */
export function sharedSurface(upper: number, lower: number): number {
  requirePositive("upper surface", upper, SOURCE);
  requirePositive("lower surface", lower, SOURCE);
  return 1 / (1 / upper + 1 / lower);
}

/** A head that falls while water runs through a line. */
export type FallingLine = {
  readonly line: GravityLine;
  /** Surface of the one water, or the shared surface of two [m2]. */
  readonly surface: number;
  /** Head at the start [m]. */
  readonly from: number;
  /** Head at the end, above 0: a line never levels out wholly [m]. */
  readonly to: number;
};

/**
 * Time in which the head over a line falls: the integral of A dh / Q(h).
 *
 * @param falling line, surface and heads, units at the type's fields
 * @returns time [s]
 * @throws DomainError for a head at the end of 0, one that rises, or a surface of 0
 * @source continuity with gravityFlow
 */
export function fallingHeadTime({ line, surface, from, to }: FallingLine): number {
  requirePositive("surface", surface, SOURCE);
  requirePositive("head at the end", to, SOURCE);
  if (!(from >= to && from < Infinity))
    throw new DomainError("head at the start", from, `${to} or more`, SOURCE);
  // Over the logarithm of the head the last, slow part is as smooth as the first.
  const perLogarithm = (logarithm: number) => {
    const head = Math.exp(logarithm);
    return (surface * head) / gravityFlow(line, head);
  };
  return integral(perLogarithm, Math.log(to), Math.log(from));
}
