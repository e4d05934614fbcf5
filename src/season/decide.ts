// Morning: what each bed asks for and what is due, on last evening's soil unless the bed decides on this morning's.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { GIVEN_UP } from "./bounds.ts";
import { dueOn } from "./draws.ts";
import { notedAsk } from "./noted-watering.ts";
import { mayAsk } from "./schedule.ts";
import { moveRoots, soakOf } from "./soil-step.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import { useUp } from "./used-today.ts";

/**
 * Opens a day: budgets are whole again, and every bed says what it asks for.
 *
 * @param day of the record [day]
 * @source readily available water, FAO-56 Eq. 83
 */
export function decide(state: SeasonState, day: number): void {
  state.slots.season = state.seasonSlots[day] as number;
  state.slots.year = state.yearSlots[day] as number;
  state.hands.left = state.input.minutesPerDay ?? Infinity;
  openBudgets(state);
  useUp(state);
  const dayInSeason = state.dayInSeason[day] as number;
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as Bed;
    moveRoots(bed.days, day, bed.soil);
    if (state.noted?.beds.has(bed.part.id)) bed.asked = notedAsk(bed, day, state.noted);
    else bed.asked = dayInSeason > 0 ? askOf(bed, day, dayInSeason, state.record.firstDay + day) : 0;
  }
  if (state.owed) askOwed(state, state.owed);
}

/** Beds that got some of what they asked for this morning want the rest of it, once. */
function askOwed(state: SeasonState, owed: ReadonlyMap<string, number>): void {
  for (const bed of state.beds) bed.asked = owed.get(bed.part.id) ?? bed.asked;
  state.owed = null;
}

/** By loops: filling a few numbers by the built-in costs more than the rest of the morning. */
function openBudgets({ pumpLeft, batteries, tanks }: SeasonState): void {
  for (let pump = 0; pump < pumpLeft.length; pump++) pumpLeft[pump] = DAY;
  for (let place = 0; place < batteries.short.length; place++) {
    batteries.short[place] = 0;
    batteries.drawn[place] = 0;
  }
  for (let place = 0; place < tanks.drawn.length; place++) {
    tanks.drawn[place] = 0;
    tanks.rained[place] = 0;
  }
}

/**
 * What a bed asks for, by its soil as it is now; on the day of planting, by whatever rule, all that its ground lacks.
 *
 * @param day of the record [day]
 * @param dayInSeason counted from 1 [day]
 * @param date the day [days since 1970-01-01]
 * @returns volume, 0 where it asks for nothing [m3]
 * @source readily available water, FAO-56 Eq. 83
 */
export function askOf(bed: Bed, day: number, dayInSeason: number, date: number): number {
  if (bed.days.total[day] === 0) return 0;
  if (bed.letGo?.[day] === 1) {
    // Its own rule lets it go: no water is held back for another bed.
    bed.bound = GIVEN_UP;
    bed.dryTank = -1;
    return 0;
  }
  const soak = bed.days.planted[day] === 1 ? wantedOf(bed, day, soakOf(bed.days, day, bed.soil)) : 0;
  return Math.max(soak * bed.perDepth, ruleAsks(bed, day, dayInSeason, date));
}

function ruleAsks(bed: Bed, day: number, dayInSeason: number, date: number): number {
  const { rule } = bed.part;
  if (!mayAsk(rule, date, dayInSeason)) return 0;
  if (rule.kind === "fixed") return rule.volume;
  const lack = wantedOf(bed, day, bed.soil.depletion);
  if (rule.kind === "weekdays") return rule.volume ?? lack * bed.perDepth;
  return lack >= (bed.days.trigger[day] as number) ? lack * bed.perDepth : 0;
}

/**
 * Water short when the watering is decided [m]: by last evening's soil, or with what fell by this morning in it, or is to fall
 * today by one's own forecast.
 */
function wantedOf(bed: Bed, day: number, lack: number): number {
  if (bed.part.decidesOn === "evening" && bed.foretold?.[day] !== 1) return lack;
  return Math.max(0, lack - (bed.days.rain[day] as number));
}

/**
 * The most that can be drawn straight from each tank today, with its sign turned: room beyond the brim under `use_first`.
 *
 * @param state the run, its beds having asked
 * @param day of the record [day]
 */
export function readLeeway(state: SeasonState, day: number): void {
  const { leeway } = state;
  leeway.fill(0);
  for (const draw of state.draws)
    leeway[draw.tank] = (leeway[draw.tank] as number) - dueOn(draw, day + state.counted);
  for (const bed of state.beds) {
    if (bed.asked === 0) continue;
    for (const { tank } of bed.sources as readonly Source[])
      leeway[tank] = (leeway[tank] as number) - bed.asked;
  }
}
