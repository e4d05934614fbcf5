// Any table with a date and an amount of rain, with a header or without one.
import { parseIsoDate } from "../units/calendar.ts";
import { basePlan, columnOf, extraColumns, findHeader, toldTemperature } from "./column-plan.ts";
import { columnReader } from "./column-reader.ts";
import { columnsOf, type DateColumns } from "./date-columns.ts";
import { dateOf } from "./find-dates.ts";
import { columnQuestion, type RainFound, rainCandidates } from "./find-rain.ts";
import {
  headerWords,
  namesStation,
  namesTime,
  rainUnitOf,
  rowsToldBy,
  windowHoursOf,
} from "./header-words.ts";
import type { Question } from "./import-result.ts";
import type { FormatDetector, FormatReader, Head } from "./intake.ts";
import { readNumber } from "./read-cell.ts";
import { sampleOf, type Table, tableOf } from "./table-shape.ts";
import { ALL_ROWS, tellingApart } from "./telling-apart.ts";

const FIRST_DAY_QUESTION: Question = {
  id: "first_day",
  text: "The rows carry no date. Which day is the first row? (year-month-day)",
  options: [],
  likely: null,
};

/** The first free column of a header that a name fits, or null. */
function namedColumn(table: Table, taken: readonly number[], fits: (cell: string) => boolean): number | null {
  const at = table.cells.findIndex((cell, column) => table.named && !taken.includes(column) && fits(cell));
  return at < 0 ? null : at;
}

const isMinutes = (cell: string): boolean => /^(minute|minutes|min|mn|mi)$/.test(headerWords(cell));
const isUnits = (cell: string): boolean => /^(units?|uom|unit of measure)$/.test(headerWords(cell));

/** The column of stations: of several that could be the one in which most are told apart, none where every row differs. */
function stationColumn(head: Head, table: Table, taken: readonly number[]): number | null {
  let [best, most] = [null as number | null, 0];
  table.cells.forEach((cell, column) => {
    if (!table.named || taken.includes(column) || !namesStation(cell)) return;
    const sample = sampleOf(head, table, column);
    const names = new Set<string>();
    let rows = 0;
    for (let at = table.dataFrom; at < head.rows.length; at++) {
      const name = head.rows[at]?.[column]?.trim();
      if (!name) continue;
      names.add(name);
      rows++;
    }
    const isAmount = sample.some((each) => /^\d*[.,]\d+$/.test(each));
    const isRowNumber = names.size === rows && rows > 2;
    if (isAmount || isRowNumber || names.size <= most) return;
    [best, most] = [column, names.size];
  });
  return best;
}

type Used = {
  readonly moment: readonly number[];
  readonly used: readonly number[];
};

/** The column of stations: named so, or one that tells the rows of one moment apart. */
function stationsOf(
  head: Head,
  table: Table,
  { moment, used }: Used,
): { readonly station: number | null; readonly apartBy: string | null } {
  const named = stationColumn(head, table, used);
  if (named !== null || !table.named) return { station: named, apartBy: null };
  const column = tellingApart(head.rows.slice(table.dataFrom), moment, used);
  if (column === null || head.choices.station === ALL_ROWS) return { station: null, apartBy: null };
  return { station: column, apartBy: table.cells[column]?.trim() || `column ${column + 1}` };
}

function openColumns(
  cells: readonly string[],
  { candidates, isOpen }: RainFound,
  dated: boolean,
): Question[] {
  return [...(dated ? [] : [FIRST_DAY_QUESTION]), ...(isOpen ? [columnQuestion(cells, candidates)] : [])];
}

/** The unit that a column's own header tells. */
const unitIn = (table: Table, column: number) => (table.named ? rainUnitOf(table.cells[column] ?? "") : null);

/** What the header of the rain says of its rows. */
const toldBy = (cell: string) => ({ rows: rowsToldBy(cell), windowHours: windowHoursOf(cell) });

function readTable(head: Head, table: Table): FormatReader | null {
  const { cells } = table;
  const found = dateOf(head, table);
  const firstDay = parseIsoDate(head.choices.first_day ?? "");
  const date: DateColumns = found ?? { kind: "counted", firstDay: firstDay ?? 0 };
  const dates = columnsOf(date);
  const time = namedColumn(table, dates, namesTime);
  const minutes = time === null ? null : namedColumn(table, dates, isMinutes);
  const unitColumn = namedColumn(table, dates, isUnits);
  const taken = [...dates, ...[time, minutes, unitColumn].filter((column) => column !== null)];
  const chosen = columnOf(cells, head.choices.rain_column);
  const rains = rainCandidates(head, table, taken, chosen !== null);
  const rain = chosen ?? rains.candidates[0];
  if (rain === undefined || rain >= cells.length) return null;
  const extras = table.named ? extraColumns(cells, head.choices, [...taken, rain]) : [];
  const unit = unitIn(table, rain);
  const plan = basePlan({
    id: "table",
    name: table.named ? "A table with a header" : "A table without a header",
    header: cells,
    dataFrom: table.dataFrom,
    date,
    time,
    minutes,
    rain,
    extras,
    unit,
    unitTold: unit ? "header" : null,
    unitColumn: unit ? null : unitColumn,
    temperature: toldTemperature(cells, extras),
    ...stationsOf(head, table, {
      moment: [...dates, ...[time, minutes].filter((column) => column !== null)],
      used: [...taken, rain, ...extras.map(({ column }) => column)],
    }),
    ...(table.named ? toldBy(cells[rain] ?? "") : {}),
    notes: date.kind === "serial" ? ["Its dates are day numbers as spreadsheets count them, from 1900."] : [],
    questions: openColumns(cells, rains, found !== null),
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
