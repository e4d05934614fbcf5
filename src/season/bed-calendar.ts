// The calendar of one chosen season: a second run that stops at its end and notes every bed's days in it.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import { type BedDay, newLog } from "./day-log.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput } from "./input.ts";
import { prepareSeason, runDays } from "./run.ts";

export type BedCalendar = { readonly id: string; readonly days: readonly BedDay[] };

/** The season that begins in a year, day by day; beds in order of their ids. */
export type SeasonCalendar = {
  readonly year: number;
  /** First and last day, both included [days since 1970-01-01]. */
  readonly first: number;
  readonly last: number;
  readonly beds: readonly BedCalendar[];
};

/**
 * Every bed's days of one season.
 * The same run as runSeason, from the record's first day, to the season's end.
 *
 * @param year in which the season begins
 * @returns the days, or why there are none
 */
export function seasonCalendar(
  input: SeasonInput,
  record: DailyRecord,
  year: number,
): SeasonCalendar | SeasonFailure {
  const state = prepareSeason(input, record);
  if ("failed" in state) return state;
  const span = state.seasons.find((season) => season.year === year);
  if (!span) return { failed: `The record does not hold the whole season of ${year}.`, at: null };
  try {
    if (span.first > 0) runDays(state, STEPPING, { first: 0, last: span.first - 1 });
    state.log = newLog();
    runDays(state, STEPPING, span);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
  const { days } = state.log;
  const { firstDay } = state.record;
  return {
    year,
    first: firstDay + span.first,
    last: firstDay + span.last,
    beds: state.beds
      .map(({ part }) => ({ id: part.id, days: days.get(part.id) ?? [] }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
}
