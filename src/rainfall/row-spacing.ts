// Rows that stand further apart than a day are totals over longer: they are no daily rain.
import { calendarDate } from "../units/calendar.ts";
import { MONTHS_ONLY } from "./find-dates.ts";
import { Refusal } from "./import-result.ts";
import type { Series } from "./row-series.ts";

/** Rows from which a spacing can be told, and the share of them that keep it; common practice, no source. */
const LEAST_ROWS = 6;
const KEPT = 0.8;
const [SHORTEST_MONTH, LONGEST_MONTH] = [28, 31];

/** Refuses a file of which the rows are totals of months, weeks or other spans of days. */
export function refuseWideSpacing(series: Series): void {
  if (series.count < LEAST_ROWS || series.span.size > 0) return;
  const steps = new Map<number, number>();
  let months = 0;
  for (let at = 1; at < series.count; at++) {
    const step = (series.day[at] ?? 0) - (series.day[at - 1] ?? 0);
    steps.set(step, (steps.get(step) ?? 0) + 1);
    if (step >= SHORTEST_MONTH && step <= LONGEST_MONTH) months++;
  }
  const enough = (series.count - 1) * KEPT;
  const line = series.line[1] ?? null;
  const isMonthly = months >= enough && isSameDay(series);
  if (isMonthly) throw new Refusal(MONTHS_ONLY, line);
  const [step, count] = [...steps].sort((a, b) => b[1] - a[1])[0] ?? [1, 0];
  if (step > 1 && count >= enough)
    throw new Refusal(
      `The rows stand ${step} days apart, as totals over ${step} days do. Daily rain is needed.`,
      line,
    );
}

/** Whether all rows stand on the first, or all at the end, of their months. */
function isSameDay(series: Series): boolean {
  const firsts = series.day.slice(0, series.count).filter((day) => calendarDate(day).day === 1).length;
  const lasts = series.day.slice(0, series.count).filter((day) => calendarDate(day + 1).day === 1).length;
  return Math.max(firsts, lasts) >= series.count * KEPT;
}
