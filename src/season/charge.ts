// The batteries after the day's watering: their lowest, what they lose by themselves, and what sun or house put back.

import type { BatteryPart } from "./input.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/** What one battery took in and lost: one record, so that no day makes an object [J]. */
const today = { entered: 0, lost: 0 };

/**
 * Ends the day of every battery.
 *
 * @param state the run [-]
 * @param day of the record [day]
 * @source conservation of energy: what goes in times the efficiency is stored
 */
export function chargeAll(state: SeasonState, day: number): void {
  const { batteries, ledger } = state;
  const { charge, spare, lowest } = batteries;
  for (let i = 0; i < charge.length; i++) {
    const part = batteries.parts[i] as BatteryPart;
    lowest[i] = Math.min(lowest[i] as number, charge[i] as number);
    if (batteries.short[i] === 1) {
      const tally = batteries.daysShort[i];
      if (tally) count(tally, state.slots, 1);
    }
    today.entered = 0;
    today.lost = 0;
    leak(charge, i, part, part.otherLoads ?? 0);
    leak(spare, i, part, 0);
    put(part.charged === "swapped" ? spare : charge, i, part, offered(state, part, day));
    if (part.charged === "swapped") swap(state, i);
    ledger.energyIn += today.entered;
    ledger.energyOut += today.lost;
    book(state, i, day);
  }
}

/** What a battery loses by itself in a day, and what other loads take of it. */
function leak(held: Float64Array, i: number, part: BatteryPart, others: number): void {
  const before = held[i] as number;
  const lost = Math.min(before, before * part.selfDischarge + others);
  held[i] = (held[i] as number) - lost;
  today.lost += lost;
}

/** Energy that panel or house has for it today [J]. */
function offered(state: SeasonState, part: BatteryPart, day: number): number {
  if (part.charged === "mains") return Infinity;
  if (part.charged === "carried" && (day + 1) % part.carriedEvery !== 0) return 0;
  if (part.leastChargingTemperature !== null) {
    const { highest, lowest } = state.record;
    const air = ((highest?.[day] ?? Number.NaN) + (lowest?.[day] ?? Number.NaN)) / 2;
    if (air < part.leastChargingTemperature) return 0;
  }
  const months = state.wet[day] === 1 ? part.wetCharge : part.dryCharge;
  return months[state.months[day] as number] ?? 0;
}

/** Stores what is offered, as far as there is room; the rest never leaves the panel. */
function put(held: Float64Array, i: number, part: BatteryPart, energy: number): void {
  const before = held[i] as number;
  const stored = Math.min(part.usable - before, energy * part.efficiency);
  if (!(stored > 0)) return;
  held[i] = before + stored;
  const entered = stored / part.efficiency;
  today.entered += entered;
  today.lost += entered - stored;
}

/** In the evening the fuller of two goes to the pump. */
function swap({ batteries: { charge, spare } }: SeasonState, i: number): void {
  const [held, second] = [charge[i] as number, spare[i] as number];
  if (second <= held) return;
  charge[i] = second;
  spare[i] = held;
}

function book({ batteries }: SeasonState, i: number, day: number): void {
  const days = batteries.books[i];
  if (!days) return;
  days.stored[day] = (batteries.charge[i] as number) + (batteries.spare[i] as number);
  days.entered[day] = today.entered;
  days.lost[day] = today.lost;
  days.used[day] = batteries.drawn[i] as number;
}
