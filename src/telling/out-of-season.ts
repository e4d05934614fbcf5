// What is said of a day outside the season: that it has not begun or is over, and when it begins.

import { type SeasonDates, seasonAround } from "../season/spans.ts";
import { calendarDate, dayInYear } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";

/** The nearest of a date's days before a day, or after it; null where the text is no date. */
function nearest(text: string, today: number, side: -1 | 1): number | null {
  const { year } = calendarDate(today);
  const days = [year - 1, year, year + 1].flatMap((one) => dayInYear(text, one) ?? []);
  const own = days.filter((day) => (day - today) * side > 0);
  return own.length === 0 ? null : own.reduce((a, b) => (Math.abs(a - today) < Math.abs(b - today) ? a : b));
}

/**
 * "The season has not begun: it begins May 1.", "The season is over; the next begins May 1."
 *
 * @param today [days since 1970-01-01]
 * @returns "" within it, or where its dates are none
 */
export function outOfSeasonSaid(dates: SeasonDates, today: number): string {
  const [begins, ended] = [nearest(dates.start, today, 1), nearest(dates.end, today, -1)];
  if (begins === null || ended === null || seasonAround(dates, today)) return "";
  const on = dayName(calendarDate(begins));
  return begins - today <= today - ended
    ? `The season has not begun: it begins ${on}.`
    : `The season is over; the next begins ${on}.`;
}
