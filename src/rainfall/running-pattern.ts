// Whether amounts look like a total that runs or a counter: they never fall but at one fixed hour, day of the month or
// day of the year, there to about nought, and stand still between showers. Shares and counts: common practice, no source.
import { type CalendarDate, calendarDate } from "../units/calendar.ts";
import type { Group, Series } from "./row-series.ts";

export type Pattern = {
  /** When the total goes back to nought. */
  readonly period: "day" | "month" | "year" | "never";
  /** Minute of the day at which it does; 0 for rows without a time. */
  readonly minute: number;
  /** Month and day of a yearly reset as month * 100 + day. */
  readonly monthDay: number;
  /** Whether it always does just then: where a clock is set forward and back, only the falls themselves tell. */
  readonly exact: boolean;
};

export type Steps = {
  readonly rises: number;
  /** Rows of a day that rise, by their place in the day. */
  readonly riseSlots: ReadonlyMap<number, number>;
  readonly riseDays: number;
  readonly still: number;
  readonly zeros: number;
  readonly positive: number;
  /** Falls that leave more than half: a total does that at its reset alone, where it rains then, or to be corrected. */
  readonly slight: number;
  readonly slightSlots: ReadonlyMap<number, number>;
  readonly slightDays: ReadonlyMap<number, number>;
  readonly fallSlots: ReadonlyMap<number, number>;
  readonly fallDays: ReadonlyMap<number, number>;
  readonly falls: number;
  /** What stood before and after the falls, added. */
  readonly before: number;
  readonly after: number;
};

const SLIGHT = 0.5;
const TO_NOUGHT = 0.25;
const FIXED = 0.95;
const LEAST_RISES = 3;
const LEAST_RISES_BY_DAY = 5;
/** A clock that is set forward and back moves the hour of the reset by one. */
const CLOCK_CHANGE = 60;
/** A counter rises more often than this for each of its resets. */
const RISES_A_RESET = 4;
/** Share of the rises that may be followed by a correction. */
const CORRECTIONS = 0.01;

const more = (tally: Map<number, number>, key: number): void => {
  tally.set(key, (tally.get(key) ?? 0) + 1);
};

type Counting = {
  -readonly [Name in keyof Steps]: Steps[Name] extends number ? number : Map<number, number>;
};

/** Counts the step from one amount to the next of a row at its place in its day. */
function countStep(
  into: Counting,
  [last, value]: readonly [number, number],
  slot: number,
  day: number,
): void {
  if (value > last) {
    into.rises++;
    more(into.riseSlots, slot);
  } else if (value === last) {
    into.still += value > 0 ? 1 : 0;
  } else if (value >= last * SLIGHT) {
    into.slight++;
    more(into.slightSlots, slot);
    more(into.slightDays, day);
  } else if (value < last) {
    into.falls++;
    into.before += last;
    into.after += value;
    more(into.fallSlots, slot);
    more(into.fallDays, day);
  }
}

/** Where a row stands in its day: its minute, else its place. */
function slotOf(series: Series, group: Group, at: number): number {
  const minute = series.minute[at] ?? -1;
  return minute < 0 ? at - group.from : minute;
}

/** How the amounts go up and down from row to row, missing ones left out. */
export function stepsOf(series: Series, groups: readonly Group[]): Steps {
  const counts = { rises: 0, riseDays: 0, still: 0, zeros: 0, positive: 0, slight: 0, falls: 0 };
  const into: Counting = {
    ...{ ...counts, before: 0, after: 0 },
    ...{ riseSlots: new Map(), slightSlots: new Map(), slightDays: new Map() },
    ...{ fallSlots: new Map(), fallDays: new Map() },
  };
  let last = Number.NaN;
  for (const group of groups) {
    let hasRisen = false;
    for (let at = group.from; at < group.to; at++) {
      const value = series.rain[at] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      into[value > 0 ? "positive" : "zeros"]++;
      countStep(into, [last, value], slotOf(series, group, at), group.day);
      hasRisen ||= value > last && at > group.from;
      last = value;
    }
    if (hasRisen) into.riseDays++;
  }
  return into;
}

/** The slot with most falls, and the share of all falls at it and near it. */
function usualSlot(slots: ReadonlyMap<number, number>): { slot: number; share: number; near: number } {
  const [slot, count] = [...slots].sort((a, b) => b[1] - a[1])[0] ?? [0, 0];
  const total = [...slots.values()].reduce((sum, each) => sum + each, 0) || 1;
  const close = [...slots].filter(([each]) => Math.abs(each - slot) <= CLOCK_CHANGE);
  return { slot, share: count / total, near: close.reduce((sum, [, each]) => sum + each, 0) / total };
}

function countBut(tally: ReadonlyMap<number, number>, isLeftOut: (key: number) => boolean): number {
  return [...tally].reduce((sum, [key, count]) => sum + (isLeftOut(key) ? 0 : count), 0);
}

function byDay(steps: Steps, timed: boolean): Pattern | null {
  const { slot, share, near } = usualSlot(steps.fallSlots);
  if (share < FIXED && near < FIXED) return null;
  if (countBut(steps.riseSlots, (each) => each === slot) < LEAST_RISES || steps.riseDays < 2) return null;
  if (countBut(steps.slightSlots, (each) => each === slot) > steps.rises * CORRECTIONS) return null;
  return {
    period: "day",
    minute: timed ? slot : 0,
    monthDay: 0,
    exact: share >= FIXED && (timed || slot === 0),
  };
}

/** Month and day of all falls if they are one, and whether all fall on the first of a month. */
function longerPeriod(steps: Steps, timed: boolean): Pattern | null {
  const minute = timed ? usualSlot(steps.fallSlots).slot : 0;
  const dates = [...steps.fallDays.keys()].map(calendarDate);
  const monthDays = new Set(dates.map(({ month, day }) => month * 100 + day));
  const [only] = monthDays;
  const isSlightBut = (isReset: (date: CalendarDate) => boolean): boolean =>
    countBut(steps.slightDays, (day) => isReset(calendarDate(day))) > steps.rises * CORRECTIONS;
  if (only !== undefined && monthDays.size === 1) {
    const isYear = !isSlightBut(({ month, day }) => month * 100 + day === only);
    return isYear ? { period: "year", minute, monthDay: only, exact: true } : null;
  }
  const firsts = dates.filter(({ day }) => day === 1).length;
  const isMonth = dates.length > 0 && firsts >= dates.length * FIXED && !isSlightBut(({ day }) => day === 1);
  return isMonth ? { period: "month", minute, monthDay: 0, exact: true } : null;
}

/** A counter that goes back to nought now and then, by no calendar: amounts fall as often as they rise. */
function oddResets({ rises, falls, slight }: Steps): Pattern | null {
  const isCounter = rises > falls * RISES_A_RESET && slight <= rises * CORRECTIONS;
  return isCounter ? { period: "never", minute: 0, monthDay: 0, exact: false } : null;
}

/** The pattern of a total in the amounts, or null where they can be none. */
export function patternOf(steps: Steps, many: boolean, timed: boolean): Pattern | null {
  const least = many ? LEAST_RISES : LEAST_RISES_BY_DAY;
  if (steps.rises < least || steps.still === 0) return null;
  if (steps.falls === 0 && steps.slight <= steps.rises * CORRECTIONS)
    return { period: "never", minute: 0, monthDay: 0, exact: true };
  if (steps.after > steps.before * TO_NOUGHT) return null;
  const longer = longerPeriod(steps, timed);
  const daily = many ? byDay(steps, timed) : null;
  if (daily && steps.falls < 2) return daily;
  if (longer && steps.rises > steps.falls) return longer;
  return daily ?? oddResets(steps);
}

/** Whether the amounts fall at so many hours, and are nought so often, that they can only be amounts. */
export function fallsAnywhere(steps: Steps): boolean {
  const { near } = usualSlot(steps.fallSlots);
  return steps.fallSlots.size > 1 && near < FIXED && steps.zeros > steps.positive / 10;
}
