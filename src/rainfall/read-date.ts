// Dates as records write them. A file keeps to one shape; the order of day and month is settled over the whole file.
import { dayNumber, daysInMonth } from "../units/calendar.ts";
import { minuteAfter } from "./read-time.ts";

export type DateShape = "iso" | "compact" | "slash" | "words";

/** Stands for text that is no date of the file's shape. */
const NO_DATE = Number.NaN;
export const FIRST_YEAR = 1500;
export const LAST_YEAR = 2300;
/** Half of the years that two digits may mean: 00..49 is 2000..2049, 50..99 is 1950..1999. */
const PIVOT = 50;

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)/;
const COMPACT = /^(\d{4})(\d{2})(\d{2})(?=\D|$|(?:\d{2}){1,3}$)/;
const SLASH = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})(?!\d)/;
const DAY_FIRST_WORDS = /^(\d{1,2})[-/. ]*([a-z]{3,9})\.?,?[-/. ]+(\d{4}|\d{2})(?!\d)/i;
const MONTH_FIRST_WORDS = /^([a-z]{3,9})\.?[-/. ]*(\d{1,2}),?[-/. ]+(\d{4}|\d{2})(?!\d)/i;
const PATTERNS: Readonly<Record<DateShape, readonly RegExp[]>> = {
  iso: [ISO],
  compact: [COMPACT],
  slash: [SLASH],
  words: [DAY_FIRST_WORDS, MONTH_FIRST_WORDS],
};

/** Number 1..12 of a month's English name or its first three letters, 0 if it is none. */
export function monthOfName(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}

/** A checked day number, or NO_DATE: 30 February is no day. */
export function checkedDay(year: number, month: number, day: number): number {
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12) return NO_DATE;
  return (day >= 1 && day <= 28) || (day >= 1 && day <= daysInMonth(year, month))
    ? dayNumber(year, month, day)
    : NO_DATE;
}

function fullYear(text: string): number {
  const year = Number(text);
  if (text.length > 2) return year;
  return year < PIVOT ? 2000 + year : 1900 + year;
}

/** Packs two numbers whose order is not yet known with their year. */
function packDate(first: number, second: number, year: number): number {
  return (year * 100 + first) * 100 + second;
}

/** Undoes packDate under the given order. */
export function unpackDate(packed: number, order: "dmy" | "mdy"): number {
  const second = packed % 100;
  const first = Math.floor(packed / 100) % 100;
  const year = Math.floor(packed / 10_000);
  return order === "dmy" ? checkedDay(year, second, first) : checkedDay(year, first, second);
}

/** The shape of a date cell, or null where it is none. */
export function dateShape(cell: string): DateShape | null {
  const text = cell.trim();
  if (ISO.test(text)) return "iso";
  if (COMPACT.test(text)) return "compact";
  if (SLASH.test(text)) return "slash";
  return DAY_FIRST_WORDS.test(text) || MONTH_FIRST_WORDS.test(text) ? "words" : null;
}

function twoDigits(text: string, at: number): number {
  return (text.charCodeAt(at) - 48) * 10 + text.charCodeAt(at + 1) - 48;
}

function isoDay(cell: string): number {
  const after = cell.length === 10 ? 32 : cell.charCodeAt(10);
  if ((after === 32 || after === 84) && cell.charCodeAt(4) === 45 && cell.charCodeAt(7) === 45) {
    const day = checkedDay(
      twoDigits(cell, 0) * 100 + twoDigits(cell, 2),
      twoDigits(cell, 5),
      twoDigits(cell, 8),
    );
    if (!Number.isNaN(day)) return day;
  }
  const match = ISO.exec(cell.trim());
  return match ? checkedDay(Number(match[1]), Number(match[2]), Number(match[3])) : NO_DATE;
}

function compactDay(cell: string): number {
  const match = COMPACT.exec(cell.trim());
  return match ? checkedDay(Number(match[1]), Number(match[2]), Number(match[3])) : NO_DATE;
}

function slashDay(cell: string): number {
  const match = SLASH.exec(cell.trim());
  return match ? packDate(Number(match[1]), Number(match[2]), fullYear(match[3] ?? "")) : NO_DATE;
}

function wordsDay(cell: string): number {
  const text = cell.trim();
  const dayFirst = DAY_FIRST_WORDS.exec(text);
  if (dayFirst)
    return checkedDay(fullYear(dayFirst[3] ?? ""), monthOfName(dayFirst[2] ?? ""), Number(dayFirst[1]));
  const monthFirst = MONTH_FIRST_WORDS.exec(text);
  return monthFirst
    ? checkedDay(fullYear(monthFirst[3] ?? ""), monthOfName(monthFirst[1] ?? ""), Number(monthFirst[2]))
    : NO_DATE;
}

const READERS: Readonly<Record<DateShape, (cell: string) => number>> = {
  iso: isoDay,
  compact: compactDay,
  slash: slashDay,
  words: wordsDay,
};

/** Reads dates of one shape: a day number, a packed date for `slash`, or NO_DATE. */
export function dateReader(shape: DateShape): (cell: string) => number {
  return READERS[shape];
}

/** Minutes since midnight after the date in a cell; -1 where no time stands there, NO_TIME where it cannot be read. */
export function minuteAfterDate(cell: string, shape: DateShape): number {
  if (cell.length <= 10 && shape !== "slash") return -1;
  if (shape === "iso" && cell.charCodeAt(4) === 45 && cell.charCodeAt(7) === 45)
    return minuteAfter(cell.slice(10));
  const text = cell.trim();
  for (const pattern of PATTERNS[shape]) {
    const match = pattern.exec(text);
    if (match) return minuteAfter(text.slice(match[0].length));
  }
  return -1;
}
