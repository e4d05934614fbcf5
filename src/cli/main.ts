// The command line: a worksheet in, a report or one JSON object out. Thin over the same modules as the page.

import { readFileSync } from "node:fs";
import type { Worksheet } from "../document/worksheet.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { readRainCsv } from "../rainfall/import-csv.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { recordKey } from "../rainfall/record-key.ts";
import { worksheetFromFileText } from "../storage/file.ts";
import { workOut } from "../studies/work-out.ts";
import { FileError, HELP, readArguments, UsageError, type Wanted } from "./arguments.ts";
import { jsonReport, textReport } from "./report.ts";
import { setValue } from "./set-value.ts";
import { triedJson, triedReport, triedText } from "./try-report.ts";

function readText(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch (error) {
    throw new FileError(
      `${path} could not be read: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

type Opened = { readonly worksheet: Worksheet; readonly records: readonly DailyRecord[] };

function openWorksheet(path: string): Opened {
  const read = worksheetFromFileText(readText(path), recordKey);
  if (!read.ok)
    throw new FileError(
      `${path}: ${read.problems.map((problem) => `${problem.path}: ${problem.message}`).join("; ")}`,
    );
  for (const note of read.notes) process.stderr.write(`${path}: ${note}\n`);
  return { worksheet: read.worksheet, records: read.records };
}

function openRain(path: string, unit: "mm" | "in" | null): DailyRecord {
  const result = readRainCsv(readText(path), unit ? { unit } : {});
  if (result.state === "ready") return result.record;
  if (result.state === "refused")
    throw new FileError(`${path}${result.line === null ? "" : `, line ${result.line}`}: ${result.reason}`);
  const asks = result.questions.map((question) => question.text).join(" ");
  throw new FileError(
    `${path}: the file does not say enough. ${asks}${result.questions.some((question) => question.id === "unit") ? " Say --rain-unit mm or in." : ""}`,
  );
}

function withRain(worksheet: Worksheet, record: DailyRecord): Worksheet {
  const weather = worksheet.cards.find((card) => card.id === "weather");
  if (!weather) throw new FileError("The worksheet has no weather card to put the rain on.");
  return setValue(worksheet, CARD_KINDS, "weather.record", record.key);
}

function run(wanted: Wanted): string {
  const opened = openWorksheet(wanted.worksheet);
  const records = [...opened.records];
  let worksheet = opened.worksheet;
  if (wanted.rain !== null) {
    const record = openRain(wanted.rain, wanted.rainUnit);
    records.push(record);
    worksheet = withRain(worksheet, record);
  }
  for (const { name, value } of wanted.sets) worksheet = setValue(worksheet, CARD_KINDS, name, value);
  const whole = workOut(worksheet, CARD_KINDS, records);
  const tried = wanted.tried && triedReport(worksheet, CARD_KINDS, records, wanted.tried);
  if (wanted.json) {
    const report = { ...jsonReport(whole, CARD_KINDS), ...(tried ? { tried: triedJson(tried) } : {}) };
    return `${JSON.stringify(report, null, 2)}\n`;
  }
  return tried ? triedText(tried) : textReport(whole, CARD_KINDS);
}

/** Runs the command line; resolves to the exit code. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    const wanted = readArguments(words);
    process.stdout.write(wanted ? run(wanted) : HELP);
    return 0;
  } catch (error) {
    if (!(error instanceof UsageError) && !(error instanceof FileError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return error instanceof UsageError ? 2 : 1;
  }
}
