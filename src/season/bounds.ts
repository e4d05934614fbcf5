// What a watering lacked, by its place in BOUNDS: where several lack, the first counts.

import { BOUNDS } from "./input.ts";
import type { SeasonState } from "./state.ts";

const RAIN = BOUNDS.indexOf("rain");
const STORAGE = BOUNDS.indexOf("storage");
const TRANSFER = BOUNDS.indexOf("transfer");
export const PUMP_TIME = BOUNDS.indexOf("pump_time");
export const ENERGY = BOUNDS.indexOf("energy");
export const BY_HAND = BOUNDS.indexOf("hands");
export const HELD_BACK = BOUNDS.indexOf("held_back");
/** Nothing lacked: beyond the last bound. */
export const UNBOUND: number = BOUNDS.length;

/**
 * Why a tank holds too little.
 *
 * @param state the run [-]
 * @param tank which of its tanks [-]
 * @param short what it lacks for what is wanted [m3]
 * @returns transfer where the tanks that feed it by lines still hold so much; storage where the tanks behind it spilled
 *   so much since the season began; else rain [-]
 * @source definition
 */
export function whyEmpty(state: SeasonState, tank: number, short: number): number {
  const { volume, dead } = state.tanks;
  let waiting = 0;
  for (const place of state.feeders[tank] ?? []) {
    if (place !== tank) waiting += Math.max(0, (volume[place] as number) - (dead[place] as number));
  }
  if (waiting >= short) return TRANSFER;
  let spilled = 0;
  for (const place of state.spillers[tank] ?? []) spilled += state.spilledSince[place] as number;
  return spilled >= short ? STORAGE : RAIN;
}
