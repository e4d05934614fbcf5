// Reference evapotranspiration: the water a well-watered short grass loses in a day, as a depth.

import { MEGAJOULE, MILLIMETRE, ZERO_CELSIUS } from "../units/constants.ts";
import {
  airPressure,
  meanSaturationVapourPressure,
  psychrometricConstant,
  vapourFromLowest,
  vapourPressureSlope,
} from "./air.ts";
import { DomainError, requireNotNegative } from "./domain-error.ts";
import { clearSkyRadiation, extraterrestrialRadiation, solarFromTemperature } from "./sun.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Depth evaporated by radiation [m per J/m2]: 0.408 mm per MJ/m2, FAO-56 Eq. 20 (latent heat 2.45 MJ/kg, rounded). */
const DEPTH_PER_RADIATION = (0.408 * MILLIMETRE) / MEGAJOULE;

/** Wind where none was measured [m/s]: FAO-56 ch. 3, the mean of more than 2000 stations. */
export const WIND_WHEN_UNKNOWN = 2;

/** Least wind in Eq. 6 [m/s]: FAO-56 ch. 3, as air moves by its own warmth in a calm. */
export const LEAST_WIND = 0.5;

/** FAO-56 Eq. 50: kRs away from the sea and near it [1/K^0.5]. */
export const SUN_ADJUSTMENT = { inland: 0.16, coast: 0.19 } as const;

/**
 * Depth of water that an amount of radiation evaporates.
 * E = 0.408 mm/d per MJ/m2 d
 * @param radiation - radiation of the day [J/m2]
 * @returns depth of the day [m]
 * @throws DomainError when the radiation is not a finite number
 * @validity latent heat of 2.45 MJ/kg, at about 20 degrees Celsius
 * @source FAO-56 Eq. 20
 */
export function evaporationOfRadiation(radiation: number): number {
  if (!Number.isFinite(radiation)) {
    throw new DomainError("radiation", radiation, "a finite number", `${BOOK}, Eq. 20`);
  }
  return DEPTH_PER_RADIATION * radiation;
}

/**
 * Reference evapotranspiration from temperatures alone; none where the relation would turn negative.
 * ETo = 0.0023 (Tmean + 17.8) (Tmax - Tmin)^0.5 Ra, T in degrees Celsius, Ra as a depth of water
 * @param given.highest - highest air temperature [K]
 * @param given.lowest - lowest air temperature [K]
 * @param given.extraterrestrial - radiation at the top of the air [J/m2 of the day]
 * @param given.mean - mean air temperature where it is known apart; else the middle of both [K]
 * @returns reference evapotranspiration of the day [m]
 * @throws DomainError when the highest is below the lowest or the radiation negative
 * @validity best summed over a week or more; low in wind over 3 m/s, high in humid air
 * @source FAO-56 Eq. 52
 */
export function hargreaves(given: {
  readonly highest: number;
  readonly lowest: number;
  readonly extraterrestrial: number;
  readonly mean?: number;
}): number {
  requireOrder(given.highest, given.lowest, "Eq. 52");
  if (!(given.extraterrestrial >= 0)) {
    const found = given.extraterrestrial;
    throw new DomainError("extraterrestrial radiation", found, "at least 0 J/m2", `${BOOK}, Eq. 52`);
  }
  const mean = (given.mean ?? (given.highest + given.lowest) / 2) - ZERO_CELSIUS;
  const warmth = Math.max(0, mean + 17.8);
  const range = Math.sqrt(given.highest - given.lowest);
  return 0.0023 * warmth * range * evaporationOfRadiation(given.extraterrestrial);
}

/** What Penman-Monteith is given; null stands for "not measured". */
export type PenmanMonteithGiven = {
  readonly highest: number;
  readonly lowest: number;
  readonly vapour: number | null;
  readonly wind: number | null;
  readonly sun: number | null;
  readonly elevation: number;
  readonly latitude: number;
  readonly dayOfYear: number;
  /** kRs of Eq. 50, used when the sun was not measured; inland if left out [1/K^0.5]. */
  readonly sunAdjustment?: number;
  /** How far the dew point lies under the lowest temperature, used when vapour was not measured [K]. */
  readonly dewPointBelow?: number;
  /** Heat that goes into the ground; 0 over a day [J/m2 of the day]. */
  readonly groundHeat?: number;
  /** Share of the net radiation that is left under a cover, which keeps warmth in as it keeps light out; 1 in the open [-]. */
  readonly netShare?: number;
};

/** The two summands and the steps to them: depths of the day [m], radiation of the day [J/m2], vapour pressures [Pa]. */
export type PenmanMonteithParts = {
  readonly evapotranspiration: number;
  readonly radiationPart: number;
  readonly windPart: number;
  readonly netRadiation: number;
  readonly netLongwave: number;
  readonly solar: number;
  readonly clearSky: number;
  readonly vapour: number;
  readonly saturation: number;
};

/**
 * Reference evapotranspiration by Penman-Monteith, what is missing filled by the rules of FAO-56.
 * ETo = [0.408 D (Rn - G) + g 900 / (T + 273) u2 (es - ea)] / [D + g (1 + 0.34 u2)]
 * @param given.highest - highest air temperature [K]
 * @param given.lowest - lowest air temperature [K]
 * @param given.vapour - vapour pressure; null: the dew point is the lowest temperature (Eq. 48) [Pa]
 * @param given.wind - mean wind at 2 m; null: 2 m/s [m/s]
 * @param given.sun - radiation at the ground; null: from the temperatures (Eq. 50) [J/m2 of the day]
 * @param given.elevation - height above the sea [m]
 * @param given.latitude - latitude, north positive [rad]
 * @param given.dayOfYear - day of the year, 1 on the first of January [-]
 * @param given.sunAdjustment - kRs for a missing sun; inland if left out [1/K^0.5]
 * @param given.dewPointBelow - how far the dew point lies under the lowest temperature for missing vapour; else 0 [K]
 * @param given.groundHeat - heat that goes into the ground; else 0 [J/m2 of the day]
 * @param given.netShare - share of the net radiation left under a cover; else 1 [-]
 * @returns reference evapotranspiration of the day, never below 0 [m]
 * @throws DomainError when a value is outside its relation
 * @validity daily to monthly steps; wind under 0.5 m/s counts as 0.5 m/s
 * @source FAO-56 Eq. 6 with Eq. 7, 8, 11 to 13, 37 to 40, 48, 50
 */
export function penmanMonteith(given: PenmanMonteithGiven): number {
  return penmanMonteithParts(given).evapotranspiration;
}

/**
 * Reference evapotranspiration by Penman-Monteith with the steps on the way to it.
 * The relation of `penmanMonteith`, its two summands apart.
 * @param given - as for `penmanMonteith`, units there [-]
 * @returns depths of the day [m], radiation of the day [J/m2], vapour pressures [Pa]
 * @throws DomainError when a value is outside its relation
 * @validity as `penmanMonteith`
 * @source FAO-56 Eq. 6
 */
export function penmanMonteithParts(given: PenmanMonteithGiven): PenmanMonteithParts {
  requireOrder(given.highest, given.lowest, "Eq. 6");
  const wind = requireWind(given.wind ?? WIND_WHEN_UNKNOWN);
  const mean = (given.highest + given.lowest) / 2;
  const saturation = meanSaturationVapourPressure(given.highest, given.lowest);
  const vapour = given.vapour ?? vapourFromLowest(given.lowest, given.dewPointBelow ?? 0);
  requireNotNegative("vapour pressure", vapour, `${BOOK}, Eq. 6`);
  const { solar, clearSky } = sunAtGround(given);
  const longwave = netLongwaveRadiation({ ...given, vapour, solar, clearSky });
  const netRadiation = (netShortwaveRadiation(solar) - longwave) * (given.netShare ?? 1);
  const slope = vapourPressureSlope(mean);
  const gamma = psychrometricConstant(airPressure(given.elevation));
  const below = slope + gamma * (1 + 0.34 * wind);
  const available = evaporationOfRadiation(netRadiation - (given.groundHeat ?? 0));
  // 900 is in kg K kJ-1 d-1: with pressures in kPa it gives mm a day. A moister air than saturated counts as saturated.
  const drying = (Math.max(0, saturation - vapour) / 1000) * MILLIMETRE;
  const radiationPart = (slope * available) / below;
  const windPart = (((gamma * 900) / (mean - ZERO_CELSIUS + 273)) * wind * drying) / below;
  return {
    evapotranspiration: Math.max(0, radiationPart + windPart),
    radiationPart,
    windPart,
    netRadiation,
    netLongwave: longwave,
    solar,
    clearSky,
    vapour,
    saturation,
  };
}

/**
 * Sunshine that a grass keeps.
 * Rns = (1 - 0.23) Rs
 * @param solar - radiation at the ground [J/m2 of the day]
 * @returns net shortwave radiation [J/m2 of the day]
 * @throws DomainError when the radiation is negative
 * @validity albedo 0.23 of the reference grass
 * @source FAO-56 Eq. 38
 */
export function netShortwaveRadiation(solar: number): number {
  requireNotNegative("solar radiation", solar, `${BOOK}, Eq. 38`);
  return 0.77 * solar;
}

/**
 * Warmth that the ground loses to the sky.
 * Rnl = 4.903e-9 mean(T^4) (0.34 - 0.14 ea^0.5) (1.35 Rs / Rso - 0.35), T in K, ea in kPa, MJ/m2 d
 * @param given.highest - highest air temperature [K]
 * @param given.lowest - lowest air temperature [K]
 * @param given.vapour - vapour pressure [Pa]
 * @param given.solar - radiation at the ground [J/m2 of the day]
 * @param given.clearSky - radiation under a clear sky; 0 on a polar night [J/m2 of the day]
 * @returns net longwave radiation, outward positive [J/m2 of the day]
 * @throws DomainError when the vapour pressure is negative
 * @validity Rs / Rso counts as 1 at the most, as the source limits it, and as overcast (0.3) on a polar night
 * @source FAO-56 Eq. 39
 */
export function netLongwaveRadiation(given: {
  readonly highest: number;
  readonly lowest: number;
  readonly vapour: number;
  readonly solar: number;
  readonly clearSky: number;
}): number {
  requireNotNegative("vapour pressure", given.vapour, `${BOOK}, Eq. 39`);
  // The source adds 273.16 to degrees Celsius in this one relation.
  const offset = 273.16 - ZERO_CELSIUS;
  const warmth = ((given.highest + offset) ** 4 + (given.lowest + offset) ** 4) / 2;
  const clearness = given.clearSky > 0 ? Math.min(1, given.solar / given.clearSky) : 0.3;
  const moisture = 0.34 - 0.14 * Math.sqrt(given.vapour / 1000);
  return 4.903e-9 * MEGAJOULE * warmth * moisture * (1.35 * clearness - 0.35);
}

function sunAtGround(given: PenmanMonteithGiven): { readonly solar: number; readonly clearSky: number } {
  const extraterrestrial = extraterrestrialRadiation(given.latitude, given.dayOfYear);
  const clearSky = clearSkyRadiation(extraterrestrial, given.elevation);
  const range = given.highest - given.lowest;
  const adjustment = given.sunAdjustment ?? SUN_ADJUSTMENT.inland;
  const solar = given.sun ?? solarFromTemperature({ range, extraterrestrial, clearSky, adjustment });
  return { solar, clearSky };
}

function requireOrder(highest: number, lowest: number, where: string): void {
  if (!(highest >= lowest)) {
    throw new DomainError("highest temperature", highest, "at least the lowest", `${BOOK}, ${where}`);
  }
}

function requireWind(wind: number): number {
  requireNotNegative("wind", wind, `${BOOK}, Eq. 6`);
  return Math.max(LEAST_WIND, wind);
}
