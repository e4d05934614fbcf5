// Amounts read over several days, laid on the days that they cover. In the file's own unit.
import type { Choices, ImportReport } from "./import-result.ts";
import { MARK_ACCUMULATED } from "./readings.ts";
import type { Series } from "./row-series.ts";

/** Longest stretch of unread days that an accumulated amount is believed to cover, common practice, no source. */
const LONGEST_ACCUMULATION = 31;
const LONGEST_SPAN = 366;

type Spread = { readonly index: number; readonly days: number };

function accumulatedDays(rain: Float64Array, index: number): number {
  let days = 1;
  while (days < LONGEST_ACCUMULATION && index - days >= 0 && Number.isNaN(rain[index - days] ?? 0)) days++;
  return days;
}

/** Lays an amount evenly over the days it covers, those with a reading of their own left alone. */
function layAmount(rain: Float64Array, { index, days }: Spread, rule: Choices["multi_day"]): number {
  const amount = rain[index] ?? Number.NaN;
  const free: number[] = [];
  for (let at = Math.max(0, index - days + 1); at < index; at++)
    if (Number.isNaN(rain[at] ?? 0)) free.push(at);
  const share = rule === "last_day" ? 0 : amount / (free.length + 1);
  for (const at of free) rain[at] = share;
  rain[index] = rule === "last_day" ? amount : share;
  return free.length + 1;
}

function spreads(series: Series, first: number, rain: Float64Array): Spread[] {
  const found: Spread[] = [];
  for (const [at, span] of series.span) {
    if (span > 1) found.push({ index: (series.day[at] ?? 0) - first, days: Math.min(span, LONGEST_SPAN) });
  }
  for (const [at, mark] of series.mark) {
    if (mark !== MARK_ACCUMULATED) continue;
    const index = (series.day[at] ?? 0) - first;
    const days = accumulatedDays(rain, index);
    if (days > 1) found.push({ index, days });
  }
  return found
    .sort((a, b) => a.index - b.index)
    .filter(({ index }) => !Number.isNaN(rain[index] ?? Number.NaN));
}

/** Lays them in place, and says how many there were. */
export function layAmounts(
  series: Series,
  first: number,
  rain: Float64Array,
  rule: Choices["multi_day"],
): ImportReport["multiDay"] {
  const laid = spreads(series, first, rain).map((spread) => layAmount(rain, spread, rule));
  if (laid.length === 0) return null;
  return {
    totals: laid.length,
    days: laid.reduce((sum, count) => sum + count, 0),
    done:
      rule === "last_day" ? "kept on the last day, 0 on the days before" : "spread evenly over their days",
  };
}
