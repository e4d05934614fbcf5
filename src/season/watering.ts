// The watering: draws first, then beds in order, each from its sources in order.

import { type Bed, HANDS } from "./beds.ts";
import { UNBOUND, whyEmpty } from "./bounds.ts";
import { book, bookShortDay } from "./crop.ts";
import { noteGift } from "./day-log.ts";
import { type DueDraw, dueOn } from "./draws.ts";
import { gift, give } from "./give.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/**
 * Serves all draws, then all beds that ask.
 *
 * @param state the run [-]
 * @param day of the record [day]
 * @source definition
 */
export function waterAll(state: SeasonState, day: number): void {
  for (let i = 0; i < state.draws.length; i++) serveDraw(state, state.draws[i] as DueDraw, day);
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as Bed;
    if (bed.asked > 0) waterBed(state, bed, day);
  }
}

function serveDraw(state: SeasonState, draw: DueDraw, day: number): void {
  const due = dueOn(draw, day);
  if (due === 0) return;
  const { tanks, slots } = state;
  const held = tanks.volume[draw.tank] as number;
  const given = Math.min(due, Math.max(0, held - (tanks.dead[draw.tank] as number)));
  tanks.volume[draw.tank] = held - given;
  tanks.drawn[draw.tank] = (tanks.drawn[draw.tank] as number) + given;
  state.ledger.waterOut += given;
  count(draw.due, slots, due);
  count(draw.given, slots, given);
  const short = due - given;
  if (short <= due * ROUNDING) {
    draw.daysMet.count++;
    return;
  }
  count(draw.daysShort, slots, 1);
  if (slots.season < state.seasons.length) {
    const bound = whyEmpty(state, draw.tank, short);
    state.drawsUnmet[bound] = (state.drawsUnmet[bound] as number) + short;
  }
}

function waterBed(state: SeasonState, bed: Bed, day: number): void {
  let want = bed.asked;
  let bound = UNBOUND;
  for (let rank = 0; rank < bed.sources.length && want > bed.asked * ROUNDING; rank++) {
    give(state, bed, rank, want, day);
    want -= gift.amount;
    bound = Math.min(bound, gift.bound);
    noteLack(bed, rank, day);
    if (state.log && gift.amount > 0) noteGift(state.log, bed, rank);
  }
  const given = bed.asked - Math.max(0, want);
  bed.given[day] = given;
  count(bed.met, state.slots, given);
  const isShort = want > bed.asked * ROUNDING;
  // What it lacks after a full watering is for want of another one.
  bed.bound = isShort && bound < UNBOUND ? bound : HANDS;
  closeLacks(state, bed, day, isShort);
  if (bed.byCalendar) settleFixed(state, bed, isShort ? want : 0, day);
}

/** Notes what a waterer lacked, and that it gave. */
function noteLack(bed: Bed, rank: number, day: number): void {
  if (bed.lacked[day] === 0 && gift.bound < UNBOUND) bed.lacked[day] = gift.bound + 1;
  if (gift.amount > 0) bed.lastBy[day] = rank + 1;
}

/** Writes down what the day's watering lacked, and whether another way helped. */
function closeLacks(state: SeasonState, bed: Bed, day: number, isShort: boolean): void {
  if (isShort) {
    bed.unfilled[day] = 1;
    if (bed.lacked[day] === 0) bed.lacked[day] = bed.bound + 1;
  }
  if ((bed.lastBy[day] as number) > 1) count(bed.daysHelped, state.slots, 1);
  const lacked = (bed.lacked[day] as number) - 1;
  if (lacked < 0 || state.slots.season >= state.seasons.length) return;
  bed.lackedDays[lacked] = (bed.lackedDays[lacked] as number) + 1;
}

/** A fixed watering is short by what was due and not given. */
function settleFixed(state: SeasonState, bed: Bed, short: number, day: number): void {
  count(bed.due, state.slots, bed.asked);
  if (short === 0) return;
  bookShortDay(state, bed, day);
  book(bed, state.slots.season, short);
}
