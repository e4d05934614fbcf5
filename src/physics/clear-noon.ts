// Sunshine on a panel at noon under a clear sky: the light against which a second-hand panel is judged.

import { dailyAboveAir } from "./sky-radiation.ts";
import { clearSkyRadiation } from "./sun.ts";
import { dayOnTilted, type PlaneDay } from "./tilted-sun.ts";

/** Stretches of the day; an odd number, so that one has its middle at noon. */
const STEPS = 97;

/** A panel at a place on a day. */
export type ClearNoon = Omit<PlaneDay, "global"> & {
  /** Height over the sea [m]. */
  readonly elevation: number;
};

/**
 * Irradiance of a panel at solar noon under a clear sky.
 *
 * @param of place, day, panel and albedo, units at the type's fields
 * @returns irradiance; 0 where the sun does not rise [W/m2]
 * @throws DomainError outside 1..366 days, beyond a pole, or for an elevation outside -500..9000 m
 * @validity clean dry air, no shade; a measured irradiance is better, haze takes a tenth
 * @source FAO-56 Eq. 37 for the clear day; Collares-Pereira and Rabl for its noon; isotropic sky, as in tilted-sun
 */
export function clearNoonIrradiance(of: ClearNoon): number {
  const global = clearSkyRadiation(dailyAboveAir(of.latitude, of.day), of.elevation);
  return dayOnTilted({ ...of, global }, STEPS, "day")[(STEPS - 1) / 2]?.irradiance ?? 0;
}
