// A row-a-reading table to readings: which column holds what is settled before; here each row is read once, quickly.
import { type AmountPlan, amountReader, hasDecimalComma } from "./amount-reader.ts";
import { clockReader, type DateColumns, dateWords, dayReader } from "./date-columns.ts";
import { namesDate, namesRain } from "./header-words.ts";
import { Refusal } from "./import-result.ts";
import type { FormatFacts, FormatReader, Head, Intake } from "./intake.ts";
import { readNumber, UNREADABLE } from "./read-cell.ts";
import { NO_TIME } from "./read-time.ts";
import type { ExtraName } from "./readings.ts";

export type ExtraColumn = {
  readonly name: ExtraName;
  readonly column: number;
  /** To SI; null where the temperature unit is settled later. */
  readonly factor: number | null;
};

export type ColumnPlan = Omit<FormatFacts, "packedDates" | "dottedDates" | "shortYears" | "questions"> &
  AmountPlan & {
    readonly questions?: FormatFacts["questions"];
    readonly date: DateColumns;
    readonly time: number | null;
    /** Minutes past the hour of `time`, in a column of their own. */
    readonly minutes: number | null;
    readonly extras: readonly ExtraColumn[];
    readonly station: number | null;
    /** Rows may hold more cells than the header: formats whose header is known to be short. */
    readonly isWide: boolean;
    /** Whether the row is a reading at all. */
    readonly keep: ((row: readonly string[]) => boolean) | null;
  };

/** Codes such as 9999 lie above every temperature, wind and sun that a day can have in the units of records. */
const LARGEST_EXTRA = 9000;
/** Below every temperature of a day, in tenths of a degree too. */
const LEAST_EXTRA = -900;

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === "");
}

function stationFilter(plan: ColumnPlan, head: Head): ((row: readonly string[]) => boolean) | null {
  const column = plan.station;
  if (column === null) return null;
  const wanted = head.choices.station;
  const counts = head.intake.stations;
  let only: string | null = wanted ?? null;
  return (row) => {
    const station = row[column] ?? "";
    if (station !== only) {
      const name = station.trim();
      if (name === "" || row[0]?.startsWith("#")) return true;
      counts.add(name);
      if (only === null) only = station;
      else return name === only.trim();
    }
    return true;
  };
}

function extrasReader(plan: ColumnPlan, head: Head): ((row: readonly string[], day: number) => void) | null {
  const decimalComma = hasDecimalComma(head);
  const extras = plan.extras.map(({ name, column, factor }) => ({
    log: head.intake.extra(name),
    column,
    factor: factor ?? 1,
  }));
  if (extras.length === 0) return null;
  return (row, day) => {
    for (const { log, column, factor } of extras) {
      const value = readNumber(row[column], decimalComma);
      // -999 and 9999 lie outside, UNREADABLE and NaN too; what no air is, is dropped once the unit is known.
      if (value > LEAST_EXTRA && value < LARGEST_EXTRA) log.push(day, value * factor);
    }
  };
}

const isComment = (row: readonly string[]): boolean => row[0]?.startsWith("#") ?? false;

/** Says of a row without a date what it is; a header that stands again is passed over. */
function rowWithoutDate(plan: ColumnPlan, intake: Intake): (row: readonly string[], line: number) => void {
  const header = plan.header.join();
  return (row, line) => {
    if (isBlank(row) || isComment(row) || row.join() === header) return;
    if (row.some(namesRain) && row.some(namesDate))
      throw new Refusal("Another header stands here: bring in each part as a file of its own.", line);
    intake.reject(`"${dateWords(plan.date, row)}" is no date, or no day of the calendar.`, line);
  };
}

/** Whether a row holds more cells than its header names. */
function overflow(plan: ColumnPlan): (row: readonly string[]) => boolean {
  const width = plan.isWide ? Number.POSITIVE_INFINITY : plan.header.length;
  return (row) => row.length > width && row.slice(width).some((cell) => cell.trim() !== "");
}

/** The minute of a row, -1 without one; a time that nobody understands is kept in mind. */
function minuteReader(
  plan: ColumnPlan,
  head: Head,
  besideDate: ((row: readonly string[]) => number) | null,
): ((row: readonly string[], line: number) => number) | null {
  const { time, minutes, dataFrom, date } = plan;
  const read = time === null ? besideDate : clockReader({ time, minutes }, head.rows, dataFrom);
  if (!read) return null;
  return (row, line) => {
    const minute = read(row);
    if (minute !== NO_TIME) return minute;
    const words = (time === null ? dateWords(date, row) : (row[time] ?? "")).trim().slice(0, 40);
    head.intake.unreadTime ??= { words, line };
    return -1;
  };
}

const TOO_WIDE = "This row has more cells than its header: a comma in a number, or a column without a name?";

/** The reader of a table whose columns are known. */
export function columnReader(plan: ColumnPlan, head: Head): FormatReader {
  const { intake } = head;
  const { keep } = plan;
  const belongs = stationFilter(plan, head);
  const dates = dayReader(plan.date, head.rows, plan.dataFrom);
  const minuteOf = minuteReader(plan, head, dates.minute);
  const amountOf = amountReader(plan, head);
  const readExtras = extrasReader(plan, head);
  const isTooWide = overflow(plan);
  const undated = rowWithoutDate(plan, intake);
  const skips = (row: readonly string[]) =>
    (row.length === 1 && row[0] === "") || (keep && !keep(row)) || (belongs && !belongs(row));

  function read(row: readonly string[], line: number): void {
    if (skips(row)) return;
    const day = dates.read(row);
    if (Number.isNaN(day)) {
      undated(row, line);
      return;
    }
    if (isTooWide(row)) {
      intake.reject(TOO_WIDE, line);
      return;
    }
    const amount = amountOf(row, line);
    if (amount === UNREADABLE) return;
    intake.add(day, amount, line, minuteOf ? minuteOf(row, line) : -1);
    if (readExtras) readExtras(row, day);
  }

  return {
    ...plan,
    questions: plan.questions ?? [],
    packedDates: dates.shape === "slash",
    dottedDates: dates.dotted,
    shortYears: dates.shortYears,
    read,
    finish: () => intake.finish(),
  };
}
