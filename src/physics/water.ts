// Properties of fresh water, and what the air's weight on it can lift.

import { GRAVITY, ZERO_CELSIUS } from "../units/constants.ts";
import { airPressure } from "./air.ts";
import { requireWithin } from "./domain-error.ts";

const LIQUID: readonly [number, number] = [ZERO_CELSIUS, ZERO_CELSIUS + 50];
const TANAKA = "Tanaka et al., Metrologia 38 (2001) 301-309";
const PATEK = "Patek et al., J. Phys. Chem. Ref. Data 38 (2009) 21-29, as IAPWS SR6-08";
const WAGNER = "Wagner and Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787";

/**
 * Density of air-free fresh water at atmospheric pressure.
 *
 * @param temperature of the water [K]
 * @returns density [kg/m3]
 * @throws DomainError outside 0..50 °C
 * @validity fitted for 0..40 °C; at 50 °C still within 0.005 kg/m3 of IAPWS-95
 * @source Tanaka et al., Metrologia 38 (2001) 301-309, recommended by the CIPM (read in public repositories)
 */
export function waterDensity(temperature: number): number {
  requireWithin("water temperature", temperature, LIQUID, TANAKA);
  const t = temperature - ZERO_CELSIUS;
  return 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522_528.9 * (t + 69.34881)));
}

/**
 * Dynamic viscosity of fresh water at atmospheric pressure.
 *
 * @param temperature of the water [K]
 * @returns dynamic viscosity [Pa s]
 * @throws DomainError outside 0..50 °C
 * @validity 0..50 °C here; within 0.003 % of IAPWS-2008
 * @source Patek et al., J. Phys. Chem. Ref. Data 38 (2009) 21-29, the IAPWS SR6-08 form (read in a public notebook)
 */
export function waterViscosity(temperature: number): number {
  requireWithin("water temperature", temperature, LIQUID, PATEK);
  const x = temperature / 300;
  return 1e-6 * (280.68 * x ** -1.9 + 511.45 * x ** -7.7 + 61.131 * x ** -19.6 + 0.45903 * x ** -40);
}

/**
 * Kinematic viscosity of fresh water: dynamic viscosity over density.
 *
 * @param temperature of the water [K]
 * @returns kinematic viscosity [m2/s]
 * @throws DomainError outside 0..50 °C
 * @source definition; parts as in waterViscosity and waterDensity
 */
export function kinematicViscosity(temperature: number): number {
  return waterViscosity(temperature) / waterDensity(temperature);
}

/**
 * Pressure at which water boils at a temperature.
 *
 * @param temperature of the water [K]
 * @returns saturation vapour pressure [Pa]
 * @throws DomainError outside 0..50 °C
 * @source Wagner and Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787, eq. 1 (from memory; checked against a read table)
 */
export function vapourPressure(temperature: number): number {
  requireWithin("water temperature", temperature, LIQUID, WAGNER);
  const x = 1 - temperature / 647.096;
  const series =
    -7.85951783 * x +
    1.84408259 * x ** 1.5 -
    11.7866497 * x ** 3 +
    22.6807411 * x ** 3.5 -
    15.9618719 * x ** 4 +
    1.80122502 * x ** 7.5;
  return 22_064_000 * Math.exp((647.096 / temperature) * series);
}

/**
 * Height of the water column that the air's weight balances: air pressure over density and gravity.
 *
 * @param elevation above sea level [m]
 * @param temperature of the water [K]
 * @returns head [m]
 * @throws DomainError outside -500..9000 m or 0..50 °C
 * @source hydrostatics; parts as in airPressure and waterDensity
 */
export function atmosphericHead(elevation: number, temperature: number): number {
  return airPressure(elevation) / (waterDensity(temperature) * GRAVITY);
}

/**
 * Highest crest above the source's water over which a siphon can run in theory: what the air's weight lifts, less
 * the vapour pressure. Losses and the speed's own head come off it.
 *
 * @param elevation above sea level [m]
 * @param temperature of the water [K]
 * @returns height [m]
 * @throws DomainError outside -500..9000 m or 0..50 °C
 * @source hydrostatics; parts as in airPressure, vapourPressure and waterDensity
 */
export function siphonLimit(elevation: number, temperature: number): number {
  return (airPressure(elevation) - vapourPressure(temperature)) / (waterDensity(temperature) * GRAVITY);
}
