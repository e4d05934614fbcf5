// One season run: the input's whole network over the whole record, day by day, in one balance.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { isoDate } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import { closeDay, openAccount } from "./account.ts";
import type { SeasonAnswer, SeasonFailure } from "./answer.ts";
import { firstGap } from "./arriving-rain.ts";
import { chargeAll } from "./charge.ts";
import { growAll } from "./crop.ts";
import { dailyEto } from "./daily-eto.ts";
import { untilDark } from "./dark.ts";
import { decide } from "./decide.ts";
import { runGravity, STEPPING, type Stepping } from "./gravity.ts";
import type { SeasonInput } from "./input.ts";
import { loseAll } from "./losses.ts";
import type { PipeLine } from "./pipe-line.ts";
import { wholeSeasons } from "./spans.ts";
import { readyState, type SeasonState } from "./state.ts";
import { bookSpill, storeAfter, storeBefore } from "./store.ts";
import { summaryOf } from "./summary.ts";
import { count, type Tally } from "./tally.ts";
import { settleOverflow } from "./tanks.ts";
import { closeWaterings, wantsSecond, waterAgain, waterAll } from "./watering.ts";
import { NO_WHOLE_SEASON } from "./whole-season.ts";

/**
 * Runs a season's input over a record.
 *
 * @param stepping how gravity's steps are chosen; left out in use
 * @returns the answer, or why there is none and at which day [days since 1970-01-01]
 */
export function runSeason(
  input: SeasonInput,
  record: DailyRecord,
  stepping: Stepping = STEPPING,
): SeasonAnswer | SeasonFailure {
  const made = prepareSeason(input, record);
  if ("failed" in made) return made;
  try {
    runDays(made, stepping);
    return summaryOf(made);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

/** A run ready for its first day, or why it cannot be run. */
export function prepareSeason(input: SeasonInput, record: DailyRecord): SeasonState | SeasonFailure {
  const gap = firstGap(record);
  if (gap !== null)
    return { failed: `The record has no rain reading on ${isoDate(gap)}. Fill the gap first.`, at: gap };
  const seasons = wholeSeasons({ start: input.start, end: input.end }, record.firstDay, record.rain.length);
  if (seasons.length === 0) return { failed: NO_WHOLE_SEASON, at: record.firstDay };
  const answer = dailyEto(record, input.eto);
  if ("failed" in answer) return { failed: answer.failed, at: null };
  try {
    return readyState(input, record, answer.eto);
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
 * @param state the run before its first day
 * @param stepping how gravity's steps are chosen
 * @param days first and last of those to be run; all when left out
 */
export function runDays(
  state: SeasonState,
  stepping: Stepping = STEPPING,
  days: Days = { first: 0, last: state.length - 1 },
): void {
  if (days.first === 0) openAccount(state);
  const hasLines = state.pipes.lines.length > 0;
  for (let day = days.first; day <= days.last; day++) {
    decide(state, day);
    storeBefore(state, day);
    waterAll(state, day);
    storeAfter(state, day);
    if (hasLines) runLines(state, day, stepping);
    if (!state.quiet) closeWaterings(state, day);
    growAll(state, day);
    loseAll(state, day);
    chargeAll(state, day);
    evening(state, day);
  }
}

/** The lines until the next watering; where a bed wants a second tankful, it gets it before dark from what has come by then. */
function runLines(state: SeasonState, day: number, stepping: Stepping): void {
  const dark = wantsSecond(state, day) ? untilDark(state.input, state.record.firstDay + day) : 0;
  if (dark > 0) {
    gravity(state, dark, stepping);
    waterAgain(state, day, dark);
  }
  const { lines } = state.pipes;
  const ran = dark > 0 ? lines.map(({ doneAt }) => doneAt) : null;
  if (ran) for (const line of lines) line.doneAt = 0;
  gravity(state, DAY - dark, stepping);
  for (let i = 0; ran && i < lines.length; i++) {
    const line = lines[i] as PipeLine;
    line.doneAt += ran[i] as number;
  }
  bookLines(state, day);
}

function gravity({ pipes, tanks, ledger }: SeasonState, time: number, stepping: Stepping): void {
  ledger.waterOut += runGravity(pipes, tanks, time, stepping);
  settleOverflow(tanks, null);
}

function bookLines({ pipes, slots, lineMoved, lineRan, lineMovedOn }: SeasonState, day: number): void {
  for (let i = 0; i < pipes.lines.length; i++) {
    const line = pipes.lines[i] as PipeLine;
    line.rise = 0;
    if (line.moved === 0) continue;
    count(lineMoved[i] as Tally, slots, line.moved);
    (lineRan[i] as Float64Array)[day] = line.doneAt;
    (lineMovedOn[i] as Float64Array)[day] = line.moved;
    line.moved = 0;
    line.doneAt = 0;
  }
}

/** Books the day's spill and what is in store. */
function evening(state: SeasonState, day: number): void {
  state.watch?.(day);
  bookSpill(state, day);
  const { volume } = state.tanks;
  let sum = 0;
  for (let place = 0; place < volume.length; place++) {
    const held = volume[place] as number;
    const stored = state.stored[place];
    if (stored) stored[day] = held;
    sum += held;
  }
  state.storedTotal[day] = sum;
  if (!state.quiet) closeDay(state);
}
