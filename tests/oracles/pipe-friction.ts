// Colebrook, Swamee and Jain, Hazen and Williams: what the loss in a pipe is held against.

import { requireNotNegative, requirePositive, requireWithin } from "../../src/physics/domain-error.ts";
import { bracketedRoot } from "../../src/physics/root.ts";

const COLEBROOK = "Colebrook, J. Inst. Civ. Eng. 11 (1939) 133-156";

const HAZEN_WILLIAMS = "Williams and Hazen, Hydraulic Tables (1905)";

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
