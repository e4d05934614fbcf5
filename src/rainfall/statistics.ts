// What a record says of its place: totals, the driest year, the longest time without rain.
import { calendarDate, dayNumber, daysInMonth } from "../units/calendar.ts";
import { MILLIMETRE } from "../units/constants.ts";
import type { Run } from "./import-result.ts";
import type { DailyRecord } from "./record.ts";

/** A day under this rain is a dry day [m]; the usual bound for a wet day in climate statistics, common practice, no source. */
const DRY_BELOW = MILLIMETRE;
/** A day with at least this rain is a wet day of the normals [m]; common practice, no source. */
export const WET_FROM = MILLIMETRE / 10;

export type YearTotal = {
  readonly year: number;
  readonly days: number;
  readonly missing: number;
  /** Rain of the year [m]; null unless it is a whole calendar year without a missing day. */
  readonly rain: number | null;
};

export type RecordSummary = {
  readonly days: number;
  readonly firstDay: number;
  readonly lastDay: number;
  readonly missing: readonly Run[];
  readonly missingDays: number;
  readonly firstGapDay: number | null;
  readonly years: readonly YearTotal[];
  /** Whole calendar years without a missing day. */
  readonly wholeYears: readonly number[];
  readonly leftOutYears: readonly number[];
  /** Mean rain of the whole calendar years [m]; null if there is none. */
  readonly meanYearlyRain: number | null;
  readonly driestYear: number | null;
  /** [m] */
  readonly driestYearRain: number | null;
  /** Longest run of days under 1 mm; a missing day ends it. Null if there is no such day. */
  readonly longestDryRun: Run | null;
  /** Mean rain of each month [m], over months without a missing day; null if there is none. */
  readonly monthlyRain: readonly (number | null)[];
  /** Mean days of each month with at least 0.1 mm, over the same months. */
  readonly monthlyWetDays: readonly (number | null)[];
};

/** Runs of days for which `belongs` holds, in order. */
export function runsOf(values: Float64Array, firstDay: number, belongs: (value: number) => boolean): Run[] {
  const runs: Run[] = [];
  let from = -1;
  for (let at = 0; at <= values.length; at++) {
    const inside = at < values.length && belongs(values[at] ?? Number.NaN);
    if (inside && from < 0) from = at;
    if (inside || from < 0) continue;
    runs.push({ first: firstDay + from, last: firstDay + at - 1, days: at - from });
    from = -1;
  }
  return runs;
}

/** Totals of the calendar years that the record touches [m]. */
export function yearTotals(record: Pick<DailyRecord, "firstDay" | "rain">, scale = 1): YearTotal[] {
  const { firstDay, rain } = record;
  if (rain.length === 0) return [];
  const lastDay = firstDay + rain.length - 1;
  const totals: YearTotal[] = [];
  for (let year = calendarDate(firstDay).year; year <= calendarDate(lastDay).year; year++) {
    const from = Math.max(firstDay, dayNumber(year, 1, 1));
    const to = Math.min(lastDay, dayNumber(year, 12, 31));
    let [sum, missing] = [0, 0];
    for (let day = from; day <= to; day++) {
      const value = rain[day - firstDay] ?? Number.NaN;
      if (Number.isNaN(value)) missing++;
      else sum += value * scale;
    }
    const days = to - from + 1;
    const whole = missing === 0 && days === dayNumber(year + 1, 1, 1) - dayNumber(year, 1, 1);
    totals.push({ year, days, missing, rain: whole ? sum : null });
  }
  return totals;
}

type MonthSums = { months: number; rain: number; wet: number };

/** Sums of each calendar month over its whole occurrences without a missing day. */
function monthSums(record: Pick<DailyRecord, "firstDay" | "rain">, scale: number): MonthSums[] {
  const sums: MonthSums[] = Array.from({ length: 12 }, () => ({ months: 0, rain: 0, wet: 0 }));
  const { firstDay, rain } = record;
  let at = 0;
  while (at < rain.length) {
    const { year, month, day } = calendarDate(firstDay + at);
    const length = daysInMonth(year, month) - day + 1;
    const slice = rain.subarray(at, at + length);
    const whole = day === 1 && slice.length === length && slice.every((value) => !Number.isNaN(value));
    const into = sums[month - 1];
    if (whole && into) {
      into.months++;
      for (const value of slice) {
        into.rain += value * scale;
        if (value * scale >= WET_FROM) into.wet++;
      }
    }
    at += length;
  }
  return sums;
}

function longest(runs: readonly Run[]): Run | null {
  let best: Run | null = null;
  for (const run of runs) if (!best || run.days > best.days) best = run;
  return best;
}

/**
 * Summary of a record with its rain multiplied by a scale.
 * @param record the daily record
 * @param scale factor on every day's rain [-]
 * @returns totals and runs; null where the record has no whole calendar year to tell it from
 */
export function recordSummary(record: Pick<DailyRecord, "firstDay" | "rain">, scale = 1): RecordSummary {
  const { firstDay, rain } = record;
  const missing = runsOf(rain, firstDay, (value) => Number.isNaN(value));
  const years = yearTotals(record, scale);
  const whole = years.flatMap((total) =>
    total.rain === null ? [] : [{ year: total.year, rain: total.rain }],
  );
  const driest = whole.reduce<{ year: number; rain: number } | null>(
    (least, total) => (least && least.rain <= total.rain ? least : total),
    null,
  );
  const months = monthSums(record, scale);
  const sum = whole.reduce((total, { rain: of }) => total + of, 0);
  return {
    days: rain.length,
    firstDay,
    lastDay: firstDay + rain.length - 1,
    missing,
    missingDays: missing.reduce((total, run) => total + run.days, 0),
    firstGapDay: missing[0]?.first ?? null,
    years,
    wholeYears: whole.map(({ year }) => year),
    leftOutYears: years.filter((total) => total.rain === null).map(({ year }) => year),
    meanYearlyRain: whole.length ? sum / whole.length : null,
    driestYear: driest?.year ?? null,
    driestYearRain: driest?.rain ?? null,
    longestDryRun: longest(runsOf(rain, firstDay, (value) => value * scale < DRY_BELOW)),
    monthlyRain: months.map(({ months: count, rain: of }) => (count ? of / count : null)),
    monthlyWetDays: months.map(({ months: count, wet }) => (count ? wet / count : null)),
  };
}
