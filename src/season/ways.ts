// What a watering takes by each of a bed's sources alone: minutes of a pump, or rounds, cans and minutes by hand.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { drawdownOf } from "./run-pump.ts";
import { elapsedFor, runningWithin, sunOn } from "./serve.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";

export type Way = {
  readonly id: string;
  /** Running of the pump, or carrying [s]; null where it cannot give so much however long. */
  readonly time: number | null;
  /** Moving and setting up besides [s]. */
  readonly setUp: number;
  /** Rounds, and cans full; 0 for a pump. */
  readonly trips: number;
  readonly cans: number;
  /** What its tank holds for it [m3]: with less than the watering in it, the rest waits for the tank to fill again. */
  readonly reach: number;
};

/** Water that fills whole rounds must not need one more for a rounding in the last bit. */
const ROUNDING = 1e-9;

/**
 * What a volume takes by each of a bed's sources, from its tank as full as it is now.
 *
 * @param volume to be given [m3]
 * @param day of the record: a pump that the sun drives takes longer under a low one
 */
export function waysOf(state: SeasonState, bed: Bed, volume: number, day: number): readonly Way[] {
  return bed.sources.map((source) => wayOf(state, source, volume, day));
}

/** Running of a pump for a volume, from the hour of watering on [s]; null where it cannot give so much, or not today. */
function pumpingFor(state: SeasonState, source: Source, volume: number, day: number): number | null {
  const { time } = drawdownOf(source, state.tanks.volume[source.tank] as number, volume);
  const sun = sunOn(state, source, day);
  if (sun && time > runningWithin(sun, source.setUp, DAY) * (1 + ROUNDING)) return null;
  return Number.isFinite(time) ? elapsedFor(sun, source.setUp, time) : null;
}

function wayOf(state: SeasonState, source: Source, volume: number, day: number): Way {
  const { id, setUp, roundVolume, roundTime } = source;
  const held = state.tanks.volume[source.tank] as number;
  const reach = Math.max(0, held - source.under);
  if (roundVolume > 0) {
    const trips = Math.ceil(volume / roundVolume - ROUNDING);
    const can = state.input.carries.find((part) => part.id === id)?.canVolume ?? roundVolume;
    return { id, time: trips * roundTime, setUp, trips, cans: Math.ceil(volume / can - ROUNDING), reach };
  }
  return { id, time: pumpingFor(state, source, volume, day), setUp, trips: 0, cans: 0, reach };
}
