// Where a table's dates stand, and how each row's day and time are read from there.

import { dayNumber, isLeapYear } from "../units/calendar.ts";
import { MINUTES_A_DAY } from "../units/constants.ts";
import {
  checkedDay,
  type DateShape,
  dateReader,
  dateShape,
  minuteAfterDate,
  monthOfName,
} from "./read-date.ts";
import { minuteOfClock, NO_TIME } from "./read-time.ts";

export type DateColumns =
  | { readonly kind: "cell"; readonly column: number }
  | { readonly kind: "parts"; readonly year: number; readonly month: number; readonly day: number }
  | { readonly kind: "day_of_year"; readonly year: number; readonly day: number }
  /** Days since the turn of 1900 as spreadsheets count them, with the time as a fraction. */
  | { readonly kind: "serial"; readonly column: number }
  | { readonly kind: "counted"; readonly firstDay: number };

type Row = readonly string[];

export type DayReader = {
  readonly shape: DateShape | null;
  readonly dotted: boolean;
  /** Years stand with two digits. */
  readonly shortYears: boolean;
  readonly read: (row: Row) => number;
  readonly minute: ((row: Row) => number) | null;
};

/** Day number 0 of a spreadsheet, which counts a 29 February 1900 that never was, against 1970-01-01. */
const SERIAL_OF_1970 = 25_569;
const MONTH_WORD = /^[a-z]{3,9}\.?$/i;

/** The columns of a row that hold its date. */
export function columnsOf(date: DateColumns): readonly number[] {
  if (date.kind === "cell" || date.kind === "serial") return [date.column];
  if (date.kind === "parts") return [date.year, date.month, date.day];
  return date.kind === "day_of_year" ? [date.year, date.day] : [];
}

const whole = (cell: string | undefined): number => (cell?.trim() ? Number(cell) : Number.NaN);

function monthIn(cell: string | undefined): number {
  const text = cell?.trim() ?? "";
  return MONTH_WORD.test(text) ? monthOfName(text) : whole(text);
}

function dayOfYearIn(year: number, day: number): number {
  const isDay = day >= 1 && day <= (isLeapYear(year) ? 366 : 365) && day % 1 === 0;
  return isDay && !Number.isNaN(checkedDay(year, 1, 1)) ? dayNumber(year, 1, 1) + day - 1 : Number.NaN;
}

const PLAIN = { shape: null, dotted: false, shortYears: false, minute: null } as const;

function cellReader(column: number, rows: readonly Row[], from: number): DayReader {
  let shape: DateShape | null = null;
  let sample = "";
  for (let at = from; at < rows.length && !shape; at++) {
    sample = rows[at]?.[column] ?? "";
    shape = dateShape(sample);
  }
  const found = shape ?? "iso";
  const read = dateReader(found);
  return {
    shape,
    dotted: /^\s*\d{1,2}\.\s?\d{1,2}\./.test(sample),
    shortYears: (shape === "slash" || shape === "words") && !/\d{4}/.test(sample.replace(/[ T,].*:.*$/, "")),
    read: (row) => read(row[column] ?? ""),
    minute: (row) => minuteAfterDate(row[column] ?? "", found),
  };
}

/** How the day of each row, and the time that stands with it, are read. */
export function dayReader(date: DateColumns, rows: readonly Row[], from: number): DayReader {
  if (date.kind === "cell") return cellReader(date.column, rows, from);
  if (date.kind === "parts") {
    const { year, month, day } = date;
    return { ...PLAIN, read: (row) => checkedDay(whole(row[year]), monthIn(row[month]), whole(row[day])) };
  }
  if (date.kind === "day_of_year") {
    const { year, day } = date;
    return { ...PLAIN, read: (row) => dayOfYearIn(whole(row[year]), whole(row[day])) };
  }
  if (date.kind === "serial") {
    const { column } = date;
    return {
      ...PLAIN,
      read: (row) => Math.floor(whole(row[column])) - SERIAL_OF_1970,
      minute: (row) => {
        const part = whole(row[column]) % 1;
        return part > 0 ? Math.round(part * MINUTES_A_DAY) : -1;
      },
    };
  }
  let next = date.firstDay;
  return { ...PLAIN, read: () => next++ };
}

/** Reads the time of a column of its own; short numbers are `hhmm` without noughts where others of it are longer. */
export function clockReader(
  { time, minutes }: { readonly time: number; readonly minutes: number | null },
  rows: readonly Row[],
  from: number,
): (row: Row) => number {
  if (minutes !== null)
    return (row) => {
      const [hours, past] = [minuteOfClock(row[time] ?? ""), whole(row[minutes])];
      return hours < 0 || !(past >= 0 && past < 60) ? NO_TIME : hours + past;
    };
  let asClock = false;
  for (let at = from; at < rows.length && !asClock; at++)
    asClock = /^\d{3,4}$/.test(rows[at]?.[time]?.trim() ?? "");
  return (row) => minuteOfClock(row[time] ?? "", asClock);
}

/** The date of a row as it stands in the file. */
export function dateWords(date: DateColumns, row: Row): string {
  return columnsOf(date)
    .map((column) => row[column] ?? "")
    .join("-")
    .trim()
    .slice(0, 40);
}
