// Sunshine on a tilted plane under a sky that is bright evenly, by hour, day and month.

import { DAY, HOUR } from "../units/constants.ts";
import { DomainError, requireNotNegative, requireWithin } from "./domain-error.ts";
import {
  dailyAboveAir,
  diffuseHourShare,
  diffuseShareOfDay,
  diffuseShareOfMonth,
  hourShare,
} from "./sky-radiation.ts";
import {
  cooperDeclination,
  incidenceCosine,
  type Plane,
  planeTerms,
  type SunPlace,
  setHourAngle,
  sineOfHeight,
} from "./sun-angles.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes, chapter 2";

/**
 * Beam on a plane over beam on the level, at one moment; 0 from behind.
 *
 * @param place latitude, declination and hour angle while the sun is up, units at the type's fields
 * @param plane tilt and azimuth, units at the type's fields
 * @returns ratio [-]
 * @throws DomainError while the sun is down
 * @source Duffie and Beckman eq. 1.8.1
 */
export function beamRatio(place: SunPlace, plane: Plane): number {
  const level = sineOfHeight(place);
  if (!(level > 0)) throw new DomainError("height of the sun (its sine)", level, "above 0", BOOK);
  return Math.max(0, incidenceCosine(place, plane)) / level;
}

/**
 * Beam on a plane over beam on the level through a whole day, both above the air.
 *
 * @param latitude north positive [rad]
 * @param declination of the sun [rad]
 * @param plane tilt and azimuth, units at the type's fields
 * @returns ratio; 0 where the sun does not rise [-]
 * @throws DomainError beyond a pole
 * @source integral of Duffie and Beckman eq. 1.6.2 over the hours in which the sun is up and before the plane; that of
 * Klein (1977), eq. 2.19.3, for one that faces the equator
 */
export function dailyBeamRatio(latitude: number, declination: number, plane: Plane): number {
  const sunset = setHourAngle(latitude, declination);
  const level =
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset) +
    sunset * Math.sin(latitude) * Math.sin(declination);
  if (sunset === 0 || !(level > 0)) return 0;
  const { constant, cosine, sine } = planeTerms(latitude, declination, plane);
  const swing = Math.hypot(cosine, sine);
  const middle = Math.atan2(sine, cosine);
  const half = constant >= swing ? Math.PI : constant <= -swing ? 0 : Math.acos(-constant / swing);
  // The plane's own day is centred on `middle`; shifted by a turn it may reach into the sun's day from the other side.
  const beam = [-1, 0, 1].reduce((sum, turn) => {
    const centre = middle + turn * 2 * Math.PI;
    const from = Math.max(-sunset, centre - half);
    const to = Math.min(sunset, centre + half);
    if (to <= from) return sum;
    return sum + constant * (to - from) + swing * (Math.sin(to - middle) - Math.sin(from - middle));
  }, 0);
  return Math.max(0, beam) / (2 * level);
}

/** Sunshine on the level, in two parts, and how it meets a plane. */
export type Sunshine = {
  /** All of it on the level [W/m2, or J/m2 for a time]. */
  readonly global: number;
  /** The part of it that comes from the whole sky [W/m2, or J/m2 for a time]. */
  readonly diffuse: number;
  /** Beam on the plane over beam on the level [-]. */
  readonly beamRatio: number;
  /** Share of the light that the ground throws back [-]. */
  readonly albedo: number;
};

/**
 * Sunshine on a tilted plane: Ib Rb + Id (1 + cos β)/2 + I ρ (1 - cos β)/2.
 *
 * @param sun global, diffuse, ratio of the beam and albedo, units at the type's fields
 * @param tilt of the plane from level, 0..π [rad]
 * @returns sunshine on the plane [W/m2, or J/m2 for a time]
 * @throws DomainError for a negative part, more diffuse than global, or an albedo outside 0..1
 * @source Liu and Jordan (1963), isotropic sky, Duffie and Beckman eq. 2.15.1
 */
export function onTilted(sun: Sunshine, tilt: number): number {
  requireWithin("tilt", tilt, [0, Math.PI], BOOK);
  requireNotNegative("sunshine on the level", sun.global, BOOK);
  requireWithin("light of the sky", sun.diffuse, [0, sun.global], BOOK);
  requireNotNegative("ratio of the beam", sun.beamRatio, BOOK);
  requireWithin("albedo", sun.albedo, [0, 1], BOOK);
  const seen = (1 + Math.cos(tilt)) / 2;
  return (
    (sun.global - sun.diffuse) * sun.beamRatio +
    sun.diffuse * seen +
    sun.global * sun.albedo * ((1 - Math.cos(tilt)) / 2)
  );
}

/** A plane at a place on a day with its sunshine. */
export type PlaneDay = {
  /** North positive [rad]. */
  readonly latitude: number;
  /** Day of the year, 1..366 [-]. */
  readonly day: number;
  /** Sunshine of the day on the level [J/m2]. */
  readonly global: number;
  readonly plane: Plane;
  /** Share of the light that the ground throws back [-]. */
  readonly albedo: number;
};

/**
 * Mean daily sunshine of a month on a tilted plane.
 *
 * @param month its middle day, the month's mean on the level, and the plane, units at the type's fields
 * @returns radiation of a mean day on the plane [J/m2]
 * @throws DomainError for a clearness outside 0.3..0.8
 * @source Duffie and Beckman eq. 2.19.1 with Erbs' monthly diffuse share (example 2.19.1 read)
 */
export function monthOnTilted(month: PlaneDay): number {
  const declination = cooperDeclination(month.day);
  const sunset = setHourAngle(month.latitude, declination);
  const clearness = month.global / dailyAboveAir(month.latitude, month.day);
  return onTilted(
    {
      global: month.global,
      diffuse: month.global * diffuseShareOfMonth(clearness, sunset),
      beamRatio: dailyBeamRatio(month.latitude, declination, month.plane),
      albedo: month.albedo,
    },
    month.plane.tilt,
  );
}

/** `day`: one real day, whose sky is as it is; `month`: the mean day of a month, clear and dull ones mixed. */
export type DayKind = "day" | "month";

/** One stretch of a day on a plane. */
export type SunStep = {
  /** Middle of the stretch, since midnight by the sun [s]. */
  readonly solarTime: number;
  /** [s] */
  readonly length: number;
  /** On the plane, mean over the stretch [W/m2]. */
  readonly irradiance: number;
};

/**
 * A day on a tilted plane in equal stretches from sunrise to sunset.
 *
 * @param of the day, its sunshine on the level, and the plane, units at the type's fields
 * @param steps number of stretches, 4 or more [-]
 * @param kind one real day, or the mean day of a month: of the same sunshine the second has more beam
 * @returns the stretches; none where the sun does not rise, units at the type's fields
 * @throws DomainError for more sunshine than there is above the air, or a month's clearness outside 0.3..0.8
 * @validity a day whose hours are as even as the mean of many like it; near sunrise the sky gives no more than all there is
 * @source Collares-Pereira and Rabl (1979), Liu and Jordan (1960) and Erbs' share of the day or month, as in sky-radiation
 */
export function dayOnTilted(of: PlaneDay, steps: number, kind: DayKind): readonly SunStep[] {
  requireWithin("number of stretches", steps, [4, 1440], BOOK);
  const declination = cooperDeclination(of.day);
  const sunset = setHourAngle(of.latitude, declination);
  const above = dailyAboveAir(of.latitude, of.day);
  if (sunset < 1e-6 || above === 0) return [];
  const clearness = of.global / above;
  requireWithin("clearness of the day", clearness, [0, 1], BOOK);
  const shareOf = kind === "day" ? diffuseShareOfDay : diffuseShareOfMonth;
  const diffuse = of.global * shareOf(clearness, sunset);
  const shares = Array.from({ length: steps }, (_, step) => {
    const hour = sunset * ((2 * step + 1) / steps - 1);
    return { hour, all: hourShare(hour, sunset), sky: diffuseHourShare(hour, sunset) };
  });
  // The stretches are scaled to the day's sum: sums of middles are a little off.
  const sumAll = shares.reduce((sum, { all }) => sum + all, 0);
  const sumSky = shares.reduce((sum, { sky }) => sum + sky, 0);
  const length = ((sunset / Math.PI) * DAY) / steps;
  return shares.map(({ hour, all, sky }) => {
    const global = (of.global * all) / sumAll;
    const place = { latitude: of.latitude, declination, hourAngle: hour };
    const sun = { global, diffuse: Math.min(global, (diffuse * sky) / sumSky), albedo: of.albedo };
    const received = onTilted({ ...sun, beamRatio: beamRatio(place, of.plane) }, of.plane.tilt);
    return { solarTime: 12 * HOUR + (hour / (2 * Math.PI)) * DAY, length, irradiance: received / length };
  });
}
