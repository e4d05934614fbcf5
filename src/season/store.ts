// Roof water and overflow find room, or not: by the storage rule, upstream tanks first.

import { readLeeway } from "./decide.ts";
import { noteGone, overflowPlace } from "./gone.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";
import { settleOverflow, type Tanks } from "./tanks.ts";

/**
 * Under `use_first`, lets the day's roof water in before it is drawn; what surely finds no room flows on at once.
 *
 * @param state the run, its beds having asked
 * @param day of the record [day]
 * @source Jenkins et al. 1978: Y = min(D, V + Q), then V = min(V + Q - Y, S)
 */
export function storeBefore(state: SeasonState, day: number): void {
  if (state.input.storageRule !== "use_first") return;
  if (!letRoofWaterIn(state, day)) return;
  readLeeway(state, day);
  settleOverflow(state.tanks, state.leeway);
}

/**
 * After the watering: the day's roof water under `spill_first`, then what rains on open tanks.
 *
 * @param day of the record [day]
 * @source Jenkins et al. 1978: V = min(V + Q - Y, S - Y), Y = min(D, V)
 */
export function storeAfter(state: SeasonState, day: number): void {
  const { tanks } = state;
  if (state.input.storageRule === "use_first") settleOverflow(tanks, null);
  else if (letRoofWaterIn(state, day)) settleOverflow(tanks, tanks.drawn);
  const rain = state.arriving[day] as number;
  if (rain > 0) rainOnOpenTanks(state, rain);
}

/** Sends the day's roof water on its way; whether there is any. */
function letRoofWaterIn(state: SeasonState, day: number): boolean {
  const { arriving } = state.tanks;
  let sum = 0;
  for (let place = 0; place < arriving.length; place++) {
    const water = state.roofWater[place];
    if (!water) continue;
    const volume = water[day] as number;
    arriving[place] = (arriving[place] as number) + volume;
    sum += volume;
  }
  state.ledger.waterIn += sum;
  return sum > 0;
}

/** Rain on open water counts as far as there is room; the rest never was in the tank. */
function rainOnOpenTanks(state: SeasonState, rain: number): void {
  const { volume, capacity, openArea } = state.tanks;
  for (let place = 0; place < volume.length; place++) {
    if (openArea[place] === 0) continue;
    const room = Math.max(0, (capacity[place] as number) - (volume[place] as number));
    const caught = Math.min(room, rain * (openArea[place] as number));
    volume[place] = (volume[place] as number) + caught;
    state.tanks.rained[place] = caught;
    state.ledger.waterIn += caught;
  }
}

/**
 * Books what each tank lost to the ground and passed on today.
 *
 * @param day of the record [day]
 */
export function bookSpill(state: SeasonState, day: number): void {
  const { spilled, passedOn }: Tanks = state.tanks;
  for (let place = 0; place < spilled.length; place++) {
    const lost = spilled[place] as number;
    noteGone(state.gone.spilled, place, day + state.counted, lost);
    if (lost > 0) {
      spilled[place] = 0;
      state.ledger.waterOut += lost;
      const tally = state.spill[place];
      if (tally) count(tally, state.slots, lost);
    }
    const passed = passedOn[place] as number;
    noteGone(state.gone.spilled, overflowPlace(spilled.length, place), day + state.counted, passed);
    if (passed > 0) {
      passedOn[place] = 0;
      state.passedOn[place] = (state.passedOn[place] as number) + passed;
    }
  }
}
