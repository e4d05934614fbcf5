// Readings in order to one amount a day: rows read as what they are, days that stand twice settled, amounts over several
// days laid where they belong, days without a row as told. All in the file's own unit.
import { amountsOf } from "./counter-amounts.ts";
import { type Choices, type ImportReport, Refusal } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { layAmounts } from "./lay-amounts.ts";
import { refuseOverlaps } from "./overlapping-rows.ts";
import { MARK_TRACE } from "./readings.ts";
import { type Group, groupsOf, type Series, seriesOf } from "./row-series.ts";
import { refuseWideSpacing } from "./row-spacing.ts";
import { isMany, type Rows, type RowsFound, rowsOf } from "./within-day.ts";

/** Sums of decimal fractions are rounded to this share of the file's unit, so that ten times 0.1 is 1. */
const SUM_STEPS = 1e6;

/** Two months of rows, of which this share is empty: seldom a gauge that was not read; common practice, no source. */
const LEAST_WITH_BLANKS = 60;
const BLANK_SHARE = 0.4;

export type SettledDays = {
  readonly first: number;
  readonly rain: Float64Array;
  readonly sorted: boolean;
  readonly traces: number;
  readonly duplicates: ImportReport["duplicates"];
  readonly withinDay: ImportReport["withinDay"];
  readonly multiDay: ImportReport["multiDay"];
  readonly rows: RowsFound;
  /** Days without a row, days with one, and whether no row says that nothing fell. */
  readonly absent: {
    readonly days: number;
    readonly withRow: number;
    readonly onlyWet: boolean;
    readonly areDry: boolean;
  };
};

function tidy(sum: number): number {
  return Math.round(sum * SUM_STEPS) / SUM_STEPS;
}

/** Settles readings of one moment: the later, the earlier or both; a missing one never beats an amount. */
function settleMoment(values: readonly number[], rule: Choices["duplicates"]): number {
  const present = values.filter((value) => !Number.isNaN(value));
  if (present.length === 0) return Number.NaN;
  if (rule === "sum") return tidy(present.reduce((sum, value) => sum + value, 0));
  return (rule === "keep_first" ? present[0] : present.at(-1)) ?? Number.NaN;
}

class DaySettler {
  duplicateDays = 0;
  differing = 0;
  private readonly series: Series;
  private readonly rule: Choices["duplicates"];
  private readonly reading: Rows;

  constructor(series: Series, reading: Rows, rule: Choices["duplicates"]) {
    this.series = series;
    this.rule = rule;
    this.reading = reading;
  }

  /** Whether two rows are of one moment: of rows that are whole days all of a day are, of others without a time none. */
  private isSame(a: number, b: number): boolean {
    if (this.reading === "day") return true;
    const minute = this.series.minute[a] ?? -1;
    return minute >= 0 && minute === this.series.minute[b];
  }

  /** One value for each moment of the day, in order of time. */
  moments(group: Group): number[] {
    const found: number[] = [];
    let from = group.from;
    let twice = false;
    while (from < group.to) {
      const start = from;
      const values: number[] = [];
      while (from < group.to && this.isSame(start, from)) {
        values.push(this.series.rain[from] ?? Number.NaN);
        from++;
      }
      if (values.length === 0) values.push(this.series.rain[from++] ?? Number.NaN);
      if (values.length > 1) {
        twice = true;
        if (values.some((value) => !Object.is(value, values[0]))) this.differing++;
      }
      found.push(settleMoment(values, this.rule));
    }
    if (twice) this.duplicateDays++;
    return found;
  }
}

function dayAmount(values: readonly number[], isCounted: boolean): number {
  if (values.length === 1) return values[0] ?? Number.NaN;
  // Of a total a row that is missing loses nothing: the next one holds it.
  const present = isCounted ? values.filter((value) => !Number.isNaN(value)) : values;
  return present.length === 0 ? Number.NaN : tidy(present.reduce((sum, value) => sum + value, 0));
}

function usualCount(counts: readonly number[]): number {
  const tally = new Map<number, number>();
  for (const count of counts) tally.set(count, (tally.get(count) ?? 0) + 1);
  return [...tally].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 1;
}

const DONE_TWICE = {
  keep_last: "the later reading is kept",
  keep_first: "the earlier reading is kept",
  sum: "the readings are added",
} as const;

const DONE_ROWS: Readonly<Record<Rows, string>> = {
  day: "each row is its whole day",
  sum: "amounts within a day are added; a day with one of them missing is missing",
  running_total: "a running total of the day: its rises are added",
  counter: "a counter: what it grew by is the rain",
};

function withinDayReport(counts: readonly number[], { reading }: RowsFound): ImportReport["withinDay"] {
  if (reading === "day" || (reading !== "counter" && !counts.some((count) => count > 1))) return null;
  const usualRows = usualCount(counts);
  return {
    reading,
    usualRows,
    days: counts.filter((count) => count > 1).length,
    thinDays: counts.filter((count) => count < usualRows).length,
    done: DONE_ROWS[reading],
  };
}

/** First and last day, moved out to where amounts cover days before. */
function rangeOf(series: Series): { readonly first: number; readonly last: number } {
  let first = series.day[0] ?? 0;
  for (const [at, span] of series.span) {
    if (span > 1) first = Math.min(first, (series.day[at] ?? first) - Math.min(span, 366) + 1);
  }
  return { first, last: series.day[series.count - 1] ?? first };
}

function duplicateRule(rows: RowsFound, choices: Choices): NonNullable<Choices["duplicates"]> {
  // Several tips of a gauge's bucket may fall in one moment: none of them is a second reading of another.
  return choices.duplicates ?? (rows.isEventLog && rows.reading === "sum" ? "sum" : "keep_last");
}

export type DayAmounts = Pick<
  SettledDays,
  "first" | "rain" | "duplicates" | "withinDay" | "multiDay" | "absent"
>;

/** Whether empty cells may be dry days, as rows left out may: no row says nought, and about half or more say nothing. */
function mayBlanksBeDry({ rain, count }: Series): boolean {
  const values = rain.slice(0, count);
  const blanks = values.filter(Number.isNaN).length;
  const isWet = values.some((value) => value > 0) && !values.includes(0);
  return isWet && count >= LEAST_WITH_BLANKS && blanks > count * BLANK_SHARE;
}

/** One amount a day under a reading of the rows. */
function dayAmounts(series: Series, rows: RowsFound, choices: Choices): DayAmounts {
  const isCounted = rows.reading === "running_total" || rows.reading === "counter";
  const amounts = isCounted ? amountsOf(series, rows.pattern) : series;
  const rule = duplicateRule(rows, choices);
  const settler = new DaySettler(amounts, rows.reading, rule);
  const groups = groupsOf(amounts);
  const { first, last } = rangeOf(amounts);
  const rain = new Float64Array(last - first + 1).fill(Number.NaN);
  const hasRow = new Uint8Array(rain.length);
  const isBlankOpen = rows.reading === "day" && mayBlanksBeDry(series);
  for (const group of groups) {
    const amount = dayAmount(settler.moments(group), isCounted);
    rain[group.day - first] = amount;
    if (!isBlankOpen || !Number.isNaN(amount)) hasRow[group.day - first] = 1;
  }
  const multiDay = layAmounts(amounts, first, rain, choices.multi_day);
  const areDry = choices.absent === "dry" || (!choices.absent && rows.isEventLog && rows.reading === "sum");
  let days = 0;
  rain.forEach((value, at) => {
    if (hasRow[at] || !Number.isNaN(value)) return;
    days++;
    if (areDry) rain[at] = 0;
  });
  const { duplicateDays, differing } = settler;
  return {
    first,
    rain,
    duplicates: duplicateDays ? { days: duplicateDays, differing, done: DONE_TWICE[rule] } : null,
    withinDay: withinDayReport(
      groups.map(({ from, to }) => to - from),
      rows,
    ),
    multiDay,
    absent: { days, withRow: groups.length, areDry, onlyWet: !series.rain.some((value) => value === 0) },
  };
}

/** One amount a day in the file's own unit, with what was done to get there. */
export function settleDays(
  intake: Intake,
  format: Pick<FormatReader, "rows" | "windowHours">,
  choices: Choices,
): { readonly days: SettledDays; readonly as: (reading: Rows) => DayAmounts } {
  const series = seriesOf(intake.readings);
  const { unreadTime } = intake;
  if (unreadTime && isMany(groupsOf(series)))
    throw new Refusal(`"${unreadTime.words}" is no time of day that is understood.`, unreadTime.line);
  if (!choices.absent) refuseWideSpacing(series);
  const rows = rowsOf(series, format.rows, choices.within_day);
  if (!choices.duplicates)
    refuseOverlaps(series, rows, {
      isChosen: choices.within_day !== undefined,
      windowHours: format.windowHours,
    });
  const as = (reading: Rows): DayAmounts => {
    const found = reading === rows.reading ? rows : rowsOf(series, format.rows, reading);
    return dayAmounts(series, found, choices);
  };
  const traces = [...series.mark.values()].filter((mark) => mark === MARK_TRACE).length;
  return { days: { ...as(rows.reading), sorted: series.sorted, traces, rows }, as };
}
