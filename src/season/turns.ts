// Whose turn it is: beds go by their priority, but on a day whose time does not do for all of them those to be planted
// come first (common practice, no source).

import type { Bed } from "./beds.ts";
import { drawdownOf } from "./run-pump.ts";
import { handsFor, type Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";

/** A round that just fits must not count as one more for a rounding in the last bit. */
const ROUNDING = 1e-9;

/**
 * The beds of a day in the order in which they are watered.
 *
 * @param state the run, its beds having asked and its draws served
 * @param day of the record [day]
 * @validity whether the time does is told from what each bed asks for by the first of its means, as the tanks stand
 */
export function inTurn(state: SeasonState, day: number): readonly Bed[] {
  const { beds, hands } = state;
  if (hands.left === Infinity || !isDue(beds, day) || !isTooMuch(state)) return beds;
  const due = beds.filter((bed) => bed.days.toPlant[day] === 1);
  return [...due, ...beds.filter((bed) => bed.days.toPlant[day] !== 1)];
}

/** Whether a bed that is soon planted asks, and one that is not asks before it. */
function isDue(beds: readonly Bed[], day: number): boolean {
  let isBehind = false;
  for (let place = 0; place < beds.length; place++) {
    const { asked, days } = beds[place] as Bed;
    if (asked === 0) continue;
    if (days.toPlant[day] !== 1) isBehind = true;
    else if (isBehind) return true;
  }
  return false;
}

function isTooMuch(state: SeasonState): boolean {
  let time = 0;
  for (const { asked, sources } of state.beds) {
    const [source] = sources;
    if (asked > 0 && source) time += timeOf(state, source, asked);
  }
  return time > state.hands.left * (1 + ROUNDING);
}

/** One's own time for so much of what its tank holds [s]. */
function timeOf({ tanks }: SeasonState, source: Source, asked: number): number {
  const held = tanks.volume[source.tank] as number;
  const volume = Math.min(asked, Math.max(0, held - source.under));
  if (volume === 0) return 0;
  if (source.roundVolume > 0) return Math.ceil(volume / source.roundVolume - ROUNDING) * source.roundTime;
  return handsFor(source, drawdownOf(source, held, volume).time);
}
