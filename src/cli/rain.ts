// A rain file on the command line: read like on the page, and what the page tells told on standard error.

import { readFileSync } from "node:fs";
import { FILLED, fillGaps } from "../rainfall/fill-gaps.ts";
import { readRainFile } from "../rainfall/import-csv.ts";
import { factsOf, fewYearsFact, figureFacts } from "../rainfall/import-facts.ts";
import type { Question, QuestionOption } from "../rainfall/import-result.ts";
import { rainFigures } from "../rainfall/rain-figures.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { gapsOf } from "../rainfall/record-gaps.ts";
import { INCH, MILLIMETRE } from "../units/constants.ts";
import { type RainWanted, ROW_WORDS } from "./rain-arguments.ts";
import { FileError } from "./usage.ts";

const MOST_GAPS = 5;

function shown(metres: number): string {
  const inches = metres / INCH;
  return `${Math.round(metres / MILLIMETRE)} mm (${inches < 10 ? inches.toFixed(1) : Math.round(inches)} in)`;
}

/** How an answer is given on the command line, or null where it cannot be. */
function optionOf(question: Question, value: string): string | null {
  const rows = ROW_WORDS[value as keyof typeof ROW_WORDS];
  const quoted = /[^\w.-]/.test(value) ? `"${value}"` : value;
  const words: Partial<Record<Question["id"], string | null>> = {
    unit: value === "mm" || value === "in" ? `--rain-unit ${value}` : null,
    rain_column: `--rain-column ${quoted}`,
    station: `--rain-station ${quoted}`,
    date_order: `--rain-dates ${value}`,
    within_day: `--rain-rows ${rows}`,
    absent: value === "dry" ? "--rain-fill dry" : "--rain-fill made-up",
  };
  return words[question.id] ?? null;
}

function answerLine(question: Question, { value, label, yearly }: QuestionOption): string {
  const option = optionOf(question, value);
  const likely = value === question.likely ? ", likely" : "";
  const rate = yearly == null ? "" : `: ${shown(yearly)} a year${likely}`;
  return `  ${option ? `${option}  ` : ""}${label}${rate || likely}`;
}

function asked(questions: readonly Question[]): string {
  return questions
    .flatMap((question) => {
      const lines = question.options.map((option) => answerLine(question, option));
      const isSayable = question.options.some(({ value }) => optionOf(question, value) !== null);
      return [question.text, ...lines, ...(isSayable ? [] : ["  This can be answered on the page."])];
    })
    .join("\n");
}

function tell(path: string, facts: readonly string[]): void {
  for (const fact of facts) if (fact) process.stderr.write(`${path}: ${fact}\n`);
}

function filled(path: string, record: DailyRecord, fill: RainWanted["fill"]): DailyRecord {
  if (fill === null || !record.rain.some(Number.isNaN)) return record;
  const how = { kind: fill === "dry" ? "zero" : "made_up" } as const;
  const { record: whole, note, left } = fillGaps(record, how, null, FILLED.rain);
  tell(path, [`${note}; ${left} stay missing.`]);
  return whole;
}

function bytesOf(path: string): Uint8Array<ArrayBuffer> {
  try {
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    throw new FileError(
      `${path} could not be read: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** The record of a file, read as said; what was found and done is told on standard error. */
export async function openRain({ path, choices, fill }: RainWanted): Promise<DailyRecord> {
  const result = await readRainFile(new Blob([bytesOf(path)]), { choices });
  if (result.state === "refused")
    throw new FileError(`${path}${result.line === null ? "" : `, line ${result.line}`}: ${result.reason}`);
  if (result.state === "ask")
    throw new FileError(`${path}: the file does not say enough.\n${asked(result.questions)}`);
  tell(path, factsOf(result.report));
  const gaps = gapsOf(result.record);
  if (gaps.length)
    tell(path, [
      `Missing: ${gaps.slice(0, MOST_GAPS).join("; ")}${gaps.length > MOST_GAPS ? `; and ${gaps.length - MOST_GAPS} more` : ""}.`,
    ]);
  const record = filled(path, result.record, fill);
  const figures = rainFigures(record);
  tell(path, [...figureFacts(figures, shown), fewYearsFact(figures)]);
  return record;
}
