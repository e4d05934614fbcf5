// The end of an import: questions still open, or a record with its report.

import { dropGapCodes } from "./gap-codes.ts";
import type { Choices, ImportReport, ImportResult, Question } from "./import-result.ts";
import { Refusal } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { openQuestions, unanswered } from "./open-questions.ts";
import { rainFigures } from "./rain-figures.ts";
import { METRES_OF, unitQuestion } from "./rain-units.ts";
import { makeRecord } from "./record-key.ts";
import { dateOrder, dayRange, unpackDates } from "./settle-dates.ts";
import { type SettledDays, settleDays } from "./settle-days.ts";
import { extrasOf, temperatureOf } from "./settle-extras.ts";
import { settleCentury } from "./short-years.ts";
import { runsOf, yearTotals } from "./statistics.ts";

/** More than fell on any day on record (1.825 m, Foc-Foc, Reunion, 1966; from memory) [m]. */
const MOST_RAIN_IN_A_DAY = 1.9;
/** Stands for a missing value in files in inches, where it cannot be an amount. */
const INCH_CODE = 99.99;
export type ImportNames = { readonly title: string; readonly source: string; readonly madeUp: boolean };

export type Preview = ImportReport["preview"];

/** Marks the days whose reading was -1 as missing where the user says so. */
function applyMinusOne(intake: Intake, choices: Choices): void {
  if (choices.minus_one !== "missing") return;
  for (const [at, mark] of intake.readings.mark) if (mark === 4) intake.readings.rain[at] = Number.NaN;
}

type Unit = ImportReport["unit"];

function toldUnit(format: FormatReader, intake: Intake): Unit | null {
  const { unit: said } = intake;
  if (said && format.unit && said !== format.unit)
    throw new Refusal("Its cells and its header say different units.", null);
  if (format.unit) return { value: format.unit, told: format.unitTold };
  if (said) return { value: said, told: "cells" };
  return format.tenthsIfWhole && !intake.withDecimals ? { value: "tenth_mm", told: "format" } : null;
}

function unitOf(format: FormatReader, intake: Intake, choices: Choices): Unit {
  if (choices.unit) return { value: choices.unit, told: "choice" };
  return toldUnit(format, intake) ?? { value: null, told: null };
}

function rainInMetres(days: SettledDays, intake: Intake, unit: NonNullable<Unit["value"]>): Float64Array {
  const factor = METRES_OF[unit];
  const rain = days.rain.map((value) => {
    if (unit === "in" && value === INCH_CODE) {
      intake.codes.add(String(INCH_CODE));
      return Number.NaN;
    }
    return value * factor;
  });
  const worst = rain.findIndex((value) => value > MOST_RAIN_IN_A_DAY);
  if (worst >= 0) {
    const at = intake.readings.day.indexOf(days.first + worst);
    const amount = days.rain[worst] ?? 0;
    throw new Refusal(
      `${amount} would be more rain than ever fell in a day; is the unit right?`,
      intake.readings.line[at] ?? null,
    );
  }
  return rain;
}

function baseReport(
  format: FormatReader,
  intake: Intake,
  preview: Preview,
  unit: Unit,
  shift: number,
): ImportReport {
  return {
    format: { id: format.id, name: format.name },
    preview,
    rows: intake.readings.count,
    days: 0,
    firstDay: null,
    lastDay: null,
    sorted: true,
    gaps: [],
    missingDays: 0,
    duplicates: null,
    unit,
    temperatureUnit: null,
    columns: format.columns,
    dayRule: { text: format.dayRule.text, shift },
    traces: 0,
    missingCodes: [...intake.codes.counts].map(([code, count]) => ({ code, count })),
    flagged: [...intake.flags].map(([flag, { count, done }]) => ({ flag, count, done })),
    multiDay: null,
    withinDay: null,
    absent: null,
    years: [],
    notes: [...format.notes, ...intake.notes],
    open: [],
    rain: null,
  };
}

function daysReport(
  base: ImportReport,
  days: SettledDays,
  firstDay: number,
  rain: Float64Array | null,
): ImportReport {
  const gaps = runsOf(rain ?? days.rain, firstDay, (value) => Number.isNaN(value));
  return {
    ...base,
    days: days.rain.length,
    firstDay,
    lastDay: firstDay + days.rain.length - 1,
    sorted: days.sorted,
    gaps,
    missingDays: gaps.reduce((sum, gap) => sum + gap.days, 0),
    duplicates: days.duplicates,
    traces: days.traces,
    multiDay: days.multiDay,
    withinDay: days.withinDay,
    absent: days.absent.onlyWet && days.absent.days > 0 ? days.absent : null,
    years: rain ? yearTotals({ firstDay, rain }) : [],
    rain: rain ? rainFigures({ firstDay, rain }) : null,
  };
}

function closingNotes(
  intake: Intake,
  temperature: ImportReport["temperatureUnit"],
  crossed: number,
): string[] {
  const notes: string[] = [];
  if (intake.wavering) notes.push(`Amounts a little under nought, ${intake.wavering}, are taken as no rain.`);
  if (temperature?.told === "guess") {
    notes.push(
      `The temperatures are taken as ${temperature.value === "F" ? "Fahrenheit" : "Celsius"} by their size; no header tells.`,
    );
  }
  if (crossed)
    notes.push(
      `On ${crossed} days the lowest temperature stood above the highest; both are taken as missing.`,
    );
  return notes;
}

/** Settles what was read into a record, or into the questions that stand in its way. */
export function settleRecord(
  format: FormatReader,
  intake: Intake,
  choices: Choices,
  preview: Preview,
  names: ImportNames,
): ImportResult {
  format.finish();
  if (intake.readings.count === 0) throw new Refusal("No row holds both a date and an amount of rain.", null);
  const unit = unitOf(format, intake, choices);
  const shift = choices.day_shift ?? format.dayRule.shift;
  const base = baseReport(format, intake, preview, unit, shift);
  const order = settleOrder(format, intake, choices);
  if (!order.isSettled) {
    const open = [...format.questions, ...order.open, ...unitBeforeDays(intake, unit)];
    return { state: "ask", questions: unanswered(open, choices), report: { ...base, open } };
  }
  if (format.shortYears && !format.packedDates) settleCentury(intake, false);
  applyMinusOne(intake, choices);
  dropGapCodes(intake);
  dayRange(intake.readings);
  const { days, as } = settleDays(intake, format, choices);
  const firstDay = days.first + shift;
  const isUnitOpen = unit.told === null || (unit.told === "choice" && toldUnit(format, intake) === null);
  const open = [...order.open, ...openQuestions({ format, intake, days, as, unit: unit.value, isUnitOpen })];
  const questions = unanswered(open, choices);
  const report = { ...base, open };
  if (questions.length || !unit.value)
    return { state: "ask", questions, report: daysReport(report, days, firstDay, null) };
  return readyRecord({ format, intake, choices, base: report, days, firstDay, unit: unit.value, names });
}

/** Settles the order of day and month where it is told or chosen, and gives the question that it is otherwise. */
function settleOrder(
  format: FormatReader,
  intake: Intake,
  choices: Choices,
): { readonly open: readonly Question[]; readonly isSettled: boolean } {
  if (!format.packedDates) return { open: [], isSettled: true };
  if (format.shortYears) settleCentury(intake, true);
  const { readings } = intake;
  const order = dateOrder(readings, choices.date_order, format.dottedDates);
  if (typeof order !== "string") return { open: [order], isSettled: false };
  const other = choices.date_order ? dateOrder(readings, undefined, format.dottedDates) : order;
  unpackDates(intake, order);
  return { open: typeof other === "string" ? [] : [other], isSettled: true };
}

function unitBeforeDays(intake: Intake, unit: Unit): Question[] {
  if (unit.value) return [];
  return [unitQuestion(intake.readings.rain.subarray(0, intake.readings.count), intake.withDecimals)];
}

type Ready = {
  readonly format: FormatReader;
  readonly intake: Intake;
  readonly choices: Choices;
  readonly base: ImportReport;
  readonly days: SettledDays;
  readonly firstDay: number;
  readonly unit: NonNullable<Unit["value"]>;
  readonly names: ImportNames;
};

function readyRecord({ format, intake, choices, base, days, firstDay, unit, names }: Ready): ImportResult {
  const rain = rainInMetres(days, intake, unit);
  const temperature = temperatureOf(format, intake, choices, base.unit);
  const { columns, crossed } = extrasOf(intake, firstDay, rain.length, temperature);
  const record = makeRecord({ ...names, firstDay, rain, ...columns });
  const settled = daysReport(base, days, firstDay, rain);
  return {
    state: "ready",
    record,
    report: {
      ...settled,
      temperatureUnit: temperature,
      missingCodes: [...intake.codes.counts].map(([code, count]) => ({ code, count })),
      notes: [...format.notes, ...intake.notes, ...closingNotes(intake, temperature, crossed)],
    },
  };
}
