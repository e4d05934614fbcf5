// A row-a-reading table to readings: which column holds what is settled before; here each row is read once, quickly.
import type { FormatFacts, FormatReader, Head, Intake } from "./intake.ts";
import { readNumber, TRACE, UNREADABLE } from "./read-cell.ts";
import {
  checkedDay,
  type DateShape,
  dateReader,
  dateShape,
  minuteAfterDate,
  minuteOfClock,
} from "./read-date.ts";
import { type ExtraName, MARK_MINUS_ONE, MARK_TRACE } from "./readings.ts";

export type DateColumns =
  | { readonly kind: "cell"; readonly column: number }
  | { readonly kind: "parts"; readonly year: number; readonly month: number; readonly day: number }
  | { readonly kind: "counted"; readonly firstDay: number };

export type ExtraColumn = {
  readonly name: ExtraName;
  readonly column: number;
  /** To SI; null where the temperature unit is settled later. */
  readonly factor: number | null;
};

export type ColumnPlan = Omit<FormatFacts, "packedDates" | "dottedDates" | "questions"> & {
  readonly questions?: FormatFacts["questions"];
  readonly date: DateColumns;
  readonly time: number | null;
  readonly rain: number;
  readonly extras: readonly ExtraColumn[];
  readonly station: number | null;
  /** What the format says -1 means; left open, the user is asked. */
  readonly minusOne: "trace" | "missing" | null;
  /** Numbers that stand for missing in this format beside the ones known everywhere. */
  readonly codes: readonly number[];
  /** Looks at flags: may turn the amount into another, a trace or a missing value. */
  readonly judge: ((row: readonly string[], amount: number) => number) | null;
  /** Whether the row is a reading at all. */
  readonly keep: ((row: readonly string[]) => boolean) | null;
};

/** Negative numbers that records use for a missing value. */
const NEGATIVE_CODES = new Set([-9999, -999, -99, -99.9, -999.9, -99.99, -9999.9, -999.99, -8888, -6999]);
/** Numbers too large for a day's rain that records use for a missing value. */
const POSITIVE_CODES = new Set([999.9, 9999, 999.99, 9999.9, 99999, 99_999.9, 32_767]);
const LEAST_POSITIVE_CODE = 99;
/** Codes such as 9999 lie above every temperature, wind and sun that a day can have in the units of records. */
const LARGEST_EXTRA = 9000;
/** Below every temperature of a day, in tenths of a degree too. */
const LEAST_EXTRA = -900;

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === "");
}

/** Tells special numbers from amounts, and counts them. */
export function amountChecker(
  intake: Intake,
  codes: ReadonlySet<number>,
  minusOne: "trace" | "missing" | null,
): (value: number, line: number) => number {
  return (value, line) => {
    if (value === TRACE) {
      intake.readings.mark.set(intake.readings.count, MARK_TRACE);
      return 0;
    }
    if (codes.has(value) || NEGATIVE_CODES.has(value) || POSITIVE_CODES.has(value)) {
      intake.codes.add(String(value));
      return Number.NaN;
    }
    if (value === -1) {
      intake.minusOnes++;
      if (minusOne === "missing") return Number.NaN;
      intake.readings.mark.set(intake.readings.count, minusOne ? MARK_TRACE : MARK_MINUS_ONE);
      return 0;
    }
    if (value < 0) {
      intake.reject(`${value} is no amount of rain.`, line);
      return UNREADABLE;
    }
    return value;
  };
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

function timeReader(plan: ColumnPlan): ((row: readonly string[]) => number) | null {
  const time = plan.time;
  if (time !== null) return (row) => minuteOfClock(row[time] ?? "");
  const date = plan.date;
  if (date.kind !== "cell") return null;
  return (row) => minuteAfterDate(row[date.column] ?? "");
}

type DayReader = {
  readonly shape: DateShape | null;
  readonly dotted: boolean;
  readonly read: (row: readonly string[]) => number;
};

function dayReader(plan: ColumnPlan, head: Head): DayReader {
  const date = plan.date;
  if (date.kind === "parts") {
    return {
      shape: null,
      dotted: false,
      read: (row) => checkedDay(Number(row[date.year]), Number(row[date.month]), Number(row[date.day])),
    };
  }
  if (date.kind === "counted") {
    let next = date.firstDay;
    return { shape: null, dotted: false, read: () => next++ };
  }
  let shape: DateShape | null = null;
  let sample = "";
  for (let at = plan.dataFrom; at < head.rows.length && !shape; at++) {
    sample = head.rows[at]?.[date.column] ?? "";
    shape = dateShape(sample);
  }
  const read = dateReader(shape ?? "iso");
  const dotted = /^\s*\d{1,2}\.\s?\d{1,2}\./.test(sample);
  return { shape, dotted, read: (row) => read(row[date.column] ?? "") };
}

function dateWords(plan: ColumnPlan, row: readonly string[]): string {
  const date = plan.date;
  if (date.kind === "parts") return [row[date.year], row[date.month], row[date.day]].join("-");
  return date.kind === "cell" ? (row[date.column] ?? "").trim().slice(0, 40) : "";
}

function amountReader(plan: ColumnPlan, head: Head): (row: readonly string[], line: number) => number {
  const { intake } = head;
  const decimalComma = head.delimiter !== ",";
  const codes = new Set([...plan.codes, ...(head.choices.missing_codes ?? [])]);
  const check = amountChecker(intake, codes, plan.minusOne);
  const smallCodes = [...codes].some((code) => code >= 0 && code < LEAST_POSITIVE_CODE);
  const { rain, judge } = plan;

  function special(row: readonly string[], value: number, line: number): number {
    if (value === UNREADABLE) {
      intake.reject(`"${(row[rain] ?? "").trim().slice(0, 40)}" is no amount of rain.`, line);
      return UNREADABLE;
    }
    return Number.isNaN(value) ? value : check(value, line);
  }

  return (row, line) => {
    const value = readNumber(row[rain], decimalComma);
    const plain = value >= 0 && value < LEAST_POSITIVE_CODE && !smallCodes;
    const amount = plain ? value : special(row, value, line);
    if (!intake.withDecimals && amount % 1 > 0) intake.withDecimals = true;
    return judge && amount !== UNREADABLE ? judge(row, amount) : amount;
  };
}

function extrasReader(plan: ColumnPlan, head: Head): ((row: readonly string[], day: number) => void) | null {
  const decimalComma = head.delimiter !== ",";
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

/** The reader of a table whose columns are known. */
export function columnReader(plan: ColumnPlan, head: Head): FormatReader {
  const { intake } = head;
  const belongs = stationFilter(plan, head);
  const minuteOf = timeReader(plan);
  const { shape, dotted, read: dayOf } = dayReader(plan, head);
  const amountOf = amountReader(plan, head);
  const readExtras = extrasReader(plan, head);
  const { keep } = plan;
  const skips = (row: readonly string[]) =>
    (row.length === 1 && row[0] === "") || (keep && !keep(row)) || (belongs && !belongs(row));

  function read(row: readonly string[], line: number): void {
    if (skips(row)) return;
    const day = dayOf(row);
    if (Number.isNaN(day)) {
      if (!isBlank(row) && !row[0]?.startsWith("#")) {
        intake.reject(`"${dateWords(plan, row)}" is no date, or no day of the calendar.`, line);
      }
      return;
    }
    const amount = amountOf(row, line);
    if (amount === UNREADABLE) return;
    intake.add(day, amount, line, minuteOf ? minuteOf(row) : -1);
    if (readExtras) readExtras(row, day);
  }

  return {
    ...plan,
    questions: plan.questions ?? [],
    packedDates: shape === "slash",
    dottedDates: dotted,
    read,
    finish: () => intake.finish(),
  };
}
