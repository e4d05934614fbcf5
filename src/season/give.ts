// One source gives one bed what it can: as far as water, pump, charge, hands and the beds before it allow.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { BY_HAND, ENERGY, HELD_BACK, PUMP_TIME, UNBOUND, whyEmpty } from "./bounds.ts";
import { drawdown, drawnWithin, readDrawdown } from "./run-pump.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import { elapsedAt, fullTimeBy } from "./sun-run.ts";
import { count } from "./tally.ts";

/** The last gift: its first bound, amount [m3], time [s] and rounds. One record, so that no watering makes an object. */
export const gift = { bound: UNBOUND, amount: 0, time: 0, trips: 0 };
/** A month without sun. */
const NO_SUN: readonly number[] = [0];
const budget = { time: 0, energy: 0 };

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

function boundBy(bound: number, amount: number): void {
  gift.bound = Math.min(gift.bound, bound);
  gift.amount = Math.min(gift.amount, Math.max(0, amount));
}

/**
 * Gives a bed what one of its sources can; the amount and its first bound are left in `gift`.
 *
 * @param state the run [-]
 * @param bed the bed [-]
 * @param rank place of the source in the bed's list [-]
 * @param want still wanted [m3]
 * @param day of the record [day]
 * @source definition
 */
export function give(state: SeasonState, bed: Bed, rank: number, want: number, day: number): void {
  const source = bed.sources[rank] as Source;
  gift.bound = UNBOUND;
  gift.amount = want;
  gift.time = 0;
  gift.trips = 0;
  const held = state.tanks.volume[source.tank] as number;
  const within = Math.max(0, held - source.under);
  const tiny = want * ROUNDING;
  if (within < want - tiny) boundBy(whyEmpty(state, source.tank, want - within), within);
  else gift.amount = Math.min(want, within);
  if (gift.amount > 0) {
    if (source.roundVolume > 0) boundByRounds(state, source);
    else boundByPump(state, source, held, gift.amount, day);
  }
  const free = leftForThis(state, bed, rank, day);
  if (free < want - tiny) boundBy(HELD_BACK, free);
  if (gift.amount > 0) take(state, source, held, gift.amount, day);
}

function boundByRounds(state: SeasonState, source: Source): void {
  if (source.roundTime <= 0) return;
  // A round that just fits must not fail by rounding.
  const rounds = Math.floor(state.hands.left / source.roundTime + ROUNDING);
  const most = rounds * source.roundVolume;
  if (most < gift.amount * (1 - ROUNDING)) boundBy(BY_HAND, most);
}

/** Full running by the hour, from the hour of watering on, of a pump that today's sun drives; null where it has a battery. */
function sunOn(state: SeasonState, source: Source, day: number): readonly number[] | null {
  if (!source.sun) return null;
  const months = state.wet[day] === 1 ? source.sun.wet : source.sun.dry;
  return months[state.months[day] as number] ?? NO_SUN;
}

/** When a pump is set up for its next watering, after the hour of watering [s]. */
const readyAt = (state: SeasonState, source: Source): number =>
  DAY - (state.pumpLeft[source.pump] as number) + source.setUp;

/** Full running that comes together within a time from now [s]. */
function runningWithin(hours: readonly number[] | null, from: number, time: number): number {
  return hours ? fullTimeBy(hours, from + Math.max(0, time)) - fullTimeBy(hours, from) : time;
}

/** Checks pump time, charge or sun, and hands each against what the water allows. */
function boundByPump(state: SeasonState, source: Source, held: number, most: number, day: number): void {
  readDrawdown(source, held, most);
  const { time, energy } = drawdown;
  const sun = sunOn(state, source, day);
  const from = readyAt(state, source);
  const pumpTime = (state.pumpLeft[source.pump] as number) - source.setUp;
  if (sun) boundBySun(source, held, most, runningWithin(sun, from, DAY));
  // Under the sun night ends the day sooner.
  else if (time > pumpTime) boundBy(PUMP_TIME, within(source, held, most, pumpTime, Infinity));
  const charge = source.battery < 0 ? Infinity : (state.batteries.charge[source.battery] as number);
  if (energy > charge) {
    state.batteries.short[source.battery] = 1;
    boundBy(ENERGY, within(source, held, most, Infinity, charge));
  }
  const spare = state.hands.left - source.setUp;
  const running = source.attended ? time : 0;
  const hands = spare < 0 ? spare : runningWithin(sun, from, spare);
  if (running > hands) boundBy(BY_HAND, spare < 0 ? 0 : within(source, held, most, hands, Infinity));
}

function boundBySun(source: Source, held: number, most: number, running: number): void {
  // Sun that just does must not fail by rounding.
  if (drawdown.time * (1 - ROUNDING) > running)
    boundBy(ENERGY, within(source, held, most, running, Infinity));
}

function within(source: Source, held: number, most: number, time: number, energy: number): number {
  budget.time = time;
  budget.energy = energy;
  return drawnWithin(source, held, most, budget);
}

/** What may be taken so that the rest still covers the held days of the beds before this one [m3]. */
function leftForThis(state: SeasonState, bed: Bed, rank: number, day: number): number {
  let reserve = 0;
  for (const other of bed.before[rank] ?? []) {
    if (other.letGo?.[day] === 1) continue;
    if ((other.days.potential[day] as number) > 0) reserve += other.demand?.peakDayNeed ?? 0;
  }
  reserve *= state.input.holdDays;
  if (reserve === 0) return Infinity;
  const { volume, dead } = state.tanks;
  let left = 0;
  for (const place of state.feeders[(bed.sources[rank] as Source).tank] ?? []) {
    left += Math.max(0, (volume[place] as number) - (dead[place] as number));
  }
  return left - reserve;
}

/** Takes water out of the tank and time and charge out of the budgets. */
function take(state: SeasonState, source: Source, held: number, amount: number, day: number): void {
  const { tanks, slots, batteries } = state;
  tanks.volume[source.tank] = held - amount;
  tanks.drawn[source.tank] = (tanks.drawn[source.tank] as number) + amount;
  count(source.volume, slots, amount);
  if (source.roundVolume > 0) {
    const rounds = Math.ceil(amount / source.roundVolume - ROUNDING);
    state.hands.left -= rounds * source.roundTime;
    gift.trips = rounds;
    gift.time = rounds * source.roundTime;
    count(source.trips, slots, rounds);
    count(source.time, slots, rounds * source.roundTime);
    count(source.hands, slots, rounds * source.roundTime);
    return;
  }
  readDrawdown(source, held, amount);
  const { energy } = drawdown;
  const sun = sunOn(state, source, day);
  const from = readyAt(state, source);
  const time = sun ? elapsedAt(sun, fullTimeBy(sun, from) + drawdown.time) - from : drawdown.time;
  state.pumpLeft[source.pump] = (state.pumpLeft[source.pump] as number) - time - source.setUp;
  gift.time = time;
  const byHand = source.setUp + (source.attended ? time : 0);
  state.hands.left -= byHand;
  count(source.hands, slots, byHand);
  count(source.time, slots, time);
  if (source.battery < 0) return;
  // The bisection that fits a charge may end a hair above it, or leave a hair in it.
  const charge = batteries.charge[source.battery] as number;
  const used = energy > charge * (1 - ROUNDING) ? charge : energy;
  batteries.charge[source.battery] = charge - used;
  batteries.drawn[source.battery] = (batteries.drawn[source.battery] as number) + used;
  count(source.energy, slots, used);
  state.ledger.energyOut += used;
}
