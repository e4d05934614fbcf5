// What passes between the readers of formats and the settling of days: the open file's readings and facts.
import type { Choices, Question, RainUnit, RowsTold } from "./import-result.ts";
import { Refusal } from "./import-result.ts";
import { type ExtraName, Readings, SeriesLog, Tally } from "./readings.ts";

export type TemperatureTold = {
  readonly value: "C" | "F" | "tenth_C" | null;
  readonly told: "header" | "format" | null;
};

export type FormatFacts = {
  readonly id: string;
  readonly name: string;
  readonly header: readonly string[];
  /** Rows above the first row of data. */
  readonly dataFrom: number;
  readonly unit: RainUnit | null;
  readonly unitTold: "header" | "format" | null;
  readonly temperature: TemperatureTold;
  readonly columns: readonly { readonly name: string; readonly use: string }[];
  readonly dayRule: { readonly text: string; readonly shift: number };
  readonly notes: readonly string[];
  /** Days are still packed dates whose order of day and month is open. */
  readonly packedDates: boolean;
  /** Dates with dots are day first by custom, 3.4. being 3 April. */
  readonly dottedDates: boolean;
  /** Years stand with two digits: the century is settled over the whole file. */
  readonly shortYears: boolean;
  /** What the format or its header says that a row is. */
  readonly rows: RowsTold;
  /** Header of the column that tells rows of one moment apart, where its name does not say that it names stations. */
  readonly apartBy: string | null;
  /** Hours that an amount is the total of, where the header says several of them. */
  readonly windowHours: number | null;
  /** An amount that only whole numbers tell to be tenths of a millimetre. */
  readonly tenthsIfWhole: boolean;
  readonly questions: readonly Question[];
};

export type FormatReader = FormatFacts & {
  readonly read: (row: readonly string[], line: number) => void;
  /** Called once after the last row. */
  readonly finish: () => void;
};

export type Head = {
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
  readonly choices: Choices;
  readonly intake: Intake;
};

/** Rows under a table that are none of it; common practice, no source. */
const LONGEST_FOOTER = 30;

export type FormatDetector = (head: Head) => FormatReader | null;

export class Intake {
  readonly readings = new Readings();
  readonly extras = new Map<ExtraName, SeriesLog>();
  readonly codes = new Tally();
  readonly flags = new Map<string, { count: number; done: string }>();
  readonly stations = new Tally();
  readonly notes: string[] = [];
  minusOnes = 0;
  withDecimals = false;
  /** Amounts a little under nought, taken as no rain. */
  wavering = 0;
  /** The unit that the cells themselves say. */
  unit: RainUnit | null = null;
  /** The first time of day that nobody understands. */
  unreadTime: { readonly words: string; readonly line: number } | null = null;
  private broken: { reason: string; line: number; rows: number } | null = null;

  extra(name: ExtraName): SeriesLog {
    const known = this.extras.get(name);
    if (known) return known;
    const made = new SeriesLog();
    this.extras.set(name, made);
    return made;
  }

  flag(flag: string, done: string): void {
    const known = this.flags.get(flag);
    if (known) known.count++;
    else this.flags.set(flag, { count: 1, done });
  }

  /** The unit of a cell, the same throughout. */
  cellUnit(unit: RainUnit | null, line: number): void {
    if (unit === null || unit === this.unit) return;
    if (this.unit !== null)
      throw new Refusal(
        "The unit changes here; bring in the rows of each unit as a file of their own, and join them.",
        line,
      );
    this.unit = unit;
  }

  /** Rows that cannot be read are borne only at the very end: a broken download leaves one, a footer a few. */
  reject(reason: string, line: number): void {
    if (this.broken && this.broken.rows >= LONGEST_FOOTER)
      throw new Refusal(this.broken.reason, this.broken.line);
    this.broken = this.broken ? { ...this.broken, rows: this.broken.rows + 1 } : { reason, line, rows: 1 };
  }

  add(day: number, rain: number, line: number, minute: number): void {
    if (this.broken) throw new Refusal(this.broken.reason, this.broken.line);
    this.readings.push(day, rain, line, minute);
  }

  finish(): void {
    if (!this.broken) return;
    if (this.readings.count === 0) throw new Refusal(this.broken.reason, this.broken.line);
    const { line, rows, reason } = this.broken;
    this.notes.push(
      rows === 1
        ? `Line ${line}, the last, was left out: ${reason}`
        : `The last ${rows} rows, from line ${line} on, were left out: ${reason}`,
    );
  }
}

export const NO_TEMPERATURE: TemperatureTold = { value: null, told: null };
