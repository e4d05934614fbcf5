// Whole seasons and whole calendar years in a record, as runs of day indices.

import {
  calendarDate,
  dayInYear,
  dayNumber,
  daysInMonth,
  isLeapYear,
  parseMonthDay,
} from "../units/calendar.ts";
import type { MonthDay } from "./input.ts";

/** Days `first`..`last` of a record, both included, and the calendar year in which they begin. */
export type Span = { readonly year: number; readonly first: number; readonly last: number };

/** First and last day of a season, both included; it may wrap the new year. */
export type SeasonDates = { readonly start: MonthDay; readonly end: MonthDay };

/**
 * The season that begins in a year.
 * A last day of 02-29 is 02-28 in a year that has none.
 *
 * @param dates first and last day, `MM-DD`
 * @returns day numbers of both, or null where a date is no date [days since 1970-01-01]
 */
function seasonIn(dates: SeasonDates, year: number): { readonly start: number; readonly end: number } | null {
  const [from, until] = [parseMonthDay(dates.start), parseMonthDay(dates.end)];
  const start = dayInYear(dates.start, year);
  if (!from || !until || start === null) return null;
  const wraps = until.month < from.month || (until.month === from.month && until.day < from.day);
  const endYear = wraps ? year + 1 : year;
  const end = dayNumber(endYear, until.month, until.day);
  const shifted = until.month === 2 && until.day === 29 && !isLeapYear(endYear);
  return { start, end: shifted ? end - 1 : end };
}

/**
 * The season that a day lies in.
 *
 * @param dates first and last day, `MM-DD`
 * @param date the day [days since 1970-01-01]
 * @returns day numbers of its first and last day, or null outside of any [days since 1970-01-01]
 */
export function seasonAround(
  dates: SeasonDates,
  date: number,
): { readonly start: number; readonly end: number } | null {
  const { year } = calendarDate(date);
  const found = [year - 1, year].map((from) => seasonIn(dates, from));
  return found.find((season) => season && season.start <= date && date <= season.end) ?? null;
}

/** Years that a record may touch, one more on either side for what wraps the new year. */
function yearsOf(firstDay: number, length: number): readonly number[] {
  const first = calendarDate(firstDay).year - 1;
  const last = calendarDate(firstDay + length).year;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/**
 * Seasons that lie wholly in a record.
 *
 * @param dates first and last day, `MM-DD`
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param length days in the record [day]
 */
export function wholeSeasons(dates: SeasonDates, firstDay: number, length: number): readonly Span[] {
  return yearsOf(firstDay, length).flatMap((year) => {
    const season = seasonIn(dates, year);
    if (!season || season.start < firstDay || season.end >= firstDay + length) return [];
    return [{ year, first: season.start - firstDay, last: season.end - firstDay }];
  });
}

/**
 * Days of a record that are in a season, whole or cut off by the record's ends.
 *
 * @param dates first and last day, `MM-DD`
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param length days in the record [day]
 * @returns day of the season counted from 1, 0 outside [day]
 */
export function dayOfSeason(dates: SeasonDates, firstDay: number, length: number): Int32Array {
  const days = new Int32Array(length);
  for (const year of yearsOf(firstDay, length)) {
    const season = seasonIn(dates, year);
    if (!season) continue;
    const last = Math.min(length - 1, season.end - firstDay);
    for (let day = Math.max(0, season.start - firstDay); day <= last; day++) {
      days[day] = day + firstDay - season.start + 1;
    }
  }
  return days;
}

/**
 * Calendar years that lie wholly in a record.
 *
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param length days in the record [day]
 */
export function wholeYears(firstDay: number, length: number): readonly Span[] {
  return wholeSeasons({ start: "01-01", end: "12-31" }, firstDay, length);
}

/**
 * For each day the place of the span it is in, or the number of spans where it is in none.
 *
 * @param length days in the record [day]
 */
export function slotsOf(spans: readonly Span[], length: number): Int32Array {
  const slots = new Int32Array(length).fill(spans.length);
  spans.forEach((span, place) => {
    slots.fill(place, span.first, span.last + 1);
  });
  return slots;
}

/**
 * Sum of a daily series over a span.
 *
 * @param series one value a day [any]
 * @returns sum [any]
 */
export function sumOver(series: Float64Array, span: Span): number {
  let sum = 0;
  for (let day = span.first; day <= span.last; day++) sum += series[day] as number;
  return sum;
}

/** Adds a daily series, times a factor, to another of the same days. */
export function addTo(sum: Float64Array, series: Float64Array, factor: number): void {
  for (let day = 0; day < sum.length; day++)
    sum[day] = (sum[day] as number) + (series[day] as number) * factor;
}

/** Sum of all of a daily series [any]. */
export const totalOf = (series: Float64Array): number =>
  sumOver(series, { year: 0, first: 0, last: series.length - 1 });

/**
 * The month of each day.
 *
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param length days in the record [day]
 * @returns month from 0, January
 */
export function monthsOf(firstDay: number, length: number): Uint8Array {
  const months = new Uint8Array(length);
  for (let day = 0; day < length; ) {
    const { year, month, day: ofMonth } = calendarDate(firstDay + day);
    const next = day + daysInMonth(year, month) - ofMonth + 1;
    months.fill(month - 1, day, next);
    day = next;
  }
  return months;
}
