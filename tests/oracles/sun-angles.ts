// The sun by clock and compass, as almanacs give it: what the hour angles and the incidence are held against.

import { requireWithin } from "../../src/physics/domain-error.ts";
import { type SunPlace, setHourAngle, sineOfHeight } from "../../src/physics/sun-angles.ts";
import { DAY, HOUR, MINUTE } from "../../src/units/constants.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes, chapter 1";
const DEGREE = Math.PI / 180;
const SECONDS_A_TURN = DAY / (2 * Math.PI);
/** Height of the sun's centre when its upper edge is just seen: refraction and half its width [rad]. */
const RISING_HEIGHT = -0.833 * DEGREE;

/**
 * Declination of the sun as a series in the day's angle.
 *
 * @param day of the year, 1..366; a fraction tells the hour [-]
 * @returns declination, north positive [rad]
 * @throws DomainError outside 1..366
 * @validity within 0.4° of zenith against the SPA reference
 * @source Spencer (1971), Duffie and Beckman eq. 1.6.1b (from memory)
 */
export function spencerDeclination(day: number): number {
  requireWithin("day of the year", day, [1, 367], BOOK);
  const angle = (2 * Math.PI * (day - 1)) / 365;
  return (
    0.006918 -
    0.399912 * Math.cos(angle) +
    0.070257 * Math.sin(angle) -
    0.006758 * Math.cos(2 * angle) +
    0.000907 * Math.sin(2 * angle) -
    0.002697 * Math.cos(3 * angle) +
    0.00148 * Math.sin(3 * angle)
  );
}

/**
 * Equation of time: how far the sun runs ahead of an even clock.
 *
 * @param day of the year, 1..366 [-]
 * @returns time, positive when the sun is early [s]
 * @throws DomainError outside 1..366
 * @source Spencer (1971), Duffie and Beckman eq. 1.5.3 (from memory)
 */
export function equationOfTime(day: number): number {
  requireWithin("day of the year", day, [1, 367], BOOK);
  const angle = (2 * Math.PI * (day - 1)) / 365;
  const series =
    0.000075 +
    0.001868 * Math.cos(angle) -
    0.032077 * Math.sin(angle) -
    0.014615 * Math.cos(2 * angle) -
    0.04089 * Math.sin(2 * angle);
  return 229.2 * MINUTE * series;
}

/**
 * Solar time less the clock's standard time: 4 minutes a degree of longitude, and the equation of time.
 *
 * @param day of the year, 1..366 [-]
 * @param longitude of the place, east positive [rad]
 * @param zone standard time ahead of Greenwich [s]
 * @returns time [s]
 * @throws DomainError outside 1..366 days or ±180°
 * @source Duffie and Beckman eq. 1.5.2 (read in a copy of its examples)
 */
export function solarLessClock(day: number, longitude: number, zone: number): number {
  requireWithin("longitude", longitude, [-Math.PI, Math.PI], BOOK);
  return longitude * SECONDS_A_TURN - zone + equationOfTime(day);
}

/**
 * Angle of the sun from straight above.
 *
 * @param place latitude, declination and hour angle, units at the type's fields
 * @returns zenith angle [rad]
 * @throws DomainError beyond a pole
 * @source Duffie and Beckman eq. 1.6.5
 */
export function zenithAngle(place: SunPlace): number {
  return Math.acos(Math.min(1, Math.max(-1, sineOfHeight(place))));
}

/**
 * Direction in which the sun stands, by the compass.
 *
 * @param place latitude, declination and hour angle, units at the type's fields
 * @returns azimuth clockwise from north, 0..2π [rad]
 * @throws DomainError beyond a pole
 * @source spherical trigonometry, as Duffie and Beckman eq. 1.6.6 with its south as π here
 */
export function sunAzimuth(place: SunPlace): number {
  requireWithin("latitude", place.latitude, [-Math.PI / 2, Math.PI / 2], BOOK);
  const { latitude, declination, hourAngle: hour } = place;
  const west = Math.cos(declination) * Math.sin(hour);
  const south =
    Math.sin(latitude) * Math.cos(declination) * Math.cos(hour) - Math.cos(latitude) * Math.sin(declination);
  return Math.atan2(west, south) + Math.PI;
}

/** Times of the sun on one day, by the clock's standard time. */
export type SunTimes = {
  /** Since midnight; null where the sun does not rise or set [s]. */
  readonly sunrise: number | null;
  /** Since midnight [s]. */
  readonly noon: number;
  /** Since midnight; null where the sun does not rise or set [s]. */
  readonly sunset: number | null;
};

/**
 * Sunrise, noon and sunset by the clock's standard time.
 *
 * @param day of the year, 1..366 [-]
 * @param latitude north positive [rad]
 * @param longitude east positive [rad]
 * @param zone standard time ahead of Greenwich [s]
 * @returns times, units at the type's fields
 * @throws DomainError outside 1..366 days, beyond a pole or ±180°
 * @validity within 75 s of the SPA reference at middle latitudes
 * @source Spencer (1971) with the upper edge at -0.833°
 */
export function sunTimes(day: number, latitude: number, longitude: number, zone: number): SunTimes {
  const noon = 12 * HOUR - solarLessClock(day, longitude, zone);
  const half = setHourAngle(latitude, spencerDeclination(day), RISING_HEIGHT);
  if (half === 0 || half === Math.PI) return { sunrise: null, noon, sunset: null };
  return { sunrise: noon - half * SECONDS_A_TURN, noon, sunset: noon + half * SECONDS_A_TURN };
}
