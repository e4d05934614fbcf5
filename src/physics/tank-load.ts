// What a full tank weighs and how it presses on what it stands on.

import { GRAVITY } from "../units/constants.ts";
import { requireNotNegative, requirePositive } from "./domain-error.ts";

const SOURCE = "definition of weight and pressure";

/**
 * Mass of a tank with its water: volume times density, plus the empty tank.
 *
 * @param volume of water [m3]
 * @param density of the water [kg/m3]
 * @param emptyMass of the tank itself [kg]
 * @returns mass [kg]
 * @throws DomainError for a negative volume or mass, or a density of 0
 * @source definition
 */
export function fullMass(volume: number, density: number, emptyMass: number): number {
  requireNotNegative("volume", volume, SOURCE);
  requirePositive("density", density, SOURCE);
  requireNotNegative("empty mass", emptyMass, SOURCE);
  return volume * density + emptyMass;
}

/**
 * Pressure of a mass on the ground under it: m g / A.
 *
 * @param mass that stands there [kg]
 * @param area it stands on [m2]
 * @returns pressure [Pa]
 * @throws DomainError for a negative mass or an area of 0
 * @source definition
 */
export function groundPressure(mass: number, area: number): number {
  requireNotNegative("mass", mass, SOURCE);
  requirePositive("area", area, SOURCE);
  return (mass * GRAVITY) / area;
}
