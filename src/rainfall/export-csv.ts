// A record back to CSV, and any table to CSV whose cells no other program runs as a formula.
import { isoDate } from "../units/calendar.ts";
import { MEGAJOULE, ZERO_CELSIUS } from "../units/constants.ts";
import type { RainUnit } from "./import-result.ts";
import { kelvinOf, METRES_OF } from "./rain-units.ts";
import type { DailyRecord } from "./record.ts";

export type ExportUnits = { readonly rain: Extract<RainUnit, "mm" | "in">; readonly temperature: "C" | "F" };

/** Digits that bring a number back to what it was for every purpose of a rain gauge. */
const DIGITS = 12;
/** Signs that begin a formula, plain, full-width or small, after whatever blank or unseen signs stand before them. */
const RUNS_AS_FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\t\r＝＋－＠﹦﹢﹣﹫]/u;

/**
 * A cell of CSV: text that another program would run as a formula is led by an apostrophe; numbers stay numbers.
 */
export function safeCell(cell: string | number | null): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(Number(cell.toPrecision(DIGITS))) : "";
  const harmless = RUNS_AS_FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",;\t\r\n]|^\s|\s$/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** Rows to CSV text with a line end after each. */
export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(safeCell).join(",")}\r\n`).join("");
}

function celsiusOrFahrenheit(kelvin: number, unit: "C" | "F"): number {
  if (unit === "C") return kelvin - ZERO_CELSIUS;
  const [zero, one] = [kelvinOf(0, "F"), kelvinOf(1, "F")];
  return (kelvin - zero) / (one - zero);
}

type OutColumn = { readonly name: string; readonly value: (at: number) => number };

function columnsOf(record: DailyRecord, units: ExportUnits): OutColumn[] {
  const warmth = (name: string, values: Float64Array | null): OutColumn[] =>
    values ? [{ name, value: (at) => celsiusOrFahrenheit(values[at] ?? Number.NaN, units.temperature) }] : [];
  const plain = (name: string, values: Float64Array | null, unit: number): OutColumn[] =>
    values ? [{ name, value: (at) => (values[at] ?? Number.NaN) / unit }] : [];
  return [
    {
      name: `precipitation (${units.rain})`,
      value: (at) => (record.rain[at] ?? Number.NaN) / METRES_OF[units.rain],
    },
    ...warmth(`temp max (${units.temperature})`, record.highest),
    ...warmth(`temp min (${units.temperature})`, record.lowest),
    ...plain("wind at 2 m (m/s)", record.wind, 1),
    ...plain("vapour pressure (Pa)", record.vapour, 1),
    ...plain("solar radiation (MJ/m2)", record.sun, MEGAJOULE),
  ];
}

/**
 * A record as CSV that this program reads back: units in the header, a missing day as an empty cell.
 * A made-up record says so in its first line, and is made up again when read.
 */
export function recordToCsv(record: DailyRecord, units: ExportUnits): string {
  const columns = columnsOf(record, units);
  const mark = record.madeUp ? "# made up: not a record of real weather\r\n" : "";
  const rows: (string | number | null)[][] = [["date", ...columns.map(({ name }) => name)]];
  for (let at = 0; at < record.rain.length; at++) {
    rows.push([isoDate(record.firstDay + at), ...columns.map(({ value }) => value(at))]);
  }
  return mark + csvText(rows);
}
