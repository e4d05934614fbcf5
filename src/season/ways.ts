// What a watering takes by each of a bed's sources alone: minutes of a pump, or rounds, cans and minutes by hand.

import type { Bed } from "./beds.ts";
import { drawdownOf } from "./run-pump.ts";
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
 */
export function waysOf(state: SeasonState, bed: Bed, volume: number): readonly Way[] {
  return bed.sources.map((source) => wayOf(state, source, volume));
}

function wayOf(state: SeasonState, source: Source, volume: number): Way {
  const { id, setUp, roundVolume, roundTime } = source;
  const held = state.tanks.volume[source.tank] as number;
  const reach = Math.max(0, held - source.under);
  if (roundVolume > 0) {
    const trips = Math.ceil(volume / roundVolume - ROUNDING);
    const can = state.input.carries.find((part) => part.id === id)?.canVolume ?? roundVolume;
    return { id, time: trips * roundTime, setUp, trips, cans: Math.ceil(volume / can - ROUNDING), reach };
  }
  const { time } = drawdownOf(source, held, volume);
  return { id, time: Number.isFinite(time) ? time : null, setUp, trips: 0, cans: 0, reach };
}
