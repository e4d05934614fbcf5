// How hot the cells of a panel get in the sun.

import { ZERO_CELSIUS } from "../units/constants.ts";
import { requireNotNegative, requireWithin } from "./domain-error.ts";

const NOCT = "Ross / nominal operating cell temperature";

/** Usual nominal operating cell temperature [K], 46 °C: data sheets have 45 to 48 °C (from memory). */
export const USUAL_NOCT = ZERO_CELSIUS + 46;

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

/** Wind at a panel over that at a weather station [-]: pvpmc.sandia.gov (read). */
const WIND_AT_PANEL = 0.51;

/** Wind over a panel and the light it turns into power. */
export type PanelWind = {
  /** Speed of the wind at a weather station, 10 m up [m/s]. */
  readonly stationWind: number;
  /** Share of the light that becomes power [-]. */
  readonly efficiency: number;
  /** Share of the light that gets through the glass and is taken up [-]. */
  readonly transmittanceAbsorptance: number;
};

/**
 * Temperature of the cells in wind: T + G/800 (NOCT - 20 °C) (1 - η/τα) 9.5 / (5.7 + 3.8 v), v 0.51 of the station's.
 *
 * @param given light, air and NOCT, units at the type's fields
 * @param wind and efficiency, units at the type's fields
 * @returns temperature of the cells [K]
 * @throws DomainError for negative light or wind, or a share outside 0..1
 * @source wind-corrected NOCT at pvpmc.sandia.gov (read)
 */
export function cellTemperatureInWind(given: PanelAir, wind: PanelWind): number {
  requireNotNegative("wind", wind.stationWind, NOCT);
  requireWithin("transmittance-absorptance", wind.transmittanceAbsorptance, [0.5, 1], NOCT);
  requireWithin("efficiency", wind.efficiency, [0, wind.transmittanceAbsorptance], NOCT);
  const rise = cellTemperature(given) - given.air;
  const kept = 1 - wind.efficiency / wind.transmittanceAbsorptance;
  return given.air + (rise * kept * 9.5) / (5.7 + 3.8 * WIND_AT_PANEL * wind.stationWind);
}

/**
 * Temperature of a panel in the open: T + G / (25 + 6.84 v).
 *
 * @param irradiance on the panel [W/m2]
 * @param air temperature [K]
 * @param wind speed [m/s]
 * @returns temperature [K]
 * @throws DomainError for negative light or wind
 * @source Faiman (2008) with u0 25 and u1 6.84 (from memory)
 */
export function faimanTemperature(irradiance: number, air: number, wind: number): number {
  requireNotNegative("irradiance", irradiance, "Faiman (2008)");
  requireNotNegative("wind", wind, "Faiman (2008)");
  return air + irradiance / (25 + 6.84 * wind);
}
