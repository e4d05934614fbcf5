// The end of an import: questions still open, or a record with its report.
import type { Choices, ImportReport, ImportResult, Question } from "./import-result.ts";
import { Refusal } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { METRES_OF, unitQuestion } from "./rain-units.ts";
import { makeRecord } from "./record-key.ts";
import { dateOrder, dayRange, unpackDates } from "./settle-dates.ts";
import { type SettledDays, settleDays } from "./settle-days.ts";
import { extrasOf, temperatureOf } from "./settle-extras.ts";
import { runsOf, yearTotals } from "./statistics.ts";

/** More than fell on any day on record (1.825 m, Foc-Foc, Reunion, 1966; from memory) [m]. */
const MOST_RAIN_IN_A_DAY = 1.9;
/** Stands for a missing value in files in inches, where it cannot be an amount. */
const INCH_CODE = 99.99;
const MOST_STATIONS_SHOWN = 100;

export type ImportNames = { readonly title: string; readonly source: string; readonly madeUp: boolean };

export type Preview = ImportReport["preview"];

function stationQuestion(intake: Intake, choices: Choices): Question | null {
  const names = [...intake.stations.counts.keys()];
  if (names.length < 2) return null;
  if (choices.station !== undefined && names.includes(choices.station.trim())) return null;
  return {
    id: "station",
    text: `The file holds ${names.length} stations. Which one?`,
    options: names.slice(0, MOST_STATIONS_SHOWN).map((name) => ({ value: name, label: name })),
    likely: null,
  };
}

const MINUS_ONE_QUESTION: Question = {
  id: "minus_one",
  text: "What does -1 stand for in the rain column?",
  options: [
    { value: "trace", label: "a trace: some rain, too little to measure" },
    { value: "missing", label: "a missing reading" },
  ],
  likely: "trace",
};

/** Marks the days whose reading was -1 as missing where the user says so. */
function applyMinusOne(intake: Intake, choices: Choices): void {
  if (choices.minus_one !== "missing") return;
  for (const [at, mark] of intake.readings.mark) if (mark === 4) intake.readings.rain[at] = Number.NaN;
}

type Unit = ImportReport["unit"];

function unitOf(format: FormatReader, intake: Intake, choices: Choices): Unit {
  if (choices.unit) return { value: choices.unit, told: "choice" };
  if (format.unit) return { value: format.unit, told: format.unitTold };
  if (format.tenthsIfWhole && !intake.withDecimals) return { value: "tenth_mm", told: "format" };
  return { value: null, told: null };
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

function openQuestions(format: FormatReader, intake: Intake, choices: Choices): Question[] {
  const station = stationQuestion(intake, choices);
  const minusOne =
    intake.minusOnes > 0 && !choices.minus_one && [...intake.readings.mark.values()].includes(4);
  return [...format.questions, ...(station ? [station] : []), ...(minusOne ? [MINUS_ONE_QUESTION] : [])];
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
    years: [],
    notes: [...format.notes, ...intake.notes],
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
    years: rain ? yearTotals({ firstDay, rain }) : [],
  };
}

function closingNotes(temperature: ImportReport["temperatureUnit"], crossed: number): string[] {
  const notes: string[] = [];
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
  const questions = openQuestions(format, intake, choices);
  const unit = unitOf(format, intake, choices);
  const shift = choices.day_shift ?? format.dayRule.shift;
  const base = baseReport(format, intake, preview, unit, shift);
  if (format.packedDates) {
    const order = dateOrder(intake.readings, choices.date_order, format.dottedDates);
    if (typeof order !== "string") {
      const amounts = intake.readings.rain.subarray(0, intake.readings.count);
      const also = unit.value ? [] : [unitQuestion(amounts, intake.withDecimals)];
      return { state: "ask", questions: [...questions, order, ...also], report: base };
    }
    unpackDates(intake, order);
  }
  applyMinusOne(intake, choices);
  const days = settleDays(intake, format, choices, dayRange(intake.readings));
  const firstDay = days.first + shift;
  if (!unit.value) questions.push(unitQuestion(days.rain, intake.withDecimals));
  if (questions.length || !unit.value)
    return { state: "ask", questions, report: daysReport(base, days, firstDay, null) };
  return readyRecord({ format, intake, choices, base, days, firstDay, unit: unit.value, names });
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
      notes: [...settled.notes, ...closingNotes(temperature, crossed)],
    },
  };
}
