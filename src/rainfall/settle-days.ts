// Readings in order to one amount a day: hours summed, running totals ended, days that stand twice settled,
// amounts over several days laid where they belong. All in the file's own unit.
import type { Choices, ImportReport } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { MARK_ACCUMULATED, MARK_TRACE, type Readings } from "./readings.ts";
import { readingOrder } from "./settle-dates.ts";

/** Longest stretch of unread days that an accumulated amount is believed to cover, common practice, no source. */
const LONGEST_ACCUMULATION = 31;
/** Sums of decimal fractions are rounded to this share of the file's unit, so that ten times 0.1 is 1. */
const SUM_STEPS = 1e6;

export type SettledDays = {
  readonly first: number;
  readonly rain: Float64Array;
  readonly sorted: boolean;
  readonly traces: number;
  readonly duplicates: ImportReport["duplicates"];
  readonly withinDay: ImportReport["withinDay"];
  readonly multiDay: ImportReport["multiDay"];
};

type Group = { readonly day: number; readonly from: number; readonly to: number };

function groupsOf(readings: Readings, order: Uint32Array | null): Group[] {
  const groups: Group[] = [];
  let from = 0;
  for (let at = 1; at <= readings.count; at++) {
    const day = readings.day[order ? (order[from] ?? 0) : from] ?? 0;
    const next = at < readings.count ? readings.day[order ? (order[at] ?? 0) : at] : Number.NaN;
    if (next === day) continue;
    groups.push({ day, from, to: at });
    from = at;
  }
  return groups;
}

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
  timedDays = 0;
  readonly rowsOfDay: number[] = [];
  private readonly readings: Readings;
  private readonly order: Uint32Array | null;
  private readonly rule: Choices["duplicates"];

  constructor(readings: Readings, order: Uint32Array | null, rule: Choices["duplicates"]) {
    this.readings = readings;
    this.order = order;
    this.rule = rule;
  }

  at(position: number): number {
    return this.order ? (this.order[position] ?? 0) : position;
  }

  /** One value for each moment of the day, in order of time. */
  moments(group: Group): number[] {
    const found: number[] = [];
    let from = group.from;
    let twice = false;
    while (from < group.to) {
      const minute = this.readings.minute[this.at(from)];
      const values: number[] = [];
      while (from < group.to && this.readings.minute[this.at(from)] === minute) {
        values.push(this.readings.rain[this.at(from)] ?? Number.NaN);
        from++;
      }
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

/** Whether amounts only ever rise through each day: then they are a running total, not amounts to add. */
function onlyRises(days: readonly (readonly number[])[]): boolean {
  let telling = 0;
  for (const values of days) {
    for (let at = 1; at < values.length; at++) {
      if ((values[at] ?? 0) < (values[at - 1] ?? 0)) return false;
    }
    if (values.filter((value) => value > 0).length >= 3) telling++;
  }
  return telling >= 2;
}

function dayAmount(values: readonly number[], running: boolean): number {
  if (values.length === 1) return values[0] ?? Number.NaN;
  if (running) {
    const present = values.filter((value) => !Number.isNaN(value));
    return present.length ? Math.max(...present) : Number.NaN;
  }
  return tidy(values.reduce((sum, value) => sum + value, 0));
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

function withinDayReport(days: readonly (readonly number[])[], running: boolean): ImportReport["withinDay"] {
  const counts = days.map((values) => values.length);
  if (!counts.some((count) => count > 1)) return null;
  const usualRows = usualCount(counts);
  return {
    usualRows,
    days: counts.filter((count) => count > 1).length,
    thinDays: counts.filter((count) => count < usualRows).length,
    done: running
      ? "a running total: the day's highest is its rain"
      : "amounts within a day are added; a day with one of them missing is missing",
  };
}

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

function spreads(intake: Intake, first: number, rain: Float64Array): Spread[] {
  const { readings } = intake;
  const found: Spread[] = [];
  for (const [at, span] of readings.span) {
    if (at < readings.count && span > 1)
      found.push({ index: (readings.day[at] ?? 0) - first, days: Math.min(span, 366) });
  }
  for (const [at, mark] of readings.mark) {
    if (mark !== MARK_ACCUMULATED || at >= readings.count) continue;
    const index = (readings.day[at] ?? 0) - first;
    const days = accumulatedDays(rain, index);
    if (days > 1) found.push({ index, days });
  }
  return found
    .sort((a, b) => a.index - b.index)
    .filter(({ index }) => !Number.isNaN(rain[index] ?? Number.NaN));
}

/** The first day, moved back where the first amount covers days before it. */
function firstCovered(readings: Readings, first: number): number {
  let earliest = first;
  for (const [at, span] of readings.span) {
    if (at < readings.count && span > 1)
      earliest = Math.min(earliest, (readings.day[at] ?? first) - Math.min(span, 366) + 1);
  }
  return earliest;
}

/** One amount a day in the file's own unit, with what was done to get there. */
export function settleDays(
  intake: Intake,
  format: Pick<FormatReader, "runningTotal">,
  choices: Choices,
  range: { readonly first: number; readonly last: number },
): SettledDays {
  const { readings } = intake;
  const order = readingOrder(readings);
  const settler = new DaySettler(readings, order, choices.duplicates ?? "keep_last");
  const groups = groupsOf(readings, order);
  const days = groups.map((group) => settler.moments(group));
  const running = choices.within_day
    ? choices.within_day === "running_total"
    : format.runningTotal || onlyRises(days);
  const first = firstCovered(readings, range.first);
  const rain = new Float64Array(range.last - first + 1).fill(Number.NaN);
  groups.forEach(({ day }, at) => {
    rain[day - first] = dayAmount(days[at] ?? [], running);
  });
  const laid = spreads(intake, first, rain).map((spread) => layAmount(rain, spread, choices.multi_day));
  return {
    first,
    rain,
    sorted: order === null,
    traces: [...readings.mark].filter(([at, mark]) => mark === MARK_TRACE && at < readings.count).length,
    duplicates: settler.duplicateDays
      ? {
          days: settler.duplicateDays,
          differing: settler.differing,
          done: DONE_TWICE[choices.duplicates ?? "keep_last"],
        }
      : null,
    withinDay: withinDayReport(days, running),
    multiDay: laid.length
      ? {
          totals: laid.length,
          days: laid.reduce((sum, count) => sum + count, 0),
          done:
            choices.multi_day === "last_day"
              ? "kept on the last day, 0 on the days before"
              : "spread evenly over their days",
        }
      : null,
  };
}
