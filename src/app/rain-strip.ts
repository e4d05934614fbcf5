// A record as a strip of years: which months are whole, which have gaps, and the gaps in words.

import type { DailyRecord } from "../rainfall/record.ts";
import { yearTotals } from "../rainfall/statistics.ts";
import type { MonthState, StripYear } from "../ui/dialogs/rain-import.ts";
import { dayNumber } from "../units/calendar.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";

function monthState(record: DailyRecord, year: number, month: number): MonthState {
  const from = dayNumber(year, month, 1) - record.firstDay;
  const to = (month === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, month + 1, 1)) - record.firstDay;
  let [known, missing] = [0, 0];
  for (let at = Math.max(0, from); at < Math.min(record.rain.length, to); at++) {
    if (Number.isNaN(record.rain[at])) missing++;
    else known++;
  }
  if (known + missing === 0) return "outside";
  if (known === 0) return "none";
  return missing > 0 || known < to - from ? "part" : "whole";
}

function missingIn(record: DailyRecord, year: number): number {
  const from = Math.max(0, dayNumber(year, 1, 1) - record.firstDay);
  const to = Math.max(from, dayNumber(year + 1, 1, 1) - record.firstDay);
  return record.rain.subarray(from, to).reduce((sum, value) => sum + (Number.isNaN(value) ? 1 : 0), 0);
}

/** A year each of the record. */
export function stripOf(record: DailyRecord, options: ShowOptions): readonly StripYear[] {
  return yearTotals(record).map(({ year, rain }) => ({
    year,
    months: Array.from({ length: 12 }, (_, month) => monthState(record, year, month + 1)),
    missing: missingIn(record, year),
    rain: rain === null ? "not whole" : showQuantity(rain, "rain", options),
  }));
}
