// Flow of a hose between two heights of water: friction, fittings and, at its end, a float valve's opening.

import { GRAVITY } from "../units/constants.ts";
import { DomainError, requirePositive } from "./domain-error.ts";
import { orificeK } from "./orifice.ts";
import { boreArea, pipeHeadLoss } from "./pipe-friction.ts";
import { bracketedRoot } from "./root.ts";

const SOURCE = "energy balance of a gravity line";

/** A full line of one bore. */
export type GravityLine = {
  /** Along the hose [m]. */
  readonly length: number;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Height of the wall's roughness [m]. */
  readonly roughness: number;
  /** All fittings with entry and exit, on the bore's speed [-]. */
  readonly fittingsK: number;
  /** Effective opening of the valve at its end, Cd times area [m2]; 0 is shut; null: no valve. */
  readonly opening: number | null;
  /** Kinematic viscosity of the water [m2/s]. */
  readonly viscosity: number;
};

/**
 * Head that drives a flow through a line: (f L/D + K) V²/2g + (Q / opening)²/2g.
 *
 * @param line the line, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @returns head [m]
 * @throws DomainError for a negative flow, or any flow through a shut valve
 * @source Darcy-Weisbach with Churchill, Chem. Eng. 84 (1977) 91-92; Torricelli for the valve
 */
export function gravityHead(line: GravityLine, flow: number): number {
  if (flow === 0) return 0;
  const { length, bore, roughness, viscosity } = line;
  return pipeHeadLoss({ flow, length, bore, roughness, fittingsK: allK(line), viscosity });
}

/**
 * Flow of a line under a head; none without head or through a shut valve.
 *
 * @param line the line, units at the type's fields
 * @param head from the water at its start to the water or free end at its other end; below 0 nothing flows [m]
 * @returns flow, to 1e-12 of itself [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @source inverse of gravityHead; a single root, since Churchill's loss rises with every flow
 */
export function gravityFlow(line: GravityLine, head: number): number {
  if (!(head < Infinity)) throw new DomainError("head", head, "finite", SOURCE);
  if (head <= 0 || line.opening === 0) return 0;
  const most = laminarFlow(line, head);
  // Any turbulence costs head on top, so that the laminar answer is the most that can flow.
  if (gravityHead(line, most) <= head * (1 + 1e-13)) return most;
  return bracketedRoot((flow) => gravityHead(line, flow) - head, 0, most);
}

/**
 * Flow of a line under a head if it were laminar: the root of a Q² + b Q = h, exact.
 *
 * @param line the line, units at the type's fields
 * @param head not below 0 [m]
 * @returns flow [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @validity the true flow up to Reynolds 1000; above it a bound from above
 * @source Hagen-Poiseuille with fittings: 128 ν L Q / (π g D^4) + K V²/2g
 */
export function laminarFlow(line: GravityLine, head: number): number {
  return laminarLine(line)(head);
}

/**
 * laminarFlow of one line for many heads.
 *
 * @param line the line, units at the type's fields
 * @returns head, not below 0 [m], to flow [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @source as laminarFlow
 */
export function laminarLine(line: GravityLine): (head: number) => number {
  const quadratic = allK(line) / (2 * GRAVITY * boreArea(line.bore) ** 2);
  const linear = (128 * line.viscosity * line.length) / (Math.PI * GRAVITY * line.bore ** 4);
  if (quadratic === 0 && linear === 0) throw new DomainError("length", 0, "above 0 without fittings", SOURCE);
  return (head) => (2 * head) / (linear + Math.sqrt(linear * linear + 4 * quadratic * head));
}

/**
 * Flow through two lines one after the other, with no tank between them; none without head or through a shut valve.
 *
 * @param first the line that the water runs through first, units at the type's fields
 * @param second the line that follows, units at the type's fields
 * @param head from the water at the first one's start to the water or free end at the second one's end [m]
 * @returns flow [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @source continuity: both carry the same flow, and share the head
 */
export function seriesFlow(first: GravityLine, second: GravityLine, head: number): number {
  const most = Math.min(gravityFlow(first, head), gravityFlow(second, head));
  if (most === 0) return 0;
  const lacking = (flow: number) => gravityHead(first, flow) + gravityHead(second, flow) - head;
  return lacking(most) <= 0 ? most : bracketedRoot(lacking, 0, most);
}

/** All loss coefficients on the bore's speed, the valve's included. */
function allK(line: GravityLine): number {
  requirePositive("bore", line.bore, SOURCE);
  return line.opening === null ? line.fittingsK : line.fittingsK + orificeK(line.bore, line.opening);
}
