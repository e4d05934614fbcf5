// Vapour pressure from measured humidity, which the published examples give and the worksheet never asks.

import { saturationVapourPressure } from "../../src/physics/air.ts";
import { DomainError } from "../../src/physics/domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

function requireShare(quantity: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new DomainError(quantity, value, "0 to 1", `${BOOK}, Eq. 17 to 19`);
}

/**
 * Vapour pressure of the air from its two extremes of relative humidity.
 * ea = (e(Tmin) RHmax + e(Tmax) RHmin) / 2
 * @param given.highest - highest air temperature [K]
 * @param given.lowest - lowest air temperature [K]
 * @param given.highestHumidity - highest relative humidity, 0 to 1 [-]
 * @param given.lowestHumidity - lowest relative humidity, 0 to 1 [-]
 * @returns vapour pressure [Pa]
 * @throws DomainError when a humidity is outside 0 to 1
 * @validity daily values
 * @source FAO-56 Eq. 17
 */
export function vapourFromHumidity(given: {
  readonly highest: number;
  readonly lowest: number;
  readonly highestHumidity: number;
  readonly lowestHumidity: number;
}): number {
  requireShare("highest humidity", given.highestHumidity);
  requireShare("lowest humidity", given.lowestHumidity);
  const moist = saturationVapourPressure(given.lowest) * given.highestHumidity;
  return (moist + saturationVapourPressure(given.highest) * given.lowestHumidity) / 2;
}
