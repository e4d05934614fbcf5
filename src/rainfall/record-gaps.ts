// The gaps of a record in words.
import { isoDate } from "../units/calendar.ts";
import type { DailyRecord } from "./record.ts";
import { runsOf } from "./statistics.ts";

/** Runs of missing days in words, the longest first. */
export function gapsOf(record: DailyRecord): readonly string[] {
  const runs = [...runsOf(record.rain, record.firstDay, (value) => Number.isNaN(value))];
  return runs
    .sort((a, b) => b.days - a.days)
    .map(({ first, last, days }) =>
      days === 1 ? isoDate(first) : `${isoDate(first)} to ${isoDate(last)}, ${days} days`,
    );
}
