// Where the sun stands by day, hour and place, and at what angle it strikes a tilted panel.

import { DAY, HOUR, MINUTE } from "../units/constants.ts";
import { DomainError, requireWithin } from "./domain-error.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes, chapter 1";
const DEGREE = Math.PI / 180;
const SECONDS_A_TURN = DAY / (2 * Math.PI);
/** Height of the sun's centre when its upper edge is just seen: refraction and half its width [rad]. */
const RISING_HEIGHT = -0.833 * DEGREE;

/**
 * Declination of the sun: 23.45° sin(360° (284 + n) / 365).
 *
 * @param day of the year n, 1..366 [-]
 * @returns declination, north positive [rad]
 * @throws DomainError outside 1..366
 * @validity within 1.2° of zenith against the SPA reference
 * @source Cooper (1969), Duffie and Beckman eq. 1.6.1a (coefficients read in python-hvac)
 */
export function cooperDeclination(day: number): number {
  requireWithin("day of the year", day, [1, 366], BOOK);
  return 23.45 * DEGREE * Math.sin((2 * Math.PI * (284 + day)) / 365);
}

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
 * Hour angle of the sun: 15° an hour from noon.
 *
 * @param solarTime since midnight by the sun [s]
 * @returns angle, afternoon positive [rad]
 * @source definition
 */
export function hourAngle(solarTime: number): number {
  return (solarTime - 12 * HOUR) / SECONDS_A_TURN;
}

/** Place, season and hour. */
export type SunPlace = {
  /** North positive [rad]. */
  readonly latitude: number;
  /** Declination of the sun, north positive [rad]. */
  readonly declination: number;
  /** From noon, afternoon positive [rad]. */
  readonly hourAngle: number;
};

/**
 * Sine of the sun's height: sin φ sin δ + cos φ cos δ cos ω.
 *
 * @param place latitude, declination and hour angle, units at the type's fields
 * @returns sine of the height; below 0 at night [-]
 * @throws DomainError beyond a pole
 * @source Duffie and Beckman eq. 1.6.5
 */
export function sineOfHeight(place: SunPlace): number {
  requireWithin("latitude", place.latitude, [-Math.PI / 2, Math.PI / 2], BOOK);
  return (
    Math.sin(place.latitude) * Math.sin(place.declination) +
    Math.cos(place.latitude) * Math.cos(place.declination) * Math.cos(place.hourAngle)
  );
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

/** How a panel stands. */
export type Plane = {
  /** From level, 0..π [rad]. */
  readonly tilt: number;
  /** Direction it faces, clockwise from north: π is south [rad]. */
  readonly azimuth: number;
};

/** Strength of the beam on a plane through a day: A + B cos ω + C sin ω. */
export type PlaneTerms = {
  /** [-] */
  readonly constant: number;
  /** [-] */
  readonly cosine: number;
  /** [-] */
  readonly sine: number;
};

/**
 * Terms of the cosine of incidence over the day: A + B cos ω + C sin ω.
 *
 * @param latitude north positive [rad]
 * @param declination of the sun [rad]
 * @param plane tilt and azimuth, units at the type's fields
 * @returns the three terms, units at the type's fields
 * @throws DomainError beyond a pole or for a tilt outside 0..π
 * @source Duffie and Beckman eq. 1.6.2, sorted by hour angle
 */
export function planeTerms(latitude: number, declination: number, plane: Plane): PlaneTerms {
  requireWithin("latitude", latitude, [-Math.PI / 2, Math.PI / 2], BOOK);
  requireWithin("tilt", plane.tilt, [0, Math.PI], BOOK);
  if (!Number.isFinite(plane.azimuth)) throw new DomainError("azimuth", plane.azimuth, "finite", BOOK);
  const [sinTilt, cosTilt] = [Math.sin(plane.tilt), Math.cos(plane.tilt)];
  const facing = plane.azimuth - Math.PI;
  const [sinLatitude, cosLatitude] = [Math.sin(latitude), Math.cos(latitude)];
  return {
    constant: Math.sin(declination) * (sinLatitude * cosTilt - cosLatitude * sinTilt * Math.cos(facing)),
    cosine: Math.cos(declination) * (cosLatitude * cosTilt + sinLatitude * sinTilt * Math.cos(facing)),
    sine: Math.cos(declination) * sinTilt * Math.sin(facing),
  };
}

/**
 * Cosine of the angle between the beam and a plane's normal; below 0 from behind.
 *
 * @param place latitude, declination and hour angle, units at the type's fields
 * @param plane tilt and azimuth, units at the type's fields
 * @returns cosine [-]
 * @throws DomainError as planeTerms
 * @source Duffie and Beckman eq. 1.6.2
 */
export function incidenceCosine(place: SunPlace, plane: Plane): number {
  const terms = planeTerms(place.latitude, place.declination, plane);
  return terms.constant + terms.cosine * Math.cos(place.hourAngle) + terms.sine * Math.sin(place.hourAngle);
}

/**
 * Hour angle at which the sun's centre reaches a height: π where it stays above, 0 where it stays below.
 *
 * @param latitude north positive [rad]
 * @param declination of the sun [rad]
 * @param height of the centre over the horizon [rad]
 * @returns hour angle [rad]
 * @throws DomainError beyond a pole
 * @source Duffie and Beckman eq. 1.6.10 at height 0
 */
export function setHourAngle(latitude: number, declination: number, height = 0): number {
  requireWithin("latitude", latitude, [-Math.PI / 2, Math.PI / 2], BOOK);
  const cosine =
    (Math.sin(height) - Math.sin(latitude) * Math.sin(declination)) /
    (Math.cos(latitude) * Math.cos(declination));
  if (cosine <= -1) return Math.PI;
  return cosine >= 1 ? 0 : Math.acos(cosine);
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
