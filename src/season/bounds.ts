// What a short watering lacked: how much each allowance alone would have kept from it, the most of which binds.

import { BOUNDS } from "../network/bounds.ts";

const placeOf = (bound: (typeof BOUNDS)[number]): number => BOUNDS.indexOf(bound);

export const STORAGE = placeOf("storage");
export const LOSS = placeOf("loss");
export const RAIN = placeOf("rain");
export const UNROOFED = placeOf("unroofed");
export const TANKFUL = placeOf("tankful");
export const REFILL = placeOf("refill");
export const LINE = placeOf("line");
export const PUMP_TIME = placeOf("pump_time");
export const ENERGY = placeOf("energy");
export const DAYLIGHT = placeOf("daylight");
export const HANDS = placeOf("hands");
export const HELD_BACK = placeOf("held_back");
const RULE = placeOf("rule");
export const GIVEN_UP = placeOf("given_up");
const UNWATERED = placeOf("unwatered");
/** Nothing lacked: beyond the last bound. */
export const UNBOUND: number = BOUNDS.length;

/**
 * Place under which the water in reach is noted: one allowance, told by where it went (gone.ts), of a tank that no roof
 * fills as that. Power is one allowance too, told as daylight where night rather than the panel kept most of it.
 */
export const WATER: number = placeOf("storage");

/** Forgets what lacked; a few numbers are set faster by a loop than by the built-in. */
export function clearLacks(lacks: Lacks): void {
  for (let place = 0; place < lacks.length; place++) lacks[place] = 0;
}

/** Lacks that differ by less are equal [-]: a float that closes slowly or a last trickle in a line decides nothing. */
const EQUAL = 0.01;

/** What each allowance alone would have kept from a watering [m3], by its place in BOUNDS. */
export type Lacks = Float64Array;

export const noLacks = (): Lacks => new Float64Array(BOUNDS.length);

/**
 * The bound of a watering: the least allowance, which keeps most from it; of equal ones the first in the order of BOUNDS.
 *
 * @param lacks of the watering [m3]
 * @returns its place, WATER for all three of them; UNBOUND where nothing lacked
 */
export function bindingPlace(lacks: Lacks): number {
  let most = 0;
  for (let place = 0; place < lacks.length; place++) most = Math.max(most, lacks[place] as number);
  if (most === 0) return UNBOUND;
  let place = 0;
  while (!((lacks[place] as number) >= most * (1 - EQUAL))) place++;
  return place;
}

/** Bound of a bed that got all it asked for: its rule; of one that nothing waters that. */
export const ownBound = (sources: readonly unknown[]): number => (sources.length > 0 ? RULE : UNWATERED);
