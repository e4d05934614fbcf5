// Roof water and overflow find room, or not: by the storage rule, upstream tanks first.

import { readLeeway } from "./decide.ts";
import type { Machine } from "./machine.ts";
import { count } from "./tally.ts";
import { settleOverflow, type Tanks } from "./tanks.ts";

/**
 * Under `use_first`, lets the day's roof water in before it is drawn; what surely finds no room flows on at once.
 *
 * @param machine the run, its beds having asked [-]
 * @param day of the record [day]
 * @source Jenkins et al. 1978: Y = min(D, V + Q), then V = min(V + Q - Y, S)
 */
export function storeBefore(machine: Machine, day: number): void {
  if (machine.plan.storageRule !== "use_first") return;
  if (!letRoofWaterIn(machine, day)) return;
  readLeeway(machine, day);
  settleOverflow(machine.tanks, machine.leeway);
}

/**
 * After the watering: the day's roof water under `spill_first`, then what rains on open tanks.
 *
 * @param machine the run, watered [-]
 * @param day of the record [day]
 * @source Jenkins et al. 1978: V = min(V + Q - Y, S - Y), Y = min(D, V)
 */
export function storeAfter(machine: Machine, day: number): void {
  const { tanks } = machine;
  if (machine.plan.storageRule === "use_first") settleOverflow(tanks, null);
  else if (letRoofWaterIn(machine, day)) settleOverflow(tanks, tanks.drawn);
  const rain = machine.arriving[day] as number;
  if (rain > 0) rainOnOpenTanks(machine, rain);
}

/** Sends the day's roof water on its way; whether there is any. */
function letRoofWaterIn(machine: Machine, day: number): boolean {
  const { arriving } = machine.tanks;
  let sum = 0;
  for (let place = 0; place < arriving.length; place++) {
    const water = machine.roofWater[place];
    if (!water) continue;
    const volume = water[day] as number;
    arriving[place] = (arriving[place] as number) + volume;
    sum += volume;
  }
  machine.ledger.waterIn += sum;
  return sum > 0;
}

/** Rain on open water counts as far as there is room; the rest never was in the tank. */
function rainOnOpenTanks(machine: Machine, rain: number): void {
  const { volume, capacity, openArea } = machine.tanks;
  for (let place = 0; place < volume.length; place++) {
    if (openArea[place] === 0) continue;
    const room = Math.max(0, (capacity[place] as number) - (volume[place] as number));
    const caught = Math.min(room, rain * (openArea[place] as number));
    volume[place] = (volume[place] as number) + caught;
    machine.ledger.waterIn += caught;
  }
}

/**
 * Books what each tank lost to the ground and passed on today.
 *
 * @param machine the run [-]
 * @source definition
 */
export function bookSpill(machine: Machine): void {
  const { spilled, passedOn }: Tanks = machine.tanks;
  for (let place = 0; place < spilled.length; place++) {
    const lost = spilled[place] as number;
    if (lost > 0) {
      spilled[place] = 0;
      machine.ledger.waterOut += lost;
      machine.spilledSince[place] = (machine.spilledSince[place] as number) + lost;
      const tally = machine.spill[place];
      if (tally) count(tally, machine.slots, lost);
    }
    const passed = passedOn[place] as number;
    if (passed > 0) {
      passedOn[place] = 0;
      machine.passedOn[place] = (machine.passedOn[place] as number) + passed;
    }
  }
}
