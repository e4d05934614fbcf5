// The watering: draws first, then beds in their turn, each from its sources in order; and a second tankful before dark.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { boundOf, refilled, rememberShort } from "./blame.ts";
import { clearLacks, REFILL, TANKFUL, UNBOUND, WATER } from "./bounds.ts";
import { noteServed } from "./day-log.ts";
import { drawRest, wantsRest, waterNoted } from "./noted-watering.ts";
import { serve } from "./serve.ts";
import { serveDraw } from "./serve-draw.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";
import { inTurn } from "./turns.ts";

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/**
 * Serves all draws, then all beds that ask.
 *
 * @param day of the record [day]
 */
export function waterAll(state: SeasonState, day: number): void {
  for (const draw of state.draws) serveDraw(state, draw, day);
  if (state.noted) waterNoted(state, day);
  state.turns = inTurn(state, day);
  for (let i = 0; i < state.turns.length; i++) {
    const bed = state.turns[i] as Bed;
    if (bed.asked > 0) waterBed(state, bed, day);
  }
}

const isShort = (bed: Bed, given: number): boolean => bed.asked - given > bed.asked * ROUNDING;

function waterBed(state: SeasonState, bed: Bed, day: number): void {
  clearLacks(bed.lacks);
  bed.dryTank = -1;
  for (let rank = 0; rank < bed.sources.length; rank++)
    bed.othersDrew[rank] = state.tanks.drawn[(bed.sources[rank] as Source).tank] as number;
  let want = bed.asked;
  for (let rank = 0; rank < bed.sources.length && want > bed.asked * ROUNDING; rank++) {
    const before = bed.lacks[WATER] as number;
    const served = serve(state, bed, { rank, want, day, before: 0 }, bed.lacks);
    want -= served.amount;
    const { tank } = bed.sources[rank] as Source;
    if ((bed.lacks[WATER] as number) > before) bed.dryTank = tank;
    if (bed.lacked[day] === 0 && !state.quiet) bed.lacked[day] = noted(boundNow(state, bed, day));
    bed.servedBy[rank] = served.amount;
    if (served.amount > 0) bed.lastBy[day] = rank + 1;
    if (state.log && served.amount > 0) noteServed(state.log, bed, { ...served, rank, wait: 0 });
  }
  bed.given[day] = bed.asked - Math.max(0, want);
}

/** A bound as it is kept by the day: its place and one more; 0: nothing. */
const noted = (bound: number): number => (bound === UNBOUND ? 0 : bound + 1);

/** The bound of what a bed lacks so far today: it can go without no more than its crops use in a day. */
const boundNow = (state: SeasonState, bed: Bed, day: number): number =>
  boundOf(state, bed.lacks, bed.dryTank, (bed.days.potential[day] as number) * bed.perDepth);

/**
 * Whether a bed wants more than the tankful that it got, of a tank that lines fill.
 *
 * @param day of the record [day]
 * @returns true where a second tankful would help
 */
export function wantsSecond(state: SeasonState, day: number): boolean {
  if (wantsRest(state)) return true;
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as Bed;
    if (bed.asked === 0 || !isShort(bed, bed.given[day] as number)) continue;
    if ((bed.lacks[TANKFUL] as number) > 0 || (bed.lacks[REFILL] as number) > 0) return true;
  }
  return false;
}

/**
 * Serves a second tankful to every bed whose first was too little, from tanks that are full again.
 *
 * @param state the run, its lines having run since the watering
 * @param day of the record [day]
 * @param dark time from the watering for which its lines have run [s]
 */
export function waterAgain(state: SeasonState, day: number, dark: number): void {
  drawRest(state, (tank) => refilledAt(state, tank) < dark);
  for (let i = 0; i < state.turns.length; i++) {
    const bed = state.turns[i] as Bed;
    if (bed.asked === 0 || !isShort(bed, bed.given[day] as number)) continue;
    const lacks = bed.lacks;
    if (lacks[TANKFUL] === 0 && lacks[REFILL] === 0) continue;
    secondTankful(state, bed, day, dark);
  }
}

/** When the lines into a tank were done, after the watering [s]; Infinity where none fills it. */
function refilledAt({ pipes }: SeasonState, tank: number): number {
  let last = -1;
  for (const { to, doneAt } of pipes.lines)
    if (to?.place === tank && !to.isTee) last = Math.max(last, doneAt);
  return last < 0 ? Infinity : last;
}

function secondTankful(state: SeasonState, bed: Bed, day: number, dark: number): void {
  let want = bed.asked - (bed.given[day] as number);
  let isCleared = false;
  for (let rank = 0; rank < bed.sources.length && want > bed.asked * ROUNDING; rank++) {
    const source = bed.sources[rank] as Source;
    const since = refilledAt(state, source.tank);
    if (since >= dark) continue;
    if (!isCleared) clearLacks(bed.lacks);
    isCleared = true;
    // A pump goes on where its tank is full again, with what is left of the day.
    if (source.pump >= 0)
      state.pumpLeft[source.pump] = Math.min(state.pumpLeft[source.pump] as number, DAY - since);
    const request = { rank, want, day, before: bed.servedBy[rank] as number };
    const served = serve(state, bed, request, bed.lacks);
    want -= served.amount;
    if (served.amount > 0) bed.lastBy[day] = Math.max(bed.lastBy[day] as number, rank + 1);
    if (state.log && served.amount > 0) noteServed(state.log, bed, { ...served, rank, wait: since });
  }
  bed.given[day] = bed.asked - Math.max(0, want);
}

/**
 * Closes the day's waterings: what was given, and what a short one lacked.
 *
 * @param state the run, after the last watering of the day
 * @param day of the record [day]
 */
export function closeWaterings(state: SeasonState, day: number): void {
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as Bed;
    if (bed.asked > 0) closeBed(state, bed, day);
  }
}

function closeBed(state: SeasonState, bed: Bed, day: number): void {
  const given = bed.given[day] as number;
  const short = isShort(bed, given);
  count(bed.met, state.slots, given);
  if (short) rememberShort(bed, boundNow(state, bed, day), bed.dryTank);
  else refilled(bed);
  closeNotes(state, bed, day, short);
  if (bed.byCalendar) count(bed.due, state.slots, bed.asked);
}

/** Writes down what the day's watering lacked, and whether another way helped. */
function closeNotes(state: SeasonState, bed: Bed, day: number, short: boolean): void {
  const by = bed.lastBy[day] as number;
  if (short) {
    bed.unfilled[day] = 1;
    if (bed.lacked[day] === 0) bed.lacked[day] = noted(bed.bound);
  } else if (by <= 1) bed.lacked[day] = 0;
  if (by > 1) count(bed.daysHelped, state.slots, 1);
  const lacked = (bed.lacked[day] as number) - 1;
  if (lacked < 0 || state.slots.season >= state.seasons.length) return;
  bed.lackedDays[lacked] = (bed.lackedDays[lacked] as number) + 1;
}
