// Sunshine above and below a clear sky, by latitude and day of the year.

import { DAY, MEGAJOULE, MINUTE } from "../units/constants.ts";
import { DomainError, requireNotNegative } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Solar constant [W/m2] as FAO-56 Eq. 21 takes it: 0.0820 MJ/m2 a minute. */
const SOLAR_CONSTANT = (0.082 * MEGAJOULE) / MINUTE;

/**
 * Inverse relative distance from the earth to the sun.
 * dr = 1 + 0.033 cos(2 pi J / 365)
 * @param dayOfYear - day of the year J, 1 on the first of January [-]
 * @returns inverse relative distance [-]
 * @throws DomainError when the day is not within 1 to 366
 * @validity any place on earth
 * @source FAO-56 Eq. 23
 */
export function sunDistanceFactor(dayOfYear: number): number {
  requireDay(dayOfYear);
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
}

/**
 * Solar declination.
 * delta = 0.409 sin(2 pi J / 365 - 1.39)
 * @param dayOfYear - day of the year J, 1 on the first of January [-]
 * @returns declination, positive in the northern summer [rad]
 * @throws DomainError when the day is not within 1 to 366
 * @validity any place on earth
 * @source FAO-56 Eq. 24
 */
export function solarDeclination(dayOfYear: number): number {
  requireDay(dayOfYear);
  return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
}

/**
 * Angle of the hour at which the sun sets.
 * ws = acos(-tan(latitude) tan(declination)); pi on a polar day, 0 on a polar night.
 * @param latitude - latitude, north positive [rad]
 * @param dayOfYear - day of the year, 1 on the first of January [-]
 * @returns sunset hour angle [rad]
 * @throws DomainError when the latitude is beyond a pole or the day is not within 1 to 366
 * @validity any place on earth; where the sun does not rise or set the limit of the relation is taken
 * @source FAO-56 Eq. 25
 */
export function sunsetHourAngle(latitude: number, dayOfYear: number): number {
  requireLatitude(latitude);
  const cosine = -Math.tan(latitude) * Math.tan(solarDeclination(dayOfYear));
  if (cosine <= -1) return Math.PI;
  return cosine >= 1 ? 0 : Math.acos(cosine);
}

/**
 * Sunshine that reaches the top of the air over a whole day, on a level square metre.
 * Ra = (24 h / pi) Gsc dr [ws sin(latitude) sin(delta) + cos(latitude) cos(delta) sin(ws)]
 * @param latitude - latitude, north positive [rad]
 * @param dayOfYear - day of the year, 1 on the first of January [-]
 * @returns radiation of the day [J/m2]
 * @throws DomainError when the latitude is beyond a pole or the day is not within 1 to 366
 * @validity any place on earth; daily sums only
 * @source FAO-56 Eq. 21
 */
export function extraterrestrialRadiation(latitude: number, dayOfYear: number): number {
  const sunset = sunsetHourAngle(latitude, dayOfYear);
  const declination = solarDeclination(dayOfYear);
  const height =
    sunset * Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  return (DAY / Math.PI) * SOLAR_CONSTANT * sunDistanceFactor(dayOfYear) * Math.max(0, height);
}

/**
 * Time from sunrise to sunset.
 * N = 24 h ws / pi
 * @param latitude - latitude, north positive [rad]
 * @param dayOfYear - day of the year, 1 on the first of January [-]
 * @returns daylight [s]
 * @throws DomainError when the latitude is beyond a pole or the day is not within 1 to 366
 * @validity any place on earth
 * @source FAO-56 Eq. 34
 */
export function daylightHours(latitude: number, dayOfYear: number): number {
  return DAY * (sunsetHourAngle(latitude, dayOfYear) / Math.PI);
}

/**
 * Sunshine that reaches the ground on a cloudless day.
 * Rso = (0.75 + 2e-5 z) Ra
 * @param extraterrestrial - radiation at the top of the air [J/m2 of the day]
 * @param elevation - height above the sea [m]
 * @returns radiation of the day [J/m2]
 * @throws DomainError when the radiation is negative or the elevation outside -500 to 9000 m
 * @validity where no calibrated coefficients for the place are known
 * @source FAO-56 Eq. 37
 */
export function clearSkyRadiation(extraterrestrial: number, elevation: number): number {
  if (!(extraterrestrial >= 0)) {
    throw new DomainError(
      "extraterrestrial radiation",
      extraterrestrial,
      "at least 0 J/m2",
      `${BOOK}, Eq. 37`,
    );
  }
  if (!(elevation >= -500 && elevation <= 9000)) {
    throw new DomainError("elevation", elevation, "-500 to 9000 m", `${BOOK}, Eq. 37`);
  }
  return (0.75 + 2e-5 * elevation) * extraterrestrial;
}

/**
 * Sunshine at the ground estimated from the day's range of temperature, never more than a clear sky gives.
 * Rs = min(kRs sqrt(Tmax - Tmin) Ra, Rso)
 * @param given.range - highest less lowest air temperature [K]
 * @param given.extraterrestrial - radiation at the top of the air [J/m2 of the day]
 * @param given.clearSky - radiation under a clear sky [J/m2 of the day]
 * @param given.adjustment - kRs: 0.16 inland, 0.19 on a coast [1/K^0.5]
 * @returns radiation of the day [J/m2]
 * @throws DomainError when the range is negative or the coefficient outside 0.10 to 0.25
 * @validity not on islands; where radiation and sunshine were not measured
 * @source FAO-56 Eq. 50
 */
export function solarFromTemperature(given: {
  readonly range: number;
  readonly extraterrestrial: number;
  readonly clearSky: number;
  readonly adjustment: number;
}): number {
  requireNotNegative("temperature range", given.range, `${BOOK}, Eq. 50`);
  if (!(given.adjustment >= 0.1 && given.adjustment <= 0.25)) {
    throw new DomainError("adjustment coefficient", given.adjustment, "0.10 to 0.25", `${BOOK}, Eq. 50`);
  }
  return Math.min(given.adjustment * Math.sqrt(given.range) * given.extraterrestrial, given.clearSky);
}

function requireDay(dayOfYear: number): void {
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) {
    throw new DomainError("day of the year", dayOfYear, "1 to 366", `${BOOK}, Eq. 21 to 25`);
  }
}

function requireLatitude(latitude: number): void {
  if (!(Math.abs(latitude) <= Math.PI / 2)) {
    throw new DomainError("latitude", latitude, "-90 to 90 degrees", `${BOOK}, Eq. 25`);
  }
}
