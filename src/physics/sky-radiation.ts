// Sunshine above the air and how it is shared between beam and sky, by hour, day and month.
//
// It stands twice on purpose: the shares and tilts of Duffie and Beckman were fitted with their sun (1367 W/m2, Cooper's
// declination), the reference evapotranspiration of FAO-56 with its own (sun.ts; 1366.7 W/m2). What they give for a day
// differs by less than a hundredth up to 60 degrees, but each book's examples come out only with its own.

import { DAY, HOUR, MILLIMETRE } from "../units/constants.ts";
import { requireNotNegative, requireWithin } from "./domain-error.ts";
import { cooperDeclination, setHourAngle } from "./sun-angles.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes";
/** Solar constant of the book, 4th edition [W/m2]. */
const SOLAR_CONSTANT = 1367;
/** Rain from which a day counts as a wet one, with less sun [m]: that which ends a dry run. Definition. */
export const WET_DAY: number = MILLIMETRE;
/** Sunset hour angle that parts winter from the rest in Erbs' relations [rad]. */
const WINTER_SUNSET = (81.4 * Math.PI) / 180;

/**
 * Sunshine above the air on a square metre that faces the sun: Gsc (1 + 0.033 cos(360° n / 365)).
 *
 * @param day of the year, 1..366 [-]
 * @returns irradiance [W/m2]
 * @throws DomainError outside 1..366
 * @source Duffie and Beckman eq. 1.4.1a, with their 1367 W/m2
 */
export function normalAboveAir(day: number): number {
  requireWithin("day of the year", day, [1, 366], BOOK);
  return SOLAR_CONSTANT * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));
}

/**
 * Sunshine above the air on a level square metre over a day.
 *
 * @param latitude north positive [rad]
 * @param day of the year, 1..366 [-]
 * @returns radiation of the day [J/m2]
 * @throws DomainError outside 1..366 or beyond a pole
 * @source Duffie and Beckman eq. 1.10.3 (example 1.10.1 read second-hand)
 */
export function dailyAboveAir(latitude: number, day: number): number {
  const sunset = setHourAngle(latitude, cooperDeclination(day));
  return betweenAboveAir(latitude, day, [-sunset, sunset]);
}

/**
 * Sunshine above the air on a level square metre between two hour angles.
 *
 * @param latitude north positive [rad]
 * @param day of the year, 1..366 [-]
 * @param hours two hour angles, the later second, both while the sun is up [rad]
 * @returns radiation [J/m2]
 * @throws DomainError outside 1..366 or beyond a pole
 * @source Duffie and Beckman eq. 1.10.4
 */
export function betweenAboveAir(latitude: number, day: number, hours: readonly [number, number]): number {
  requireWithin("latitude", latitude, [-Math.PI / 2, Math.PI / 2], BOOK);
  const declination = cooperDeclination(day);
  const [from, to] = hours;
  const beam =
    Math.cos(latitude) * Math.cos(declination) * (Math.sin(to) - Math.sin(from)) +
    (to - from) * Math.sin(latitude) * Math.sin(declination);
  return (DAY / (2 * Math.PI)) * normalAboveAir(day) * Math.max(0, beam);
}

/**
 * Share of a day's sunshine that comes from the whole sky, by its clearness.
 *
 * @param clearness of the day, 0 or more [-]
 * @param sunset hour angle of the sunset [rad]
 * @returns diffuse share [-]
 * @throws DomainError for a negative clearness
 * @source Erbs et al. (1982), Duffie and Beckman eq. 2.11.1 (coefficients read in python-hvac)
 */
export function diffuseShareOfDay(clearness: number, sunset: number): number {
  requireNotNegative("clearness", clearness, BOOK);
  if (sunset <= WINTER_SUNSET) {
    return clearness < 0.715 ? polynomial([1, -0.2727, 2.4495, -11.9514, 9.3879], clearness) : 0.143;
  }
  return clearness < 0.722 ? polynomial([1, 0.2832, -2.5557, 0.8448], clearness) : 0.175;
}

/**
 * Share of a month's mean sunshine that comes from the whole sky, by its clearness.
 *
 * @param clearness of the month, 0.3..0.8 [-]
 * @param sunset hour angle of the sunset on its middle day [rad]
 * @returns diffuse share [-]
 * @throws DomainError for a clearness outside 0.3..0.8
 * @source Erbs et al. (1982), Duffie and Beckman eq. 2.12.1 (coefficients read in python-hvac)
 */
export function diffuseShareOfMonth(clearness: number, sunset: number): number {
  requireWithin("clearness of the month", clearness, [0.3, 0.8], BOOK);
  const winter = sunset <= WINTER_SUNSET;
  return polynomial(winter ? [1.391, -3.56, 4.189, -2.137] : [1.311, -3.022, 3.427, -1.821], clearness);
}

/**
 * Sunshine of one hour over that of its day: rt = (π/24) (a + b cos ω) (cos ω - cos ωs) / (sin ωs - ωs cos ωs).
 *
 * @param hourAngle of the middle of the hour [rad]
 * @param sunset hour angle of the sunset, above 0 [rad]
 * @returns share an hour; 0 at night [-]
 * @throws DomainError for a sunset outside 0..π
 * @source Collares-Pereira and Rabl (1979), Duffie and Beckman eq. 2.13.1 (coefficients read in python-hvac)
 */
export function hourShare(hourAngle: number, sunset: number): number {
  const shift = sunset - Math.PI / 3;
  const a = 0.409 + 0.5016 * Math.sin(shift);
  const b = 0.6609 - 0.4767 * Math.sin(shift);
  return (a + b * Math.cos(hourAngle)) * diffuseHourShare(hourAngle, sunset);
}

/**
 * Light of the sky in one hour over that of its day: rd = (π/24) (cos ω - cos ωs) / (sin ωs - ωs cos ωs).
 *
 * @param hourAngle of the middle of the hour [rad]
 * @param sunset hour angle of the sunset, above 0 [rad]
 * @returns share an hour; 0 at night [-]
 * @throws DomainError for a sunset outside 0..π
 * @source Liu and Jordan (1960), Duffie and Beckman eq. 2.13.4 (from memory)
 */
export function diffuseHourShare(hourAngle: number, sunset: number): number {
  requireWithin("sunset hour angle", sunset, [1e-6, Math.PI], BOOK);
  if (Math.abs(hourAngle) >= sunset) return 0;
  const whole = Math.sin(sunset) - sunset * Math.cos(sunset);
  return ((Math.PI * HOUR) / DAY) * ((Math.cos(hourAngle) - Math.cos(sunset)) / whole);
}

/**
 * Sunshine of dry and of wet days that together keep the month's mean: dry = H / (1 - (1 - r) f), wet = r dry.
 *
 * @param mean of the month [J/m2 of the day]
 * @param wetShare share of its days that are wet, 0..1 [-]
 * @param ratio of a wet day's sunshine to a dry day's, above 0 to 1 [-]
 * @returns dry and wet day [J/m2 of the day]
 * @throws DomainError for a negative mean or a share outside its range
 * @source continuity of the mean; the split after Richardson (1981) WRR 17, 182-190 (title page read)
 */
export function drySunWetSun(
  mean: number,
  wetShare: number,
  ratio: number,
): { readonly dry: number; readonly wet: number } {
  requireNotNegative("mean sunshine", mean, BOOK);
  requireWithin("share of wet days", wetShare, [0, 1], BOOK);
  requireWithin("sunshine of a wet day", ratio, [1e-3, 1], BOOK);
  const dry = mean / (1 - (1 - ratio) * wetShare);
  return { dry, wet: ratio * dry };
}

function polynomial(coefficients: readonly number[], at: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * at + coefficient, 0);
}
