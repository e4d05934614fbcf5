// The day in the root zones: water comes first, then the crop takes what it can.

import { stress } from "../physics/soil-water.ts";
import type { Bed } from "./beds.ts";
import { bookShortDay, refilled } from "./blame.ts";
import { noteDay } from "./day-log.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/** What the last bed's day was: rain taken, used [m], share of its full use [-]. One record, as days are many. */
const grown = { rained: 0, use: 0, share: 1 };

/**
 * Wets, drains and dries every bed.
 *
 * @param state the run, watered and rained on [-]
 * @param day of the record [day]
 * @source FAO-56 Eq. 81, 84, 85, 86, water early in the day as in example 38
 */
export function growAll(state: SeasonState, day: number): void {
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as Bed;
    const total = bed.days.total[day] as number;
    grown.rained = 0;
    grown.use = 0;
    grown.share = 1;
    if (total > 0) grow(state, bed, day, total);
    bed.evening[day] = bed.depletion;
    if (state.log) noteDay(state.log, bed, { date: state.record.firstDay + day, day, ...grown });
  }
}

function grow(state: SeasonState, bed: Bed, day: number, total: number): void {
  const { ledger } = state;
  const given = bed.given[day] as number;
  const watered = Math.min(bed.depletion, given / bed.perDepth);
  const dry = bed.depletion - watered;
  const rained = Math.min(dry, bed.days.rain[day] as number);
  const wet = dry - rained;
  const potential = bed.days.potential[day] as number;
  const share = stress(wet, total, Math.min(total, bed.days.readily[day] as number));
  const use = Math.min(total - wet, potential * share);
  bed.depletion = wet + use;
  grown.rained = rained;
  grown.use = use;
  grown.share = share;
  ledger.waterIn += rained * bed.ground;
  // What did not reach the roots, and what was more than they had room for, is gone with the crop's use.
  ledger.waterOut += given - watered * bed.ground + use * bed.ground;
  if (wet === 0) refilled(bed);
  if (state.dayInSeason[day] === 0) return;
  count(bed.potential, state.slots, potential * bed.ground);
  count(bed.use, state.slots, use * bed.ground);
  if (rained > 0) count(bed.rained, state.slots, rained * bed.ground);
  if (share < 1 && potential > 0 && !bed.byCalendar)
    bookShortDay(state, bed, day, (potential - use) * bed.perDepth);
}
