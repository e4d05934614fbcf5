// How hot the cells of a panel get in the sun.

import { ZERO_CELSIUS } from "../units/constants.ts";
import { requireNotNegative, requireWithin } from "./domain-error.ts";

const NOCT = "Ross / nominal operating cell temperature";

/** Light and air about a panel. */
export type PanelAir = {
  /** On the panel [W/m2]. */
  readonly irradiance: number;
  /** Temperature of the air [K]. */
  readonly air: number;
  /** Temperature of the cells in 800 W/m2, air of 20 °C and wind of 1 m/s [K]. */
  readonly noct: number;
};

/**
 * Temperature of the cells: T + (NOCT - 20 °C) G / 800.
 *
 * @param given light, air and NOCT, units at the type's fields
 * @returns temperature of the cells [K]
 * @throws DomainError for negative light, or an NOCT outside 30..80 °C
 * @source Ross; NOCT as data sheets define it (from memory)
 */
export function cellTemperature(given: PanelAir): number {
  requireNotNegative("irradiance", given.irradiance, NOCT);
  requireWithin("NOCT", given.noct, [ZERO_CELSIUS + 30, ZERO_CELSIUS + 80], NOCT);
  return given.air + ((given.noct - ZERO_CELSIUS - 20) * given.irradiance) / 800;
}
