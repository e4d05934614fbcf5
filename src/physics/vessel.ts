// Level to volume and back for one tank, or several alike that are joined at the base.

import { DomainError, requirePositive } from "./domain-error.ts";

/**
 * A vessel by its inside height [m] and its volume when full [m3].
 * `upright` has one cross-section all the way up; `lying` is a cylinder on its side (height is its diameter).
 */
export type Vessel = {
  readonly form: "upright" | "lying";
  /** Inside height [m]. */
  readonly height: number;
  /** Volume when full [m3]. */
  readonly volume: number;
};

const GEOMETRY = "geometry of the vessel";
/** A running balance may pass full or empty by this share through rounding alone. */
const ROUNDING = 1e-9;

/**
 * Volume of water in a vessel at a level.
 *
 * @param vessel its form, inside height [m] and full volume [m3]
 * @param level depth over the floor, 0..height [m]
 * @returns volume [m3]
 * @throws DomainError for a level outside the vessel by more than rounding
 * @source geometry; lying cylinder: segment of a circle, Dr. Math 55223 (read)
 */
export function volumeAt(vessel: Vessel, level: number): number {
  const share = shareOf("level", level, vessel.height);
  return vessel.volume * (vessel.form === "upright" ? share : segmentShare(share));
}

/**
 * Level of a volume of water in a vessel, the exact inverse of volumeAt.
 *
 * @param vessel its form, inside height [m] and full volume [m3]
 * @param volume of water, 0..full [m3]
 * @returns depth over the floor [m]
 * @throws DomainError for a volume that the vessel cannot hold, by more than rounding
 * @source geometry, as in volumeAt
 */
export function levelAt(vessel: Vessel, volume: number): number {
  const share = shareOf("volume", volume, vessel.volume);
  return vessel.height * (vessel.form === "upright" ? share : depthShare(share));
}

/**
 * Area of the water's surface in a vessel at a level.
 *
 * @param vessel its form, inside height [m] and full volume [m3]
 * @param level depth over the floor, 0..height [m]
 * @returns area; 0 at the very bottom and top of a lying cylinder [m2]
 * @throws DomainError for a level outside the vessel by more than rounding
 * @source geometry: the derivative of volumeAt
 */
export function surfaceAt(vessel: Vessel, level: number): number {
  const share = shareOf("level", level, vessel.height);
  const mean = vessel.volume / vessel.height;
  return vessel.form === "upright" ? mean : mean * (8 / Math.PI) * Math.sqrt(share * (1 - share));
}

/** Share of a whole, with rounding at either end taken off and anything more refused. */
function shareOf(quantity: string, value: number, whole: number): number {
  requirePositive(`whole ${quantity}`, whole, GEOMETRY);
  const share = value / whole;
  if (share >= 0 && share <= 1) return share;
  if (share > -ROUNDING && share < 1 + ROUNDING) return share < 0 ? 0 : 1;
  throw new DomainError(quantity, value, `from 0 to ${whole}`, GEOMETRY);
}

/** Share of a circle's area below a depth that is a share of its diameter. */
function segmentShare(depth: number): number {
  if (depth > 0.5) return 1 - segmentShare(1 - depth);
  return angleLessSine(4 * Math.asin(Math.sqrt(depth))) / (2 * Math.PI);
}

/** Depth as a share of the diameter below which a share of a circle's area lies. */
function depthShare(area: number): number {
  if (area > 0.5) return 1 - depthShare(1 - area);
  if (area === 0) return 0;
  const target = 2 * Math.PI * area;
  let angle = Math.min(Math.PI, Math.cbrt(6 * target));
  // The function is convex up to a half circle, so that from the second step on these close in from above.
  for (let step = 0; step < 12; step++) {
    const half = Math.sin(angle / 2);
    const next = angle - (angleLessSine(angle) - target) / (2 * half * half);
    if (next === angle) break;
    angle = next;
  }
  return Math.sin(angle / 4) ** 2;
}

/** An angle less its sine, without the loss of figures that the plain difference has for a small angle. */
function angleLessSine(angle: number): number {
  if (angle > 0.5) return angle - Math.sin(angle);
  const square = angle * angle;
  let term = (angle * square) / 6;
  let sum = term;
  for (let order = 5; order < 15; order += 2) {
    term *= -square / ((order - 1) * order);
    sum += term;
  }
  return sum;
}
