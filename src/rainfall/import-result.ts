// What an import may assume, ask and report. Every assumption in a report can be overridden by a choice.
import type { DailyRecord } from "./record.ts";

export type RainUnit = "mm" | "in" | "cm" | "tenth_mm" | "hundredth_in";

export type Assumptions = {
  /** Unit of the rain column. */
  readonly unit: RainUnit;
  /** Order of day, month and year in dates such as 03/04/2020. */
  readonly date_order: "dmy" | "mdy";
  /** Header names, or `column 2` counted from 1 where the file has no header. */
  readonly date_column: string;
  readonly rain_column: string;
  readonly highest_column: string;
  readonly lowest_column: string;
  readonly temperature_unit: "C" | "F" | "tenth_C";
  /** Which station of a file that holds several. */
  readonly station: string;
  /** Date of the first row, `YYYY-MM-DD`, for a file of amounts without dates. */
  readonly first_day: string;
  /** What to take where a day stands twice. */
  readonly duplicates: "keep_last" | "keep_first" | "sum";
  /** What to do with an amount read over several days. */
  readonly multi_day: "spread" | "last_day";
  /** Rows within one day: amounts to add, or a running total of the day whose highest counts. */
  readonly within_day: "sum" | "running_total";
  /** Days added to each rain reading's date; -1 books a morning reading on the day before. */
  readonly day_shift: number;
  /** Values that the source itself marks as doubtful. */
  readonly flagged: "keep" | "drop";
  readonly minus_one: "trace" | "missing";
  /** Further numbers that stand for a missing value. */
  readonly missing_codes: readonly number[];
};

export type Choices = Partial<Assumptions>;

export type Question = {
  readonly id:
    | "unit"
    | "date_order"
    | "rain_column"
    | "station"
    | "first_day"
    | "minus_one"
    | "year"
    | "between";
  readonly text: string;
  /** Empty where the answer is typed: a date or a year. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** The option that the file itself makes likeliest, never taken unasked. */
  readonly likely: string | null;
};

export type Run = { readonly first: number; readonly last: number; readonly days: number };

export type ImportReport = {
  readonly format: { readonly id: string; readonly name: string };
  /** The top of the table as it stands in the file. */
  readonly preview: { readonly header: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** Rows that held a reading. */
  readonly rows: number;
  readonly days: number;
  readonly firstDay: number | null;
  readonly lastDay: number | null;
  readonly sorted: boolean;
  readonly gaps: readonly Run[];
  readonly missingDays: number;
  readonly duplicates: { readonly days: number; readonly differing: number; readonly done: string } | null;
  readonly unit: { readonly value: RainUnit | null; readonly told: "header" | "format" | "choice" | null };
  readonly temperatureUnit: {
    readonly value: "C" | "F" | "tenth_C";
    readonly told: "header" | "format" | "choice" | "guess";
  } | null;
  readonly columns: readonly { readonly name: string; readonly use: string }[];
  readonly dayRule: { readonly text: string; readonly shift: number };
  readonly traces: number;
  readonly missingCodes: readonly { readonly code: string; readonly count: number }[];
  readonly flagged: readonly { readonly flag: string; readonly count: number; readonly done: string }[];
  readonly multiDay: { readonly totals: number; readonly days: number; readonly done: string } | null;
  readonly withinDay: {
    readonly usualRows: number;
    readonly days: number;
    readonly thinDays: number;
    readonly done: string;
  } | null;
  /** Rain of each calendar year [m]; null where days are missing or the year is not whole. */
  readonly years: readonly { readonly year: number; readonly days: number; readonly rain: number | null }[];
  readonly notes: readonly string[];
};

export type ImportResult =
  | { readonly state: "ready"; readonly record: DailyRecord; readonly report: ImportReport }
  | { readonly state: "ask"; readonly questions: readonly Question[]; readonly report: ImportReport }
  | { readonly state: "refused"; readonly reason: string; readonly line: number | null };

/** Why a file cannot be taken, and where; caught once, at the edge of the import. */
export class Refusal extends Error {
  readonly line: number | null;
  constructor(reason: string, line: number | null) {
    super(reason);
    this.name = "Refusal";
    this.line = line;
  }
}
