// One season run: the plan's whole network over the whole record, day by day, in one balance.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { isoDate } from "../units/calendar.ts";
import { closeDay, openAccount } from "./account.ts";
import type { SeasonAnswer, SeasonFailure } from "./answer.ts";
import { firstGap } from "./arriving-rain.ts";
import { chargeAll } from "./charge.ts";
import { growAll } from "./crop.ts";
import { dailyEto } from "./daily-eto.ts";
import { decide } from "./decide.ts";
import { runGravity, STEPPING, type Stepping } from "./gravity.ts";
import { loseAll } from "./losses.ts";
import { type Machine, readyMachine } from "./machine.ts";
import type { SeasonPlan } from "./plan.ts";
import { wholeSeasons } from "./spans.ts";
import { bookSpill, storeAfter, storeBefore } from "./store.ts";
import { summaryOf } from "./summary.ts";
import { count } from "./tally.ts";
import { settleOverflow } from "./tanks.ts";
import { waterAll } from "./water.ts";

/**
 * Runs a season's plan over a record.
 *
 * @param plan units at the type's fields
 * @param record the daily record [-]
 * @param stepping how gravity's steps are chosen; left out in use [-]
 * @returns the answer, or why there is none and at which day [days since 1970-01-01]
 * @source definition; each step names its own
 */
export function runSeason(
  plan: SeasonPlan,
  record: DailyRecord,
  stepping: Stepping = STEPPING,
): SeasonAnswer | SeasonFailure {
  const made = prepareSeason(plan, record);
  if ("failed" in made) return made;
  try {
    runDays(made, stepping);
    return summaryOf(made);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

/**
 * A run ready for its first day, or why it cannot be run.
 *
 * @param plan units at the type's fields
 * @param record the daily record [-]
 * @returns the run [-]
 * @source definition
 */
export function prepareSeason(plan: SeasonPlan, record: DailyRecord): Machine | SeasonFailure {
  const gap = firstGap(record);
  if (gap !== null)
    return { failed: `The record has no rain reading on ${isoDate(gap)}. Fill the gap first.`, at: gap };
  const seasons = wholeSeasons({ start: plan.start, end: plan.end }, record.firstDay, record.rain.length);
  if (seasons.length === 0)
    return { failed: "The record does not hold one whole season.", at: record.firstDay };
  const answer = dailyEto(record, plan.eto);
  if ("failed" in answer) return { failed: answer.failed, at: null };
  try {
    return readyMachine(plan, record, answer.eto);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

/** Days of a record, both included. */
type Days = { readonly first: number; readonly last: number };

/**
 * Runs days of a prepared run; the account is opened on its first.
 *
 * @param machine the run before its first day [-]
 * @param stepping how gravity's steps are chosen [-]
 * @param days first and last of those to be run; all when left out [-]
 * @source definition
 */
export function runDays(
  machine: Machine,
  stepping: Stepping = STEPPING,
  days: Days = { first: 0, last: machine.length - 1 },
): void {
  if (days.first === 0) openAccount(machine);
  const hasLines = machine.pipes.parts.length > 0;
  for (let day = days.first; day <= days.last; day++) {
    decide(machine, day);
    storeBefore(machine, day);
    waterAll(machine, day);
    storeAfter(machine, day);
    if (hasLines) gravity(machine, day, stepping);
    growAll(machine, day);
    loseAll(machine, day);
    chargeAll(machine, day);
    evening(machine, day);
  }
}

function gravity(machine: Machine, day: number, stepping: Stepping): void {
  const { pipes, tanks, ledger } = machine;
  ledger.waterOut += runGravity(pipes, tanks, undefined, stepping);
  settleOverflow(tanks, null);
  for (let i = 0; i < pipes.moved.length; i++) {
    const moved = pipes.moved[i] as number;
    if (moved === 0) continue;
    const [tally, ran] = [machine.lineMoved[i], machine.lineRan[i]];
    if (tally) count(tally, machine.slots, moved);
    if (ran) ran[day] = pipes.doneAt[i] as number;
    pipes.moved[i] = 0;
    pipes.doneAt[i] = 0;
  }
}

/** Books the day's spill and what is in store. */
function evening(machine: Machine, day: number): void {
  bookSpill(machine);
  const { volume } = machine.tanks;
  let sum = 0;
  for (let place = 0; place < volume.length; place++) {
    const held = volume[place] as number;
    const stored = machine.stored[place];
    if (stored) stored[day] = held;
    sum += held;
  }
  machine.storedTotal[day] = sum;
  closeDay(machine);
}
