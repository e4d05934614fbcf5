// What waterings that were noted took of their day: one's own time, and the pumps'.

import { drawdownOf } from "./run-pump.ts";
import { handsFor, type Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import type { Used } from "./used.ts";

/** Rounds that just fit must not be one more by rounding. */
const ROUNDING = 1e-9;

/**
 * Time that a watering by a source took [s].
 *
 * @param held water in its tank, and given by it [m3]
 * @returns 0 of a pump that by its figures lifts none
 * @validity a pump under the sun alone is taken to run in full
 */
function timeOf(source: Source, held: number, amount: number): number {
  if (source.roundVolume > 0) return Math.ceil(amount / source.roundVolume - ROUNDING) * source.roundTime;
  const { time } = drawdownOf(source, Math.max(held, source.under + amount), amount);
  return time < Infinity ? time : 0;
}

/** Takes the time of a noted watering out of its day. */
export function useTime(state: SeasonState, used: Used, source: Source, held: number, amount: number): void {
  const time = timeOf(source, held, amount);
  const hands = handsFor(source, time);
  used.hands += hands;
  used.running[source.id] = (used.running[source.id] ?? 0) + time;
  takeOut(state, source, { time, hands });
}

function takeOut(
  { hands: own, pumpLeft }: SeasonState,
  { pump, setUp }: Source,
  { time, hands }: { readonly time: number; readonly hands: number },
): void {
  own.left = Math.max(0, own.left - hands);
  if (pump >= 0) pumpLeft[pump] = Math.max(0, (pumpLeft[pump] as number) - time - setUp);
}

/** Takes what was used of a day already out of what it still has, once. */
export function useUp(state: SeasonState): void {
  const { used } = state;
  if (!used) return;
  state.used = null;
  state.hands.left = Math.max(0, state.hands.left - used.hands);
  for (const source of state.sources) {
    const time = used.running[source.id];
    if (time !== undefined) takeOut(state, source, { time, hands: 0 });
  }
}
