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
  /** What a row is: its whole day, an amount to add, a total of the day that runs, or a counter over longer. */
  readonly within_day: "day" | "sum" | "running_total" | "counter";
  /** Days without a row: no rain, or no reading. */
  readonly absent: "dry" | "missing";
  /** Days added to each rain reading's date; -1 books a morning reading on the day before. */
  readonly day_shift: number;
  /** Values that the source itself marks as doubtful. */
  readonly flagged: "keep" | "drop";
  readonly minus_one: "trace" | "missing";
  /** Further numbers that stand for a missing value. */
  readonly missing_codes: readonly number[];
};

export type Choices = Partial<Assumptions>;

export type QuestionOption = {
  readonly value: string;
  readonly label: string;
  /** The mean rain of a year that this answer would give [m]; null where it is no reading of the rain. */
  readonly yearly?: number | null;
};

export type Question = {
  readonly id:
    | "unit"
    | "date_order"
    | "rain_column"
    | "station"
    | "first_day"
    | "minus_one"
    | "within_day"
    | "absent"
    | "year"
    | "between";
  readonly text: string;
  /** Empty where the answer is typed: a date or a year. */
  readonly options: readonly QuestionOption[];
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
  readonly unit: {
    readonly value: RainUnit | null;
    readonly told: "header" | "cells" | "format" | "choice" | null;
  };
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
  /** Days without a row in a file that only has wet ones, and what was done of them. */
  readonly absent: { readonly days: number; readonly areDry: boolean } | null;
  readonly withinDay: {
    readonly reading: Assumptions["within_day"];
    readonly usualRows: number;
    readonly days: number;
    readonly thinDays: number;
    readonly done: string;
  } | null;
  /** Rain of each calendar year [m]; null where days are missing or the year is not whole. */
  readonly years: readonly { readonly year: number; readonly days: number; readonly rain: number | null }[];
  readonly notes: readonly string[];
  /** All that the file leaves open, answered or not, each answer beside the yearly rain that it would give. */
  readonly open: readonly Question[];
  /** Null until the unit is known. */
  readonly rain: RainFigures | null;
};

/** What betrays a mistake at a glance. */
export type RainFigures = {
  /** Mean rain of the whole calendar years [m]; of the days that have a reading, where there is no whole year. */
  readonly meanYear: number | null;
  readonly wholeYears: number;
  /** Wet days in a year of 365.25 days, of the days that have a reading. */
  readonly wetDays: number;
  /** [m] */
  readonly wettestRain: number;
  readonly wettestDay: number;
  /** Days that have a reading. */
  readonly days: number;
  /** The mean lies outside what a place where anything grows has. */
  readonly isDoubtful: boolean;
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

/** What a format or a header says of its rows; `total` is a total of which the span is not told. */
export type RowsTold = Assumptions["within_day"] | "total" | "window" | null;

/** What may be said of readings of one's own gauge. */
export type GaugeChoices = {
  /** Unit of amounts that carry none. */
  readonly unit?: RainUnit;
  /** Year of dates that carry none; a month before the one above it begins the next year. */
  readonly year?: number;
  readonly date_order?: "dmy" | "mdy";
  /** Days without a line: no rain, or not read. */
  readonly between?: "zero" | "missing";
  readonly title?: string;
};
