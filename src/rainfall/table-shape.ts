// Where the header and the rows of a table stand, and what its columns hold by a look at their first cells.
import { namesDate, namesRain, rainUnitOf, temperatureUnitOf } from "./header-words.ts";
import type { Head } from "./intake.ts";
import { readNumber, UNREADABLE } from "./read-cell.ts";
import { dateShape } from "./read-date.ts";

export type Table = {
  readonly cells: readonly string[];
  readonly dataFrom: number;
  readonly named: boolean;
};

type Row = readonly string[];

const SAMPLE = 40;
const HEADER_WITHIN = 500;

function isComment(row: Row): boolean {
  return (row[0] ?? "").trimStart().startsWith("#");
}

const isEmpty = (row: Row): boolean => row.every((cell) => cell.trim() === "");

/** Whether a cell reads as an amount, a trace or a missing value. */
export function isReading(cell: string, decimalComma: boolean): boolean {
  if (cell.trim() === "") return false;
  const bare = cell.trim().replace(/\s*(mm|cm|in|inch|inches)\.?$/i, "");
  const isNumber = (text: string) => text !== "" && readNumber(text, decimalComma) !== UNREADABLE;
  return isNumber(cell.trim()) || isNumber(bare);
}

/** Whether a row reads as data rather than as a header or as prose. */
function looksLikeData(row: Row, decimalComma: boolean): boolean {
  const full = row.filter((cell) => cell.trim() !== "");
  const usable = full.filter((cell) => dateShape(cell) || isReading(cell, decimalComma));
  return (
    full.length > 0 &&
    usable.length > 0 &&
    (row.some((cell) => dateShape(cell)) || usable.length === full.length)
  );
}

const isUnit = (cell: string): boolean =>
  rainUnitOf(cell) !== null || temperatureUnitOf(cell) !== null || /^[([].*[)\]]$/.test(cell.trim());

/** A row of units under a header: each unit is laid to its name. */
function withUnits(cells: Row, row: Row | undefined, decimalComma: boolean): Row | null {
  if (!row || isComment(row) || isEmpty(row) || row.length > cells.length) return null;
  if (row.some((cell) => dateShape(cell)) || looksLikeData(row, decimalComma) || !row.some(isUnit))
    return null;
  return cells.map((cell, at) => {
    const unit = (row[at] ?? "").trim().replace(/^[([]|[)\]]$/g, "");
    return unit ? `${cell.trim()} (${unit})` : cell;
  });
}

/** The header and the first row of data, or null. */
export function tableOf(head: Head): Table | null {
  const decimalComma = head.delimiter !== ",";
  const limit = Math.min(head.rows.length, HEADER_WITHIN);
  for (let at = 0; at < limit; at++) {
    const row = head.rows[at] ?? [];
    if (isComment(row) || isEmpty(row)) continue;
    if (looksLikeData(row, decimalComma)) {
      return { cells: row.map((_, column) => `column ${column + 1}`), dataFrom: at, named: false };
    }
    const isHeader =
      row.some(namesRain) || row.some((cell) => rainUnitOf(cell)) || (row.some(namesDate) && row.length > 1);
    if (!isHeader) continue;
    const cells = withUnits(row, head.rows[at + 1], decimalComma);
    return { cells: cells ?? row, dataFrom: at + (cells ? 2 : 1), named: true };
  }
  return null;
}

/** The first cells of a column that are not empty. */
export function sampleOf(head: Head, table: Table, column: number): string[] {
  const found: string[] = [];
  for (let at = table.dataFrom; at < head.rows.length && found.length < SAMPLE; at++) {
    const cell = head.rows[at]?.[column]?.trim();
    if (cell) found.push(cell);
  }
  return found;
}

/** Whether more than half of a column's first cells are so. */
export function mostly(head: Head, table: Table, column: number, is: (cell: string) => boolean): boolean {
  const sample = sampleOf(head, table, column);
  return sample.length > 0 && sample.filter(is).length * 2 > sample.length;
}
