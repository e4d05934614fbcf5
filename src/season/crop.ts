// The day in the beds' ground: water comes first, then the crop takes what it can.

import type { Bed } from "./beds.ts";
import { bookShortDay, markShortDay, refilled } from "./blame.ts";
import { noteDay } from "./day-log.ts";
import { isThirsty, passDay } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/**
 * Wets, drains and dries every bed.
 *
 * @param state the run, watered and rained on
 * @param day of the record [day]
 * @source passDay
 */
export function growAll(state: SeasonState, day: number): void {
  for (let i = 0; i < state.beds.length; i++) grow(state, state.beds[i] as Bed, day);
}

function grow(state: SeasonState, bed: Bed, day: number): void {
  const { ledger } = state;
  const { soil, came } = bed;
  const before = soil.depletion + soil.rest;
  const given = bed.given[day] as number;
  passDay(bed.days, day, soil, given / bed.perDepth, came);
  ledger.waterIn += came.rained * bed.ground;
  // What did not reach the roots, and what was more than the ground had room for, is gone with the crop's use.
  ledger.waterOut += given - (came.kept - came.use - came.dried) * bed.ground;
  if (state.dayInSeason[day] === 1) bed.lackBefore = 0;
  if ((bed.days.total[day] as number) > 0) {
    if (state.quiet) bookQuietly(state, bed, day);
    else bookDay(state, bed, day, before);
  }
  bed.evening[day] = soil.depletion;
  if (state.log)
    noteDay(state.log, bed, {
      date: state.record.firstDay + day,
      turn: state.turns.indexOf(bed),
      day,
      ...came,
    });
}

function bookQuietly(state: SeasonState, bed: Bed, day: number): void {
  const isShort = isThirsty(bed.days.potential[day] as number, bed.came.use);
  if (isShort && state.dayInSeason[day] !== 0) markShortDay(state, bed, day);
}

/** Books a bed's day; `before` is what its ground lacked in the morning [m]. */
function bookDay(state: SeasonState, bed: Bed, day: number, before: number): void {
  const { slots } = state;
  const { came } = bed;
  const potential = bed.days.potential[day] as number;
  const short = isThirsty(potential, came.use);
  if (bed.soil.depletion <= came.use) refilled(bed);
  if (state.dayInSeason[day] === 0) {
    if (potential > 0) count(bed.outside, slots, 1);
    return;
  }
  bookStart(state, bed, day, before);
  count(bed.potential, slots, potential * bed.ground);
  // Thirst of less than a thousandth is rounding: a bed that is never short uses all it could.
  count(bed.use, slots, (short ? came.use : potential) * bed.ground);
  if (came.kept > 0) count(bed.got, slots, came.kept * bed.perDepth);
  if (came.rained > 0) count(bed.rained, slots, came.rained * bed.ground);
  bed.lackBefore = bed.soil.depletion + bed.soil.rest;
  if (short) bookShortDay(state, bed, day, (potential - came.use) * bed.perDepth);
}

/** What the ground lacked when something began to stand on it in the season, beyond what the crop before it left short. */
function bookStart(state: SeasonState, bed: Bed, day: number, before: number): void {
  const goesOn = day > 0 && state.dayInSeason[day] !== 1 && (bed.days.total[day - 1] as number) > 0;
  if (goesOn) return;
  count(bed.owed, state.slots, (before - bed.lackBefore) * bed.ground);
}
