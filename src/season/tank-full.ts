// When a tank that stands empty today is full: from this morning through the weather of every past year, a year long.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { COMMON_YEAR } from "../units/constants.ts";
import type { SeasonFailure } from "./answer.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput } from "./input.ts";
import { goingOn } from "./moment.ts";
import { knownBeds, momentToday, type TodayGiven } from "./moment-today.ts";
import { dayAtRank } from "./odds.ts";
import { prepareSeason, runDays } from "./run.ts";
import { usualMorning } from "./usual-morning.ts";
import { MANY_YEARS, type YearAhead, yearsAhead } from "./years-ahead.ts";

/** The share of what it holds that counts as full; a year is looked ahead: our definitions. */
const FULL = 0.99;

export type TankFull = {
  readonly id: string;
  /** Runs, and the years whose weather they have. */
  readonly members: number;
  readonly years: number;
  /** The middle day, and how many runs are full only after the late one; null: not within the year [days since 1970-01-01]. */
  readonly half: number | null;
  readonly late: number | null;
  readonly later: number;
  /** Runs in which it is never full within the year. */
  readonly never: number;
};

export type TanksFull = {
  readonly today: number;
  readonly madeUp: boolean;
  readonly few: boolean;
  /** Of every tank that a roof or another tank's overflow fills. */
  readonly tanks: readonly TankFull[];
};

/**
 * The day on which each tank is full, were it empty this morning and all else as it is; beds are watered on by their rules.
 *
 * @param given what is known of today
 * @returns of every tank that rain fills, by past years; or why there is nothing to say
 * @source Day 1985: past years' weather from the present state on, ranks k / (n + 1); full at 99 % is our definition
 */
export function tanksFull(
  input: SeasonInput,
  record: DailyRecord,
  given: TodayGiven,
): TanksFull | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  const { today } = given;
  try {
    const moment = momentToday(whole, given, (date) => usualMorning(input, record, date));
    const { years, ahead } = yearsAhead(record, whole.eto, { today, last: today + COMMON_YEAR - 1 });
    const filled = input.tanks.filter(({ id }) => isFilledByRain(input, id));
    const fullOn = (id: string, place: number, limit: number, { weather }: YearAhead): number | null => {
      const empty = { ...moment, tanks: { ...moment.tanks, [id]: 0 } };
      const { state, first } = goingOn(input, empty, weather, knownBeds(whole));
      runDays(state, STEPPING, { first, last: state.length - 1 });
      const day = (state.stored[place] as Float64Array).subarray(first).findIndex((held) => held >= limit);
      return day < 0 ? null : today + day;
    };
    const tanks = filled.map((part): TankFull => {
      const place = whole.tanks.parts.findIndex(({ id }) => id === part.id);
      const days = ahead.map((one) => fullOn(part.id, place, FULL * part.vessel.volume, one));
      return { id: part.id, years, ...ranked(days) };
    });
    return { today, madeUp: record.madeUp, few: years < MANY_YEARS, tanks };
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

function isFilledByRain({ roofs, tanks }: SeasonInput, tank: string): boolean {
  return (
    roofs.some(({ drainsTo }) => drainsTo === tank) || tanks.some(({ overflowsTo }) => overflowsTo === tank)
  );
}

/** The middle day, the late one, and how many runs come after it, of days on which a tank is full; null: not within the year. */
export function ranked(days: readonly (number | null)[]): Omit<TankFull, "id" | "years"> {
  const members = days.length;
  const late = dayAtRank(days, 0.9);
  return {
    members,
    half: dayAtRank(days, 0.5),
    late,
    later: days.filter((day) => late !== null && (day === null || day > late)).length,
    never: days.filter((day) => day === null).length,
  };
}
