// Which columns of a table hold its dates.
import { columnOf } from "./column-plan.ts";
import type { DateColumns } from "./date-columns.ts";
import { headerWords, namesDate } from "./header-words.ts";
import { Refusal } from "./import-result.ts";
import type { Head } from "./intake.ts";
import { dateShape } from "./read-date.ts";
import { mostly, sampleOf, type Table } from "./table-shape.ts";

/** Day numbers of a spreadsheet from 1954 to 2119. */
const SERIAL = /^[2-7]\d{4}(?:\.\d+)?$/;
const MONTH =
  /^(?:(?:1[89]|20)\d{2}(?:0[1-9]|1[0-2])|\d{4}[-/. ]\d{1,2}|\d{1,2}[-/. ]\d{4}|[a-z]{3,9}\.?[-/ ]*(?:\d{4}|\d{2})|(?:\d{4}|\d{2})[-/ ]*[a-z]{3,9})$/i;

export const MONTHS_ONLY =
  "The file holds one total a month. Daily rain is needed; the months' means can be typed as normals instead.";

const YEARS_ONLY = "The file holds one total a year. Daily rain is needed.";
const YEAR = /^(?:1[89]|20)\d{2}$/;
const MONTHS_A_YEAR = 12;

const NAMES = {
  year: /^(year|yr|yyyy|jahr|annee|ano)$/,
  month: /^(month|mon|mo|mm|mnth|monat|mois|mes)$/,
  day: /^(day|dy|dd|da|dom|day of month|tag|jour|dia)$/,
  dayOfYear: /^(doy|day of year|day of the year|julian|julian day|jday|jd|yday|yearday|year day)$/,
} as const;

function named(table: Table, name: keyof typeof NAMES): number | null {
  const at = table.named ? table.cells.findIndex((cell) => NAMES[name].test(headerWords(cell))) : -1;
  return at < 0 ? null : at;
}

function partsOf(table: Table): DateColumns | null {
  const [year, month, day] = [named(table, "year"), named(table, "month"), named(table, "day")];
  if (year === null) return null;
  if (month !== null && day !== null) return { kind: "parts", year, month, day };
  const dayOfYear = named(table, "dayOfYear") ?? (month === null ? day : null);
  if (dayOfYear !== null) return { kind: "day_of_year", year, day: dayOfYear };
  if (month !== null) throw new Refusal(MONTHS_ONLY, table.dataFrom + 1);
  return null;
}

/** Dates that only go as far as the month, in a column that is named for one or stands first. */
function refuseMonths(head: Head, table: Table): void {
  table.cells.forEach((cell, column) => {
    const isDate =
      namesDate(cell) || /^(month|year month|yyyymm|period)$/.test(headerWords(cell)) || column === 0;
    const sample = isDate ? sampleOf(head, table, column) : [];
    if (sample.length > 1 && sample.every((each) => MONTH.test(each)))
      throw new Refusal(MONTHS_ONLY, table.dataFrom + 1);
  });
}

/** Rows of which each stands for a year of its own. */
function refuseYears(head: Head, table: Table): void {
  const sample = sampleOf(head, table, named(table, "year") ?? 0);
  const isYears = sample.length > 1 && sample.every((each) => YEAR.test(each));
  if (!isYears || new Set(sample).size < sample.length) return;
  throw new Refusal(table.cells.length > MONTHS_A_YEAR ? MONTHS_ONLY : YEARS_ONLY, table.dataFrom + 1);
}

/** Where the dates stand, or null where the rows carry none. */
export function dateOf(head: Head, table: Table): DateColumns | null {
  const asCell = (column: number): DateColumns =>
    mostly(head, table, column, (cell) => SERIAL.test(cell))
      ? { kind: "serial", column }
      : { kind: "cell", column };
  const chosen = columnOf(table.cells, head.choices.date_column);
  if (chosen !== null) return asCell(chosen);
  const isDate = (column: number) => mostly(head, table, column, (cell) => dateShape(cell) !== null);
  const columns = table.cells.map((_, column) => column);
  const isNamed = (column: number) => table.named && namesDate(table.cells[column] ?? "");
  const byName = columns.find((column) => isNamed(column) && isDate(column));
  if (byName !== undefined) return { kind: "cell", column: byName };
  const parts = partsOf(table);
  if (parts) return parts;
  const held = columns.find(isDate);
  if (held !== undefined) return { kind: "cell", column: held };
  refuseMonths(head, table);
  refuseYears(head, table);
  const serial = columns.find(
    (column) => isNamed(column) && sampleOf(head, table, column).every((cell) => SERIAL.test(cell)),
  );
  return serial === undefined ? null : { kind: "serial", column: serial };
}
