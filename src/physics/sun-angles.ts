// Where the sun stands by day, hour and place, and at what angle it strikes a tilted panel.

import { DAY, HOUR } from "../units/constants.ts";
import { DomainError, requireWithin } from "./domain-error.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes, chapter 1";
const DEGREE = Math.PI / 180;
const SECONDS_A_TURN = DAY / (2 * Math.PI);
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
