// The command line: a worksheet in, a report or one JSON object out. Thin over the same modules as the page.

import { readFileSync } from "node:fs";
import { inForce } from "../document/note-order.ts";
import { questionsOf } from "../document/note-question.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { valueIn } from "../graph/readers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { recordKey } from "../rainfall/record-key.ts";
import { heldAtDepth } from "../scene/dip-level.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import { worksheetFromFileText } from "../storage/file.ts";
import { baseOf } from "../studies/ask.ts";
import { type Whole, workOut } from "../studies/work-out.ts";
import { forecastAsked } from "../telling/from-today.ts";
import type { MeasureName } from "../units/measures.ts";
import { showQuantity } from "../units/show.ts";
import { HELP, readArguments, type Wanted } from "./arguments.ts";
import { fromTodayAnswer, fromTodayReport, fromTodayText } from "./from-today-report.ts";
import { givesOutReport } from "./gives-out-report.ts";
import { momentsText } from "./moments-report.ts";
import { nextMoneyReport, nextMoneyText, priceOffer } from "./next-money-report.ts";
import { notSureReport, notSureText } from "./not-sure-report.ts";
import { layPlan, planText } from "./plan-report.ts";
import { openRain } from "./rain.ts";
import { fullReport, jsonReport } from "./report.ts";
import { withSets } from "./seen.ts";
import { writeSeries } from "./series.ts";
import { setValue } from "./set-value.ts";
import { shortReport } from "./short-report.ts";
import { triedJson, triedReport, triedText } from "./try-report.ts";
import { unreckonedOf } from "./unreckoned-notes.ts";
import { FileError, UsageError } from "./usage.ts";
import { workedBackReport, workedBackText } from "./work-back-report.ts";

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

function withRain(worksheet: Worksheet, record: DailyRecord): Worksheet {
  const weather = worksheet.cards.find((card) => card.id === "weather");
  if (!weather) throw new FileError("The worksheet has no weather card to put the rain on.");
  return setValue(worksheet, CARD_KINDS, "weather.record", record.key);
}

/** Notes and rain that can hardly be right are told, which are asked about where somebody can choose, and those that change nothing. */
function tellDoubtfulNotes({ worksheet, results }: Whole): void {
  const options = { ...worksheet, rounded: true };
  const value = (id: string) => valueIn(results.get(id));
  const today = String(value("site.today") ?? "");
  const show = (si: number, measure: MeasureName) => showQuantity(si, measure, options);
  const notes = inForce(worksheet.notes ?? []);
  const told = [
    ...questionsOf({ worksheet, value, today, show, now: null, held: heldAtDepth }, notes),
    ...unreckonedOf(CARD_KINDS, worksheet, notes),
    ...forecastAsked((value("season.week_given") as WeekGiven | null)?.forecast ?? {}, show),
  ];
  for (const said of told) process.stderr.write(`${said}\n`);
}

async function run(wanted: Wanted): Promise<string> {
  const opened = openWorksheet(wanted.worksheet);
  const records = [...opened.records];
  const plan = wanted.plan === null ? null : layPlan(opened.worksheet, CARD_KINDS, wanted.plan);
  let worksheet = plan?.worksheet ?? opened.worksheet;
  if (wanted.rain !== null) {
    const record = await openRain(wanted.rain);
    records.push(record);
    worksheet = withRain(worksheet, record);
  }
  worksheet = withSets(worksheet, wanted);
  for (const { name, value } of wanted.offers) worksheet = priceOffer(worksheet, CARD_KINDS, name, value);
  const whole = workOut(worksheet, CARD_KINDS, records);
  tellDoubtfulNotes(whole);
  if (wanted.series !== null) writeSeries(wanted.series, whole, records);
  const tried = wanted.tried && triedReport(worksheet, CARD_KINDS, records, wanted.tried);
  const workedBack =
    wanted.workingBack &&
    (await workedBackReport(baseOf(worksheet, CARD_KINDS, records), CARD_KINDS, wanted.workingBack));
  const out = wanted.givesOut ? givesOutReport(worksheet, CARD_KINDS, records, whole) : null;
  const ahead = wanted.fromToday && fromTodayAnswer(whole, records);
  const money =
    wanted.nextMoney === null
      ? null
      : await nextMoneyReport(baseOf(worksheet, CARD_KINDS, records), CARD_KINDS, whole, wanted.nextMoney);
  const unsure = wanted.notSure && notSureReport(worksheet, CARD_KINDS, records, wanted.notSure);
  if (wanted.json) {
    const report = {
      ...jsonReport(whole, CARD_KINDS),
      ...(plan ? { plan: plan.report } : {}),
      ...(tried ? { tried: triedJson(tried) } : {}),
      ...(workedBack ? { worked_back: workedBack } : {}),
      ...out,
      ...(ahead ? { from_today: fromTodayReport(whole, ahead) } : {}),
      ...money,
      ...unsure,
    };
    return `${JSON.stringify(report, null, 2)}\n`;
  }
  const head = plan ? planText(plan.report) : "";
  if (ahead) return head + fromTodayText(whole, ahead);
  if (out) return `${head}${out.gives_out_said}\n`;
  if (money) return head + nextMoneyText(money);
  if (unsure) return head + notSureText(worksheet, CARD_KINDS, unsure);
  if (workedBack && wanted.workingBack) return head + workedBackText(wanted.workingBack, workedBack);
  return (
    head +
    (tried
      ? triedText(tried)
      : wanted.all
        ? fullReport(whole, CARD_KINDS) + momentsText(whole, records, wanted.today)
        : shortReport(whole, CARD_KINDS))
  );
}

/** Runs the command line; resolves to the exit code. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    const wanted = readArguments(words);
    process.stdout.write(wanted ? await run(wanted) : HELP);
    return 0;
  } catch (error) {
    if (!(error instanceof UsageError) && !(error instanceof FileError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return error instanceof UsageError ? 2 : 1;
  }
}
