// Head lost by water in a full pipe, in every regime, with one smooth rising curve.

import { GRAVITY } from "../units/constants.ts";
import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const CHURCHILL = "Churchill, Chem. Eng. 84 (1977) 91-92";

const DARCY = "Darcy-Weisbach";

/** Relative roughness for which the curve is given [-]. */
const ROUGHNESS = [0, 0.1] as const;
/** Below this the turbulent part of Churchill's curve is lost in rounding. */
const PURELY_LAMINAR = 1;

/** A full pipe and the flow in it. */
export type PipeRun = {
  /** Volume a time [m3/s]. */
  readonly flow: number;
  /** Along the pipe [m]. */
  readonly length: number;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Height of the wall's roughness [m]. */
  readonly roughness: number;
  /** Sum of the fittings' loss coefficients on the bore's speed [-]. */
  readonly fittingsK: number;
  /** Kinematic viscosity of the water [m2/s]. */
  readonly viscosity: number;
};

/**
 * Area of a round bore.
 *
 * @param bore inside diameter [m]
 * @returns area [m2]
 * @source definition
 */
export function boreArea(bore: number): number {
  return (Math.PI / 4) * bore * bore;
}

/**
 * Reynolds number of a full round pipe: 4 Q / (π D ν).
 *
 * @param flow volume a time [m3/s]
 * @param bore inside diameter [m]
 * @param viscosity kinematic [m2/s]
 * @returns Reynolds number [-]
 * @source definition
 */
export function reynoldsNumber(flow: number, bore: number, viscosity: number): number {
  return (4 * flow) / (Math.PI * bore * viscosity);
}

/**
 * Darcy friction factor over all regimes, continuous.
 * f = 8 [(8/Re)^12 + (A + B)^-1.5]^(1/12), A = {2.457 ln[1 / ((7/Re)^0.9 + 0.27 ε/D)]}^16, B = (37530/Re)^16.
 *
 * @param reynolds Reynolds number, above 0 [-]
 * @param relativeRoughness roughness over bore, 0..0.1 [-]
 * @returns Darcy friction factor [-]
 * @throws DomainError outside those ranges
 * @validity within 3.1 % of Colebrook from Reynolds 4000; a smooth guess from 2000 to 4000, where nature is not smooth
 * @source Churchill, Chem. Eng. 84 (1977) 91-92 (read in the documentation of the fluids library)
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive("Reynolds number", reynolds, CHURCHILL);
  requireWithin("relative roughness", relativeRoughness, ROUGHNESS, CHURCHILL);
  if (reynolds < PURELY_LAMINAR) return 64 / reynolds;
  const rough = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness))) ** 16;
  const between = (37_530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (rough + between) ** -1.5) ** (1 / 12);
}

/**
 * Head lost in a full pipe by friction and fittings: (f L/D + K) V²/2g.
 *
 * @param run the pipe and its flow, units at the type's fields
 * @returns head [m]
 * @throws DomainError for a negative number or a bore or viscosity of 0
 * @source Darcy-Weisbach, with the friction factor of Churchill, Chem. Eng. 84 (1977) 91-92
 */
export function pipeHeadLoss(run: PipeRun): number {
  requireNotNegative("flow", run.flow, DARCY);
  requireNotNegative("length", run.length, DARCY);
  requirePositive("bore", run.bore, DARCY);
  requireNotNegative("roughness", run.roughness, DARCY);
  requireNotNegative("fittings coefficient", run.fittingsK, DARCY);
  requirePositive("viscosity", run.viscosity, DARCY);
  if (run.flow === 0) return 0;
  const speed = run.flow / boreArea(run.bore);
  const reynolds = reynoldsNumber(run.flow, run.bore, run.viscosity);
  // The speed once, not squared: squares of the slowest flows would be lost below the smallest number.
  const friction =
    reynolds < PURELY_LAMINAR
      ? (64 * run.viscosity * run.length) / run.bore ** 2
      : (frictionFactor(reynolds, run.roughness / run.bore) * run.length * speed) / run.bore;
  return (speed * (friction + run.fittingsK * speed)) / (2 * GRAVITY);
}
