// A total that runs, or a counter, to the amounts that it grew by.

import { calendarDate } from "../units/calendar.ts";
import { MINUTES_A_DAY } from "../units/constants.ts";
import type { Series } from "./row-series.ts";
import type { Pattern } from "./running-pattern.ts";

const SLIGHT = 0.5;

/** Number of the period in which a moment lies; the total goes back to nought between two numbers. */
function periodOf(pattern: Pattern, day: number, minute: number): number {
  const moment = day * MINUTES_A_DAY + Math.max(0, minute) - pattern.minute;
  const within = Math.floor(moment / MINUTES_A_DAY);
  if (pattern.period === "never") return 0;
  if (pattern.period === "day") return within;
  const date = calendarDate(within);
  if (pattern.period === "month") return date.year * 12 + date.month;
  return date.month * 100 + date.day < pattern.monthDay ? date.year - 1 : date.year;
}

/** Whether the first row stands at the very reset, so that what it shows is its own. */
function beginsAtReset(pattern: Pattern, day: number, minute: number): boolean {
  if (pattern.period === "never") return false;
  const before = minute < 0 ? periodOf(pattern, day - 1, minute) : periodOf(pattern, day, minute - 1);
  return before !== periodOf(pattern, day, minute);
}

function growth(value: number, last: number, isReset: boolean): number {
  if (isReset) return value;
  if (value >= last) return value - last;
  // A slight fall is a correction of the counter, a deep one a reset of its own.
  return value >= last * SLIGHT ? 0 : value;
}

/** What the first row tells of its own time: all of it where it stands at a reset, else nothing. */
function firstAmount(pattern: Pattern, value: number, day: number, minute: number): number {
  if (value === 0 || beginsAtReset(pattern, day, minute)) return value;
  return minute >= 0 ? 0 : Number.NaN;
}

/**
 * The amounts by which a total grew, each on the day on which it fell: what stands at midnight fell the day before.
 * What the first row shows is of before the record, unless it stands at a reset: it is no amount, but a missing one
 * where the row is its whole day.
 */
export function amountsOf(series: Series, pattern: Pattern): Series {
  const { count, minute } = series;
  const [day, rain] = [series.day.slice(0, count), new Float64Array(count).fill(Number.NaN)];
  const span = new Map<number, number>();
  const period = (at: number) => periodOf(pattern, series.day[at] ?? 0, minute[at] ?? -1);
  function grow(before: number, at: number): void {
    const isReset = pattern.exact && period(before) !== period(at);
    rain[at] = growth(series.rain[at] ?? 0, series.rain[before] ?? 0, isReset);
    const today = series.day[at] ?? 0;
    if (minute[at] === 0 && !isReset) day[at] = today - 1;
    const days = today - (series.day[before] ?? 0);
    if (days > 1) span.set(at, days);
  }
  let before = -1;
  series.rain.forEach((value, at) => {
    if (Number.isNaN(value)) return;
    if (before >= 0) grow(before, at);
    else rain[at] = firstAmount(pattern, value, series.day[at] ?? 0, minute[at] ?? -1);
    before = at;
  });
  return { ...series, day, rain, span, mark: new Map() };
}
