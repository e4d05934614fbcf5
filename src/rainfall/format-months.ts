// Files with a month on a line or a year on a sheet: their cells are days only by where they stand.
import { daysInMonth } from "../units/calendar.ts";
import { amountChecker } from "./amount-reader.ts";
import { MONTHS_ONLY } from "./find-dates.ts";
import { Refusal } from "./import-result.ts";
import { type FormatDetector, type FormatFacts, type Head, NO_TEMPERATURE } from "./intake.ts";
import { readNumber, TRACE, UNREADABLE } from "./read-cell.ts";
import { checkedDay, FIRST_YEAR, LAST_YEAR, monthOfName } from "./read-date.ts";
import { MARK_ACCUMULATED } from "./readings.ts";

const MOST_DAYS = 31;
const LEAST_DAYS = 28;
const ACCUMULATED = /^(.*\d)\s*a$/i;

function facts(id: string, name: string, columns: FormatFacts["columns"]): FormatFacts {
  return {
    id,
    name,
    header: [],
    dataFrom: 0,
    unit: null,
    unitTold: null,
    temperature: NO_TEMPERATURE,
    columns,
    dayRule: { text: "Each reading is taken for the day on which it stands.", shift: 0 },
    notes: [],
    packedDates: false,
    dottedDates: false,
    shortYears: false,
    rows: "day",
    apartBy: null,
    windowHours: null,
    tenthsIfWhole: false,
    questions: [],
  };
}

/** Adds one cell of a month's line; a cell beyond the month's end may only be empty or 0. */
function dayTaker(head: Head) {
  const { intake } = head;
  const decimalComma = head.delimiter !== ",";
  const check = amountChecker(intake, new Set(head.choices.missing_codes ?? []), null);
  const amountOf = (value: number, line: number) =>
    value === TRACE || value < 0 || value >= 99 ? check(value, line) : value;
  return (year: number, month: number, day: number, cell: string, line: number): void => {
    const accumulated = ACCUMULATED.exec(cell.trim());
    const value = readNumber(accumulated?.[1] ?? cell, decimalComma);
    if (value === UNREADABLE) {
      intake.reject(`"${cell.trim().slice(0, 40)}" is no amount of rain.`, line);
      return;
    }
    if (day > daysInMonth(year, month)) {
      if (value > 0 && value !== 9999) {
        intake.reject(`${day}.${month}.${year} is no day of the calendar, yet it has ${value}.`, line);
      }
      return;
    }
    const amount = amountOf(value, line);
    if (amount === UNREADABLE) return;
    if (accumulated) intake.readings.mark.set(intake.readings.count, MARK_ACCUMULATED);
    if (amount % 1 > 0) intake.withDecimals = true;
    intake.add(checkedDay(year, month, day), amount, line, -1);
  };
}

type MonthColumns = { readonly year: number; readonly month: number; readonly firstDay: number };

/** Where year, month and the days stand: words, a year, a month, then 28 to 31 amounts. */
function monthColumns(row: readonly string[]): MonthColumns | null {
  for (let year = 0; year <= 4 && year + 1 < row.length; year++) {
    const [yearCell, monthCell] = [row[year]?.trim() ?? "", row[year + 1]?.trim() ?? ""];
    if (!/^\d{4}$/.test(yearCell) || !/^\d{1,2}$/.test(monthCell)) continue;
    const [yearRead, monthRead] = [Number(yearCell), Number(monthCell)];
    const days = row.length - year - 2;
    if (yearRead < FIRST_YEAR || yearRead > LAST_YEAR || monthRead < 1 || monthRead > 12) continue;
    if (days >= LEAST_DAYS && days <= MOST_DAYS + 1) return { year, month: year + 1, firstDay: year + 2 };
  }
  return null;
}

/** A month a line: station or element words, year, month, then the days. `m` missing, `t` trace, `a` accumulated. */
export const detectMonthLines: FormatDetector = (head) => {
  const dataFrom = head.rows.findIndex((row) => monthColumns(row) !== null);
  if (dataFrom < 0 || dataFrom > 60) return null;
  const columns = monthColumns(head.rows[dataFrom] ?? []);
  if (!columns) return null;
  const take = dayTaker(head);
  const elements =
    columns.year > 0 &&
    head.rows.some((row) =>
      row.slice(0, columns.year).some((cell) => /^(prcp|pcpn|precip|rain)$/i.test(cell.trim())),
    );
  return {
    ...facts("month_lines", "A month on each line", [
      { name: "year", use: "year" },
      { name: "month", use: "month" },
      { name: "1 to 31", use: "rain of each day" },
    ]),
    dataFrom,
    read: (row, line) => {
      if (row.every((cell) => cell.trim() === "") || row[0]?.startsWith("#")) return;
      if (
        elements &&
        !row.slice(0, columns.year).some((cell) => /^(prcp|pcpn|precip|rain)$/i.test(cell.trim()))
      )
        return;
      const year = Number(row[columns.year]);
      const month = Number(row[columns.month]);
      if (
        !(
          year >= FIRST_YEAR &&
          year <= LAST_YEAR &&
          month >= 1 &&
          month <= 12 &&
          month % 1 === 0 &&
          year % 1 === 0
        )
      ) {
        head.intake.reject(`"${row[columns.year] ?? ""} ${row[columns.month] ?? ""}" is no month.`, line);
        return;
      }
      const cells = row.slice(columns.firstDay, columns.firstDay + MOST_DAYS);
      cells.forEach((cell, at) => {
        take(year, month, at + 1, cell, line);
      });
    },
    finish: () => head.intake.finish(),
  };
};

/** The twelve cells of a grid row, or null: a leading empty cell and an empty end are allowed. */
function gridCells(row: readonly string[], delimiter: string): readonly string[] | null {
  if (row.length < 12 || row.length > 15) return null;
  const from = row.length > 12 && row[0]?.trim() === "" ? 1 : 0;
  const cells = row.slice(from, from + 12);
  const rest = row.slice(from + 12);
  if (rest.some((cell) => cell.trim() !== "")) return null;
  return cells.every((cell) => readNumber(cell, delimiter !== ",") !== UNREADABLE) ? cells : null;
}

/** A year by hand: 31 rows of days, twelve columns of months; which year is asked. */
export const detectYearGrid: FormatDetector = (head) => {
  const filled = head.rows.filter((row) => row.some((cell) => cell.trim() !== ""));
  const grids = filled.filter((row) => gridCells(row, head.delimiter) !== null);
  if (grids.length !== MOST_DAYS || filled.length > MOST_DAYS + 3 || filled.at(-1) !== grids.at(-1))
    return null;
  const chosen = Number(/^(\d{4})-/.exec(head.choices.first_day ?? "")?.[1] ?? Number.NaN);
  const known = chosen >= FIRST_YEAR && chosen <= LAST_YEAR;
  const take = dayTaker(head);
  const year = known ? chosen : 2001;
  let day = 0;
  const dataFrom = head.rows.indexOf(grids[0] ?? []);
  return {
    ...facts("year_grid", "A year as a grid, days down and months across", [
      { name: "12 months", use: "rain of each day" },
    ]),
    dataFrom,
    questions: known
      ? []
      : [
          {
            id: "first_day",
            text: "Which year is this? Type its first day, as 2020-01-01.",
            options: [],
            likely: null,
          },
        ],
    read: (row, line) => {
      if (row.every((cell) => cell.trim() === "")) return;
      day++;
      if (day > MOST_DAYS) return;
      row
        .slice(row.length > 12 && row[0]?.trim() === "" ? 1 : 0)
        .slice(0, 12)
        .forEach((cell, at) => {
          // Without the year a 29 February is not yet known to be a day.
          if (known || !(at === 1 && day === 29)) take(year, at + 1, day, cell, line);
        });
    },
    finish: () => head.intake.finish(),
  };
};

/** A row a year with a column for each month: totals of months, where no cell of it could be a day's. */
function isMonthMatrix(head: Head): number {
  const at = head.rows.slice(0, 60).findIndex((row) => {
    const months = row.filter((cell) => /^[a-z]{3,9}\.?$/i.test(cell.trim()) && monthOfName(cell.trim()) > 0);
    return months.length >= 12;
  });
  if (at < 0) return -1;
  const rows = head.rows.slice(at + 1).filter((row) => row.some((cell) => cell.trim() !== ""));
  const years = rows.filter((row) => {
    const year = Number(row[0]);
    return row[0]?.trim() !== "" && year >= FIRST_YEAR && year <= LAST_YEAR;
  });
  return years.length > 0 && years.length * 2 > rows.length ? at : -1;
}

/** Files that hold only months: refused, since a tank lives by days. */
export const detectMonthlyOnly: FormatDetector = (head) => {
  const limit = Math.min(head.rows.length, 60);
  for (let at = 0; at < limit; at++) {
    const words = (head.rows[at] ?? [])
      .join(" ")
      .trim()
      .toLowerCase()
      .split(/[\s,;]+/);
    if (words[0] === "yyyy" && words[1] === "mm" && words[2] !== "dd" && words.includes("rain")) {
      throw new Refusal(MONTHS_ONLY, at + 1);
    }
  }
  const matrix = isMonthMatrix(head);
  if (matrix >= 0) throw new Refusal(MONTHS_ONLY, matrix + 1);
  return null;
};
