// A bed's ground over a day: its root zone moves with what grows, water comes first, then crops or bare ground take theirs.

import { bareGroundLoss } from "../physics/dual-coefficient.ts";
import { stress } from "../physics/soil-water.ts";
import type { BedDays } from "./bed-days.ts";

/**
 * What a bed's ground lacks [m]: in its root zone, in the rest of it as deep as roots may go, and, while it is bare, in the
 * layer that dries (which is within the rest). `zone` is what the root zone held when last looked at.
 */
export type Soil = { depletion: number; rest: number; layer: number; zone: number };

/** Ground that lacks nothing. */
export const fullSoil = (): Soil => ({ depletion: 0, rest: 0, layer: 0, zone: 0 });

/**
 * What a day did [m]: of the water given what the ground kept, rain it kept, what crops used, what bare ground lost; and the
 * share of their full use that crops could take [-].
 */
export type Came = { kept: number; rained: number; use: number; dried: number; share: number };

/** A day on which nothing happened yet. */
export const nothingCame = (): Came => ({ kept: 0, rained: 0, use: 0, dried: 0, share: 1 });

/** Shortfall that is rounding rather than thirst [-]: our definition. */
const SHORT = 1e-3;

/**
 * Whether crops used less than they could by more than a thousandth.
 *
 * @param potential what they could [m]
 * @param use what they did [m]
 */
export const isThirsty = (potential: number, use: number): boolean => use < potential * (1 - SHORT);

/** Where rounding leaves nothing [m]. */
const positive = (depth: number): number => Math.max(0, depth);

/**
 * The root zone of a morning: roots that deepen, or young ones, meet the ground as it is; what leaves leaves it as it is.
 * Nothing that the ground lacks is made or lost by what grows in it.
 *
 * @param days the bed's crops and ground [m]
 * @param day of the record [day]
 * @param soil what its ground lacks; changed [m]
 * @validity below the roots, and outside the planted part, all ground is alike; what young roots find is first the layer that
 *   dried while the ground was bare
 */
export function moveRoots(days: BedDays, day: number, soil: Soil): void {
  const holds = days.total[day] as number;
  const { zone } = soil;
  if (holds === zone) return;
  if (holds === 0) bareAgain(days, soil);
  else if (zone === 0) firstRoots(days, holds, soil);
  else if (holds > zone) reachMore(days, holds, soil);
  else {
    const left = soil.depletion * (1 - holds / zone);
    soil.depletion -= left;
    soil.rest += left;
  }
  soil.zone = holds;
}

function bareAgain(days: BedDays, soil: Soil): void {
  soil.rest += soil.depletion;
  soil.depletion = 0;
  const share = days.room > 0 ? Math.min(1, days.layer.total / days.room) : 0;
  soil.layer = Math.min(days.layer.total, soil.rest * share);
}

function firstRoots(days: BedDays, holds: number, soil: Soil): void {
  const top = Math.min(soil.layer, holds, soil.rest);
  const below = days.room - top;
  const met = below > 0 ? ((soil.rest - top) * (holds - top)) / below : 0;
  soil.depletion = Math.min(holds, soil.rest, top + met);
  soil.rest -= soil.depletion;
  soil.layer = 0;
}

function reachMore(days: BedDays, holds: number, soil: Soil): void {
  const outside = days.room - soil.zone;
  const met = outside > 0 ? Math.min(soil.rest, (soil.rest * (holds - soil.zone)) / outside) : 0;
  soil.depletion += met;
  soil.rest -= met;
}

/** What the ground below the roots lacks under the planted part [m]. */
function belowRoots(days: BedDays, day: number, soil: Soil): number {
  const outside = days.room - (days.total[day] as number);
  const below = (days.column[day] as number) - (days.total[day] as number);
  return outside > 0 ? Math.min(soil.rest, (soil.rest * positive(below)) / outside) : 0;
}

/**
 * What fills the ground under the planted part, as deep as roots may go [m].
 *
 * @param days the bed's crops and ground [m]
 * @param day of the record, its roots moved [day]
 * @param soil what its ground lacks [m]
 */
export const soakOf = (days: BedDays, day: number, soil: Soil): number =>
  soil.depletion + belowRoots(days, day, soil);

/**
 * A day in a bed's ground, its roots moved.
 *
 * @param days the bed's crops and ground [m]
 * @param day of the record [day]
 * @param soil what its ground lacks in the morning; changed to that of the evening [m]
 * @param given water given that comes to the ground [m]
 * @param came gets what came of it; a new record when left out [m]
 * @returns what came of it
 * @source FAO-56 Eq. 81, 84, 85, 86, water early in the day as in example 38; bare ground: Eq. 73 and 74
 */
export function passDay(days: BedDays, day: number, soil: Soil, given: number, came = nothingCame()): Came {
  if ((days.total[day] as number) > 0) growDay(days, day, soil, given, came);
  else bareDay(days, day, soil, came);
  return came;
}

function growDay(days: BedDays, day: number, soil: Soil, given: number, came: Came): void {
  came.kept = fill(days, day, soil, given);
  const caught = fill(days, day, soil, days.rain[day] as number);
  const rest = Math.min(soil.rest, days.restRain[day] as number);
  soil.rest -= rest;
  const total = days.total[day] as number;
  const wet = soil.depletion;
  const share = stress(wet, total, Math.min(total, days.readily[day] as number));
  const use = Math.min(positive(total - wet), (days.potential[day] as number) * share);
  soil.depletion = Math.min(total, wet + use);
  came.rained = caught + rest;
  came.use = use;
  came.dried = 0;
  came.share = share;
}

/** Fills the root zone, then the ground below it; what was kept [m]. */
export function fill(days: BedDays, day: number, soil: Soil, water: number): number {
  if (water === 0) return 0;
  const roots = Math.min(soil.depletion, water);
  soil.depletion -= roots;
  const deep = Math.min(belowRoots(days, day, soil), water - roots);
  soil.rest -= deep;
  return roots + deep;
}

function bareDay(days: BedDays, day: number, soil: Soil, came: Came): void {
  const rain = days.restRain[day] as number;
  const rained = Math.min(soil.rest, rain);
  soil.rest -= rained;
  soil.layer = Math.min(soil.rest, positive(soil.layer - rain));
  const lost = bareGroundLoss(Math.min(soil.layer, days.layer.total), days.layer, days.bare[day] as number);
  const dried = Math.min(positive(days.room - soil.rest), lost);
  soil.layer += dried;
  soil.rest += dried;
  came.kept = 0;
  came.rained = rained;
  came.use = 0;
  came.dried = dried;
  came.share = 1;
}
