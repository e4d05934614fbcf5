// Head lost by water in a full pipe, in every regime, with one smooth rising curve.

import { GRAVITY } from "../units/constants.ts";
import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";
import { bracketedRoot } from "./root.ts";

const CHURCHILL = "Churchill, Chem. Eng. 84 (1977) 91-92";
const COLEBROOK = "Colebrook, J. Inst. Civ. Eng. 11 (1939) 133-156";
const DARCY = "Darcy-Weisbach";
const HAZEN_WILLIAMS = "Williams and Hazen, Hydraulic Tables (1905)";

/** Below this the turbulent part of Churchill's curve is lost in rounding. */
const PURELY_LAMINAR = 1;

/** Reynolds number between which flow may be either laminar or turbulent, so that losses are doubtful by ±30 %. */
export const UNCERTAIN_REYNOLDS = [2000, 4000] as const;

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
  requireWithin("relative roughness", relativeRoughness, [0, 0.1], CHURCHILL);
  if (reynolds < PURELY_LAMINAR) return 64 / reynolds;
  const rough = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness))) ** 16;
  const between = (37_530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (rough + between) ** -1.5) ** (1 / 12);
}

/**
 * Darcy friction factor of turbulent flow: 1/√f = -2 log10(ε/(3.7 D) + 2.51/(Re √f)), solved exactly.
 * Kept to compare Churchill's explicit curve with.
 *
 * @param reynolds Reynolds number, 500 or more [-]
 * @param relativeRoughness roughness over bore, 0..0.1 [-]
 * @returns Darcy friction factor [-]
 * @throws DomainError outside those ranges
 * @validity turbulent flow, Reynolds from 4000; formal below
 * @source Colebrook, J. Inst. Civ. Eng. 11 (1939) 133-156 (read in the documentation of the fluids library)
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  requireWithin("Reynolds number", reynolds, [500, 1e9], COLEBROOK);
  requireWithin("relative roughness", relativeRoughness, [0, 0.1], COLEBROOK);
  const residual = (x: number) => x + 2 * Math.log10(relativeRoughness / 3.7 + (2.51 * x) / reynolds);
  return bracketedRoot(residual, 0.1, 100) ** -2;
}

/**
 * Explicit approximation of Colebrook: f = 0.25 / [log10(ε/(3.7 D) + 5.74/Re^0.9)]².
 *
 * @param reynolds Reynolds number, 4000..1e8 [-]
 * @param relativeRoughness roughness over bore, 0..0.05 [-]
 * @returns Darcy friction factor [-]
 * @throws DomainError outside those ranges
 * @source Swamee and Jain, J. Hydraul. Div. 102 (1976) 657-664 (read in the documentation of the fluids library)
 */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  const source = "Swamee and Jain, J. Hydraul. Div. 102 (1976) 657-664";
  requireWithin("Reynolds number", reynolds, [4000, 1e8], source);
  requireWithin("relative roughness", relativeRoughness, [0, 0.05], source);
  return 0.25 / Math.log10(relativeRoughness / 3.7 + (6.97 / reynolds) ** 0.9) ** 2;
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

/** A full pipe, its flow and its Hazen-Williams coefficient. */
export type HazenWilliamsRun = {
  /** Volume a time [m3/s]. */
  readonly flow: number;
  /** Along the pipe [m]. */
  readonly length: number;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Smoothness, 150 for plastic pipe [-]. */
  readonly coefficient: number;
};

/**
 * Head lost by friction as most printed tables have it: 10.67 L Q^1.852 / (C^1.852 D^4.8704).
 * Only to compare with such tables: below about 8 L/min it gives far too little.
 *
 * @param run the pipe and its flow, units at the type's fields
 * @returns head [m]
 * @throws DomainError for a negative number or a bore or coefficient of 0
 * @validity turbulent water near 15 °C
 * @source Hazen-Williams in SI units (constants read at piping-designer.com)
 */
export function hazenWilliams(run: HazenWilliamsRun): number {
  requireNotNegative("flow", run.flow, HAZEN_WILLIAMS);
  requireNotNegative("length", run.length, HAZEN_WILLIAMS);
  requirePositive("bore", run.bore, HAZEN_WILLIAMS);
  requirePositive("coefficient", run.coefficient, HAZEN_WILLIAMS);
  return (10.67 * run.length * run.flow ** 1.852) / (run.coefficient ** 1.852 * run.bore ** 4.8704);
}
