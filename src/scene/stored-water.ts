// The water in all tanks over the record and the short days in it, season by season and day by day, and the same as tables.

import { shownIn } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { calendarDate, dayInYear, dayNumber } from "../units/calendar.ts";

export type StoredSeries = {
  /** Water in all tanks each evening [m3]. */
  readonly stored: Float64Array;
  /** 1 on a day on which a bed was short. */
  readonly short: Uint8Array;
  readonly firstDay: number;
};

/** A whole season of the record: the year in which it begins and its short days; the share is null where no crop stood. */
export type Season = {
  readonly year: number;
  readonly shareMet: number | null;
  readonly daysShort: number;
};

type Ask = (id: string) => Result | undefined;

/** The series of a run; an old one while a new one is worked out, null where there is none. */
export function storedIn(result: Ask): StoredSeries | null {
  const of = (name: string): unknown => shownIn(result(`season.${name}`));
  const [stored, short, first] = [of("stored_total"), of("short_days"), of("record_first_day")];
  if (!(stored instanceof Float64Array) || !(short instanceof Uint8Array) || typeof first !== "number")
    return null;
  return { stored, short, firstDay: first };
}

/** Whether two are of the same run, so that nothing is to be drawn anew. */
export const isSameSeries = (one: StoredSeries | null, other: StoredSeries | null): boolean =>
  one?.stored === other?.stored && one?.short === other?.short && one?.firstDay === other?.firstDay;

/** Whole seasons, from the first; none where there is no run. */
export function seasonsIn(result: Ask): readonly Season[] {
  const value = shownIn(result("season.by_season"));
  return Array.isArray(value) ? (value as readonly Season[]) : [];
}

/** First and last day of a year as it is shown, both included [days since 1970-01-01]. */
export type Year = { readonly from: number; readonly to: number };

/**
 * The year around the season that begins in it: the calendar year, or from July on where the season goes over the new year;
 * no further than the record.
 *
 * @param start first day of the season, `MM-DD`
 * @param end last day of the season, `MM-DD`
 */
export function yearAround(series: StoredSeries, year: number, start: string, end: string): Year {
  const [first, last] = [dayInYear(start, year) ?? 0, dayInYear(end, year) ?? 1];
  const from = last < first ? dayNumber(year, 7, 1) : dayNumber(year, 1, 1);
  const to = (last < first ? dayNumber(year + 1, 7, 1) : dayNumber(year + 1, 1, 1)) - 1;
  const ended = series.firstDay + series.stored.length - 1;
  return {
    from: Math.max(series.firstDay, Math.min(from, ended)),
    to: Math.max(series.firstDay, Math.min(to, ended)),
  };
}

/** The middle of the season that begins in a year; no further than the record [days since 1970-01-01]. */
export function midSeason(series: StoredSeries, year: number, start: string, end: string): number {
  const { from, to } = yearAround(series, year, start, end);
  const first = dayInYear(start, year) ?? from;
  const last = dayInYear(end, year) ?? to;
  const middle = Math.round((first + (last < first ? (dayInYear(end, year + 1) ?? to) : last)) / 2);
  return Math.max(from, Math.min(to, middle));
}

/** The day of such a year that is so many days after a January 1 [days since 1970-01-01]. */
export function dayIn({ from, to }: Year, day: number): number {
  const { year } = calendarDate(from);
  const here = dayNumber(year, 1, 1) + day;
  const wished = here < from ? dayNumber(year + 1, 1, 1) + day : here;
  return Math.max(from, Math.min(to, wished));
}

/** How many days after January 1 a day is. */
export const dayOf = (day: number): number => day - dayNumber(calendarDate(day).year, 1, 1);

/** Calendar years that the series touches. */
export function yearsOf(series: StoredSeries): readonly number[] {
  const first = calendarDate(series.firstDay).year;
  const last = calendarDate(series.firstDay + series.stored.length - 1).year;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/** Runs of short days, from the first to the last of each, both included [days since 1970-01-01]. */
export function shortRuns({ short, firstDay }: StoredSeries, { from, to }: Year): readonly Year[] {
  const runs: { from: number; to: number }[] = [];
  for (let day = from; day <= to; day++) {
    if (!short[day - firstDay]) continue;
    const last = runs[runs.length - 1];
    if (last && last.to === day - 1) last.to = day;
    else runs.push({ from: day, to: day });
  }
  return runs;
}

/** Lowest evening of a year [m3], and its day. */
export function lowestIn({ stored, firstDay }: StoredSeries, { from, to }: Year) {
  let [volume, day] = [Number.POSITIVE_INFINITY, from];
  for (let at = from; at <= to; at++) {
    const now = stored[at - firstDay] ?? 0;
    if (now < volume) [volume, day] = [now, at];
  }
  return { volume, day };
}
