// One source serves one bed as far as water, pump, charge, hands and the beds before it allow.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { HELD_BACK, type Lacks } from "./bounds.ts";
import type { SunOnDays } from "./input.ts";
import { addPumpLacks, addRoundLacks, addWaterLacks, isWithin, type Means } from "./lacks.ts";
import { drawdownOf, drawnWithin } from "./run-pump.ts";
import { handsFor, type Served, type Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import { elapsedAt, fullTimeBy } from "./sun-run.ts";
import type { Supply } from "./supply.ts";
import { count } from "./tally.ts";

/** What is asked of a source: still wanted, and given by it before today [m3]. */
export type Request = {
  readonly rank: number;
  readonly day: number;
  readonly want: number;
  readonly before: number;
};

const NOTHING: Served = { amount: 0, time: 0, trips: 0 };
/** A month without sun. */
const NO_SUN: readonly number[] = [0];
/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/**
 * Serves a bed from one of its sources.
 *
 * @param request place of the source in the bed's list, the day of the record, and what is wanted [m3]
 * @param lacks gets what each allowance alone would have kept from it, where it is short [m3]
 */
export function serve(state: SeasonState, bed: Bed, request: Request, lacks: Lacks): Served {
  const { rank, want, day } = request;
  const source = bed.sources[rank] as Source;
  const held = state.tanks.volume[source.tank] as number;
  const free = Math.max(0, leftForThis(state, bed, rank, day));
  const most = Math.min(want, free, Math.max(0, held - source.under));
  const means = source.roundVolume > 0 ? null : meansOf(state, source, day);
  const amount = means ? byPump(state, source, { held, most, means }) : byRounds(state, source, most);
  if (amount < want * (1 - ROUNDING)) {
    addWaterLacks(state, source, request, lacks);
    bed.othersFirst = isOthersFirst(state, bed, request);
    if (means) addPumpLacks(state, source, { want, held, means }, lacks);
    else addRoundLacks(state.hands.left, source, want, lacks);
    if (free < want) lacks[HELD_BACK] = (lacks[HELD_BACK] as number) + want - free;
  }
  return amount > 0 ? take(state, source, { held, amount, day }) : NOTHING;
}

/** Whether what others drew from its tank before it keeps more from a bed than does the tank's size. */
function isOthersFirst({ supply }: SeasonState, bed: Bed, { rank, before }: Request): boolean {
  const { tank, under } = bed.sources[rank] as Source;
  const tankful = (supply[tank] as Supply).full - under;
  return (bed.othersDrew[rank] as number) > Math.max(0, bed.asked - (before > 0 ? 2 : 1) * tankful);
}

/** As much of an amount as the rounds carry for which there is time [m3]. */
function byRounds(state: SeasonState, source: Source, most: number): number {
  if (source.roundTime <= 0) return most;
  // A round that just fits must not fail by rounding.
  const rounds = Math.floor(state.hands.left / source.roundTime + ROUNDING);
  const carried = rounds * source.roundVolume;
  return carried < most * (1 - ROUNDING) ? carried : most;
}

/** Full running by the hour, from the hour of watering on, of a pump that today's sun drives; null where it has a battery. */
export function sunOn(state: SeasonState, source: Source, day: number): readonly number[] | null {
  return source.sun ? hoursOn(state, source.sun, day) : null;
}

function hoursOn(state: SeasonState, { dry, wet }: SunOnDays, day: number): readonly number[] {
  const months = state.wet[day] === 1 ? wet : dry;
  return months[state.months[day] as number] ?? NO_SUN;
}

/** When a pump is set up for its next watering, after the hour of watering [s]. */
const readyAt = (state: SeasonState, source: Source): number =>
  DAY - (state.pumpLeft[source.pump] as number) + source.setUp;

/** Full running that comes together within a time from now [s]. */
export function runningWithin(hours: readonly number[] | null, from: number, time: number): number {
  return hours ? fullTimeBy(hours, from + Math.max(0, time)) - fullTimeBy(hours, from) : time;
}

/** How long a pump is at it from a time after the hour of watering on, for so much running in full [s]. */
export const elapsedFor = (sun: readonly number[] | null, from: number, running: number): number =>
  sun ? elapsedAt(sun, fullTimeBy(sun, from) + running) - from : running;

/** How long a pump may run for want of time, sun and hands, and the charge behind it. */
function meansOf(state: SeasonState, source: Source, day: number): Means {
  const sun = sunOn(state, source, day);
  const from = readyAt(state, source);
  const spare = state.hands.left - source.setUp;
  const held = source.attended && spare < Infinity;
  return {
    // Under the sun night ends the day sooner.
    time: sun ? Infinity : (state.pumpLeft[source.pump] as number) - source.setUp,
    sun: sun ? runningWithin(sun, from, DAY) : Infinity,
    // Beds before it kept a weak sun's pump for longer: of a big panel's day they would have left nearly all.
    light: source.sun ? runningWithin(hoursOn(state, source.sun.bright, day), source.setUp, DAY) : Infinity,
    charge: source.battery < 0 ? Infinity : (state.batteries.charge[source.battery] as number),
    hands: spare < 0 ? -1 : held ? runningWithin(sun, from, spare) : Infinity,
  };
}

type Pumping = { readonly held: number; readonly most: number; readonly means: Means };

/** As much of an amount as the pump's means allow [m3]. */
function byPump(state: SeasonState, source: Source, { held, most, means }: Pumping): number {
  if (most <= 0 || means.hands < 0) return 0;
  const { time, energy } = drawdownOf(source, held, most);
  if (energy > means.charge) state.batteries.short[source.battery] = 1;
  const running = Math.min(means.time, means.sun, means.hands);
  if (isWithin(time, running) && energy <= means.charge) return most;
  return drawnWithin(source, held, most, { time: running, energy: means.charge });
}

/** What may be taken so that the rest still covers the held days of the beds before this one [m3]. */
function leftForThis(state: SeasonState, bed: Bed, rank: number, day: number): number {
  const { hold } = bed;
  if (!hold) return leftOver(state, bed, rank, reserveOf(bed.before[rank], day) * state.input.holdDays);
  if (hold.refused > 0) return 0;
  if (hold.served > 0) return Infinity;
  const free = leftOver(state, bed, rank, hold.kept[rank]?.[day] ?? 0);
  if (hold.above === null) return free;
  return free > 0 && free >= bed.asked * hold.above ? Infinity : 0;
}

/** What beds need on a peak day, of those that stand and have not been let go [m3]. */
function reserveOf(beds: readonly Bed[] | undefined, day: number): number {
  let reserve = 0;
  for (const other of beds ?? []) {
    if (other.letGo?.[day] === 1) continue;
    if ((other.days.potential[day] as number) > 0) reserve += other.demand?.peakDayNeed ?? 0;
  }
  return reserve;
}

/** What the water behind a bed's source holds beyond a reserve [m3]. */
function leftOver(state: SeasonState, bed: Bed, rank: number, reserve: number): number {
  if (reserve === 0) return Infinity;
  const { volume, dead } = state.tanks;
  let left = 0;
  for (const place of state.feeders[(bed.sources[rank] as Source).tank] ?? []) {
    left += Math.max(0, (volume[place] as number) - (dead[place] as number));
  }
  return left - reserve;
}

type Taking = { readonly held: number; readonly amount: number; readonly day: number };

/** Takes water out of the tank and time and charge out of the budgets. */
function take(state: SeasonState, source: Source, { held, amount, day }: Taking): Served {
  const { tanks, slots } = state;
  tanks.volume[source.tank] = held - amount;
  tanks.drawn[source.tank] = (tanks.drawn[source.tank] as number) + amount;
  count(source.volume, slots, amount);
  return source.roundVolume > 0 ? carry(state, source, amount) : pump(state, source, { held, amount, day });
}

function carry(state: SeasonState, source: Source, amount: number): Served {
  const { slots, hands } = state;
  const trips = Math.ceil(amount / source.roundVolume - ROUNDING);
  const time = trips * source.roundTime;
  hands.left -= time;
  count(source.trips, slots, trips);
  count(source.time, slots, time);
  count(source.hands, slots, time);
  return { amount, time, trips };
}

function pump(state: SeasonState, source: Source, { held, amount, day }: Taking): Served {
  const { slots } = state;
  const { time: running, energy } = drawdownOf(source, held, amount);
  const sun = sunOn(state, source, day);
  const from = readyAt(state, source);
  const time = elapsedFor(sun, from, running);
  state.pumpLeft[source.pump] = (state.pumpLeft[source.pump] as number) - time - source.setUp;
  const byHand = handsFor(source, time);
  state.hands.left -= byHand;
  count(source.hands, slots, byHand);
  count(source.time, slots, time);
  discharge(state, source, energy);
  return { amount, time, trips: 0 };
}

/** Takes energy out of the battery behind a source, at most all its charge [J]. */
export function discharge(state: SeasonState, source: Source, energy: number): void {
  if (source.battery < 0) return;
  const { batteries, ledger, slots } = state;
  // The bisection that fits a charge may end a hair above it, or leave a hair in it.
  const charge = batteries.charge[source.battery] as number;
  const used = energy > charge * (1 - ROUNDING) ? charge : energy;
  batteries.charge[source.battery] = charge - used;
  batteries.drawn[source.battery] = (batteries.drawn[source.battery] as number) + used;
  count(source.energy, slots, used);
  ledger.energyOut += used;
}
