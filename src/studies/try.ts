// Try: one given over a range, and what the chosen answers become at each value; the coarse picture first.

import { type Change, withChanges } from "../document/changes.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { keepConditions } from "../graph/keep-conditions.ts";
import type { CardKinds, Row } from "../graph/types.ts";
import { calendarDate, dayNumber, isoDate, parseIsoDate, parseMonthDay } from "../units/calendar.ts";
import { COMMON_YEAR } from "../units/constants.ts";
import { type Scale, valuesOf } from "../units/scale.ts";
import { toSi } from "../units/unit.ts";

/** One value to try: the change that sets it, and the value as a result has it [SI]. */
export type Trial = { readonly change: Change; readonly value: number | string };

/** Points of the first picture. */
const COARSE = 9;

export type Target = Pick<Change, "card" | "part" | "row">;

/** A number, value by value [unit]. */
export function valueTrials(target: Target, values: readonly number[], unit: string): readonly Trial[] {
  return values.map((value) => trialOf(target, { value, unit }, toSi(value, unit)));
}

/** A number over a scale. */
export function numberTrials(target: Target, scale: Scale, count: number): readonly Trial[] {
  return valueTrials(target, valuesOf(scale, count), scale.unit);
}

/** A choice, word by word. */
export function wordTrials(target: Target, words: readonly string[]): readonly Trial[] {
  return words.map((word) => trialOf(target, { value: word, unit: "" }, word));
}

/** Any year that is no leap year: a day of the year that every year has. */
const SOME_YEAR = 2001;

const two = (number: number): string => String(number).padStart(2, "0");

/** Number of the day that a date says, one of the year in a year that is no leap year; null where it is no date. */
export function dayOf(date: string): number | null {
  const day = parseIsoDate(date);
  const ofYear = day === null ? parseMonthDay(date) : null;
  return ofYear ? dayNumber(SOME_YEAR, ofYear.month, ofYear.day) : day;
}

/** The date of a day, with its year or without. */
export function dateOf(day: number, withYear: boolean): string {
  if (withYear) return isoDate(day);
  const { month, day: date } = calendarDate(day);
  return `${two(month)}-${two(date)}`;
}

/** A date from one to another, `MM-DD` or `YYYY-MM-DD`, evenly; days of the year may run over the new year. Null where one is no such date. */
export function dateTrials(
  target: Target,
  [from, until]: readonly [string, string],
  count: number,
): readonly Trial[] | null {
  const [first, last] = [dayOf(from), dayOf(until)];
  const dated = parseIsoDate(from) !== null;
  if (first === null || last === null || dated !== (parseIsoDate(until) !== null)) return null;
  const close = !dated && last < first ? last + COMMON_YEAR : last;
  return wordTrials(
    target,
    daysBetween(first, close, count).map((day) => dateOf(day, dated)),
  );
}

function daysBetween(first: number, last: number, count: number): readonly number[] {
  const steps = Math.max(1, Math.min(count - 1, Math.abs(last - first)));
  return [
    ...new Set(
      Array.from({ length: steps + 1 }, (_, at) => Math.round(first + ((last - first) * at) / steps)),
    ),
  ];
}

function trialOf(target: Target, entry: Entry, value: number | string): Trial {
  return { change: { ...target, entry }, value };
}

/** Places of a row of trials in the order in which they are best asked: nine spread over all, then the rest between. */
export function coarseThenFine(count: number): readonly number[] {
  const coarse = Array.from({ length: Math.min(COARSE, count) }, (_, at) =>
    Math.round((at * (count - 1)) / Math.max(1, Math.min(COARSE, count) - 1)),
  );
  const first = new Set(coarse);
  return [...first, ...Array.from({ length: count }, (_, at) => at).filter((at) => !first.has(at))];
}

/** The worksheet as typing a value of the row leaves it, with what the value is measured under written down: what trials of it are changes of. */
export function sheetToTry(worksheet: Worksheet, kinds: CardKinds, row: Row, { change }: Trial): Worksheet {
  if (!row.keeps) return worksheet;
  return keepConditions(withChanges(worksheet, [change]), kinds, change.card, row, true);
}
