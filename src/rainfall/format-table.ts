// Any table with a date and an amount of rain, with a header or without one.
import { parseIsoDate } from "../units/calendar.ts";
import { basePlan, columnOf, extraColumns, findHeader, toldTemperature } from "./column-plan.ts";
import { columnReader, type DateColumns } from "./column-reader.ts";
import {
  namesDate,
  namesHourlyRain,
  namesRain,
  namesRunningTotal,
  namesTime,
  rainUnitOf,
  temperatureEnd,
} from "./header-words.ts";
import type { Question } from "./import-result.ts";
import type { FormatDetector, FormatReader, Head } from "./intake.ts";
import { readNumber, UNREADABLE } from "./read-cell.ts";
import { dateShape } from "./read-date.ts";

type Table = { readonly cells: readonly string[]; readonly dataFrom: number; readonly named: boolean };

const SAMPLE = 40;
const HEADER_WITHIN = 500;

function isComment(row: readonly string[]): boolean {
  return (row[0] ?? "").trimStart().startsWith("#");
}

function isReading(cell: string, decimalComma: boolean): boolean {
  return cell.trim() !== "" && readNumber(cell, decimalComma) !== UNREADABLE;
}

/** Whether a row reads as data rather than as a header or as prose. */
function looksLikeData(row: readonly string[], decimalComma: boolean): boolean {
  const full = row.filter((cell) => cell.trim() !== "");
  const usable = full.filter((cell) => dateShape(cell) || isReading(cell, decimalComma));
  return (
    full.length > 0 &&
    usable.length > 0 &&
    (row.some((cell) => dateShape(cell)) || usable.length === full.length)
  );
}

function tableOf(head: Head): Table | null {
  const decimalComma = head.delimiter !== ",";
  const limit = Math.min(head.rows.length, HEADER_WITHIN);
  for (let at = 0; at < limit; at++) {
    const row = head.rows[at] ?? [];
    if (isComment(row) || row.every((cell) => cell.trim() === "")) continue;
    if (looksLikeData(row, decimalComma)) {
      return { cells: row.map((_, column) => `column ${column + 1}`), dataFrom: at, named: false };
    }
    if (
      row.some(namesRain) ||
      row.some((cell) => rainUnitOf(cell)) ||
      (row.some(namesDate) && row.length > 1)
    ) {
      return { cells: row, dataFrom: at + 1, named: true };
    }
  }
  return null;
}

function sampleOf(head: Head, table: Table, column: number): string[] {
  const found: string[] = [];
  for (let at = table.dataFrom; at < head.rows.length && found.length < SAMPLE; at++) {
    const cell = head.rows[at]?.[column]?.trim();
    if (cell) found.push(cell);
  }
  return found;
}

function holdsDates(head: Head, table: Table, column: number): boolean {
  const sample = sampleOf(head, table, column);
  return sample.length > 0 && sample.filter((cell) => dateShape(cell)).length * 2 > sample.length;
}

function partsOf(cells: readonly string[]): DateColumns | null {
  const [year, month, day] = ["year", "month", "day"].map((name) => columnOf(cells, name));
  return year != null && month != null && day != null ? { kind: "parts", year, month, day } : null;
}

function dateOf(head: Head, table: Table): DateColumns | null {
  const chosen = columnOf(table.cells, head.choices.date_column);
  if (chosen !== null) return { kind: "cell", column: chosen };
  const columns = table.cells.map((_, column) => column);
  const named = columns.find(
    (column) => table.named && namesDate(table.cells[column] ?? "") && holdsDates(head, table, column),
  );
  if (named !== undefined) return { kind: "cell", column: named };
  const parts = partsOf(table.cells);
  if (parts) return parts;
  const held = columns.find((column) => holdsDates(head, table, column));
  return held === undefined ? null : { kind: "cell", column: held };
}

function numericColumns(head: Head, table: Table, taken: readonly number[]): number[] {
  const decimalComma = head.delimiter !== ",";
  return table.cells.flatMap((_, column) => {
    if (taken.includes(column)) return [];
    const sample = sampleOf(head, table, column);
    return sample.some((cell) => isReading(cell, decimalComma)) &&
      sample.filter((cell) => isReading(cell, decimalComma)).length * 2 > sample.length
      ? [column]
      : [];
  });
}

/** Candidates for the rain: by name, else by a rain unit, else the only numbers there are. */
function rainCandidates(head: Head, table: Table, taken: readonly number[]): number[] {
  const cells = table.cells;
  const free = cells.flatMap((_, column) => (taken.includes(column) ? [] : [column]));
  const named = free.filter((column) => table.named && namesRain(cells[column] ?? ""));
  const running = named.filter((column) => namesRunningTotal(cells[column] ?? ""));
  if (named.length > 1 && running.length === 1) return running;
  const notHourly = named.filter((column) => !namesHourlyRain(cells[column] ?? ""));
  if (notHourly.length) return notHourly;
  if (named.length) return named;
  const withUnit = free.filter((column) => table.named && rainUnitOf(cells[column] ?? "") !== null);
  if (withUnit.length) return withUnit;
  return numericColumns(head, table, taken).filter((column) => temperatureEnd(cells[column] ?? "") === null);
}

function columnQuestion(cells: readonly string[], candidates: readonly number[]): Question {
  return {
    id: "rain_column",
    text: "Which column is the rain?",
    options: candidates.map((column) => {
      const name = cells[column]?.trim() || `column ${column + 1}`;
      return { value: name, label: name };
    }),
    likely: cells[candidates[0] ?? -1]?.trim() ?? null,
  };
}

const FIRST_DAY_QUESTION: Question = {
  id: "first_day",
  text: "The rows carry no date. Which day is the first row? (year-month-day)",
  options: [],
  likely: null,
};

function takenBy(date: DateColumns | null): number[] {
  if (date?.kind === "cell") return [date.column];
  return date?.kind === "parts" ? [date.year, date.month, date.day] : [];
}

function timeColumn(table: Table, taken: readonly number[]): number | null {
  const at = table.cells.findIndex(
    (cell, column) => table.named && !taken.includes(column) && namesTime(cell),
  );
  return at < 0 ? null : at;
}

function stationColumn(table: Table, rain: number): number | null {
  if (!table.named) return null;
  const named = (cell: string) => /^(station|stn|station id|staid|id)$/i.test(cell.trim());
  const at = table.cells.findIndex((cell, column) => column !== rain && named(cell));
  return at < 0 ? null : at;
}

function openColumns(cells: readonly string[], candidates: readonly number[], dated: boolean): Question[] {
  return [
    ...(dated ? [] : [FIRST_DAY_QUESTION]),
    ...(candidates.length > 1 ? [columnQuestion(cells, candidates)] : []),
  ];
}

function readTable(head: Head, table: Table): FormatReader | null {
  const { cells } = table;
  const found = dateOf(head, table);
  const firstDay = parseIsoDate(head.choices.first_day ?? "");
  const date: DateColumns = found ?? { kind: "counted", firstDay: firstDay ?? 0 };
  const time = timeColumn(table, takenBy(found));
  const taken = [...takenBy(found), ...(time === null ? [] : [time])];
  const chosen = columnOf(cells, head.choices.rain_column);
  const candidates = chosen === null ? rainCandidates(head, table, taken) : [chosen];
  const rain = candidates[0];
  if (rain === undefined || rain >= cells.length) return null;
  const station = stationColumn(table, rain);
  const extras = table.named ? extraColumns(cells, head.choices, [...taken, rain]) : [];
  const unit = rainUnitOf(table.named ? (cells[rain] ?? "") : "");
  const questions = openColumns(cells, candidates, found !== null || firstDay !== null);
  const plan = basePlan({
    id: "table",
    name: table.named ? "A table with a header" : "A table without a header",
    header: cells,
    dataFrom: table.dataFrom,
    date,
    time,
    rain,
    extras,
    unit,
    unitTold: unit ? "header" : null,
    temperature: toldTemperature(cells, extras),
    station,
    runningTotal: table.named && namesRunningTotal(cells[rain] ?? ""),
    questions,
  });
  return columnReader(plan, head);
}

/** The reader of last resort: any table with a date and an amount. */
export const detectTable: FormatDetector = (head) => {
  const table = tableOf(head);
  return table && readTable(head, table);
};

/** A reading with its own period in hours: `Amount(mm)`, `Period(Hrs)`. */
export const detectAmountAndPeriod: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["amount(mm)", "period(hrs)"]);
  if (!header) return null;
  const { cells, at } = header;
  const rain = columnOf(cells, "amount(mm)") ?? 0;
  const period = columnOf(cells, "period(hrs)") ?? 0;
  const date = cells.findIndex((cell) => /^(date|day)/i.test(cell));
  if (date < 0) return null;
  const { readings } = head.intake;
  const plan = basePlan({
    id: "amount_period",
    name: "Amounts with their period in hours (CliFlo)",
    header: cells,
    dataFrom: at + 1,
    date: { kind: "cell", column: date },
    rain,
    unit: "mm",
    unitTold: "header",
    columns: cells.map((name, column) => ({
      name,
      use:
        column === rain ? "rain" : column === period ? "hours covered" : column === date ? "date" : "ignored",
    })),
    dayRule: { text: "Each amount is booked on the day on which its period ends.", shift: 0 },
    judge: (row, amount) => {
      const days = Math.round(readNumber(row[period], false) / 24);
      if (days > 1) readings.span.set(readings.count, days);
      return amount;
    },
  });
  return columnReader(plan, head);
};
