// The batteries after the day's watering: their lowest, what they lose by themselves, and what sun or house put back.

import { isCarried } from "./by-hand.ts";
import type { BatteryPart } from "./input.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/**
 * Ends the day of every battery.
 *
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
    const leaked = leak(charge, i, part, part.otherLoads ?? 0) + leak(spare, i, part, 0);
    const stored = put(part.charged === "swapped" ? spare : charge, i, part, offered(state, part, day));
    const entered = stored > 0 ? stored / part.efficiency : 0;
    const lost = leaked + (entered - stored);
    if (part.charged === "swapped") swap(state, i);
    ledger.energyIn += entered;
    ledger.energyOut += lost;
    book(state, i, day, { entered, lost });
  }
}

/** Takes out what a battery loses by itself in a day and what other loads take of it; returns it [J]. */
function leak(held: Float64Array, i: number, part: BatteryPart, others: number): number {
  const before = held[i] as number;
  const lost = Math.min(before, before * part.selfDischarge + others);
  held[i] = (held[i] as number) - lost;
  return lost;
}

/** Energy that panel or house has for it today [J]. */
function offered(state: SeasonState, part: BatteryPart, day: number): number {
  if (part.charged === "mains") return Infinity;
  if (part.charged === "carried" && !isCarried(state, part, day)) return 0;
  if (part.leastChargingTemperature !== null) {
    const { highest, lowest } = state.record;
    const air = ((highest?.[day] ?? Number.NaN) + (lowest?.[day] ?? Number.NaN)) / 2;
    if (air < part.leastChargingTemperature) return 0;
  }
  const months = state.wet[day] === 1 ? part.wetCharge : part.dryCharge;
  return months[state.months[day] as number] ?? 0;
}

/** Stores what is offered, as far as there is room; the rest never leaves the panel. Returns what is stored [J]. */
function put(held: Float64Array, i: number, part: BatteryPart, energy: number): number {
  const before = held[i] as number;
  const stored = Math.min(part.usable - before, energy * part.efficiency);
  if (!(stored > 0)) return 0;
  held[i] = before + stored;
  return stored;
}

/** In the evening the fuller of two goes to the pump. */
function swap({ batteries: { charge, spare } }: SeasonState, i: number): void {
  const [held, second] = [charge[i] as number, spare[i] as number];
  if (second <= held) return;
  charge[i] = second;
  spare[i] = held;
}

type Today = { readonly entered: number; readonly lost: number };

function book({ batteries }: SeasonState, i: number, day: number, { entered, lost }: Today): void {
  const days = batteries.books[i];
  if (!days) return;
  days.stored[day] = (batteries.charge[i] as number) + (batteries.spare[i] as number);
  days.entered[day] = entered;
  days.lost[day] = lost;
  days.used[day] = batteries.drawn[i] as number;
}
