// What a file leaves open, each answer beside the yearly rain that it would give where that can be told.
import { DAYS_A_YEAR } from "../units/constants.ts";
import type { Choices, Question, RainUnit } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { yearlyRate } from "./rain-figures.ts";
import { likelyUnit, METRES_OF, unitQuestion } from "./rain-units.ts";
import type { DayAmounts, SettledDays } from "./settle-days.ts";
import { ALL_ROWS } from "./telling-apart.ts";
import { type Rows, rowsQuestion } from "./within-day.ts";

const MOST_STATIONS_SHOWN = 100;
/** A file of wet days alone leaves more than this share of its days without a row; common practice, no source. */
const ABSENT_SHARE = 0.2;
const LEAST_ROWS = 10;

/** Hours of the day, or which half of it. */
const PART_OF_DAY = /^([01]?\d|2[0-4])$|^[ap]\.?m\.?$|^(morning|noon|afternoon|evening|night)$/i;

/** A column that tells rows of one moment apart by no name of stations: gauges, or parts of the day. */
function apartQuestion(header: string, names: readonly string[]): Question {
  const areParts = names.length > 2 && names.every((name) => PART_OF_DAY.test(name));
  return {
    id: "station",
    text: `Each day has a row for each "${header}". Which of them is the gauge you want?`,
    options: [
      ...names.slice(0, MOST_STATIONS_SHOWN).map((name) => ({ value: name, label: `only ${name}` })),
      { value: ALL_ROWS, label: "they are parts of one day: every row counts" },
    ],
    likely: areParts ? ALL_ROWS : null,
  };
}

function stationQuestion({ apartBy }: FormatReader, intake: Intake): Question | null {
  const names = [...intake.stations.counts.keys()];
  if (names.length < 2) return null;
  if (apartBy !== null) return apartQuestion(apartBy, names);
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

function absentQuestion(days: SettledDays, perUnit: number): Question | null {
  const { absent, rain, rows } = days;
  const isOpen = absent.onlyWet && rows.reading === "day" && absent.withRow >= LEAST_ROWS;
  if (!isOpen || absent.days < rain.length * ABSENT_SHARE) return null;
  const sum = rain.reduce((total, value) => total + (Number.isNaN(value) ? 0 : value), 0);
  const rate = (over: number) => (over > 0 ? (sum / over) * DAYS_A_YEAR * perUnit : null);
  const read = rain.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  const missing = absent.areDry ? rain.length - absent.days : read;
  return {
    id: "absent",
    text: "The file only tells of days on which it rained. What of the days of which it says nothing?",
    options: [
      { value: "dry", label: "no rain fell", yearly: rate(absent.areDry ? read : read + absent.days) },
      { value: "missing", label: "nobody read the gauge", yearly: rate(missing) },
    ],
    likely: "dry",
  };
}

/** The unit that amounts stand in until the user has said it. */
function metresOf(unit: RainUnit | null, days: SettledDays, intake: Intake): number {
  return METRES_OF[unit ?? likelyUnit(days.rain, intake.withDecimals)];
}

export type Open = {
  readonly format: FormatReader;
  readonly intake: Intake;
  readonly days: SettledDays;
  /** The days as another reading of the rows would give them. */
  readonly as: (reading: Rows) => DayAmounts;
  readonly unit: RainUnit | null;
  /** Told by nothing but the user. */
  readonly isUnitOpen: boolean;
};

/** Everything open once the dates are known, answered or not. */
export function openQuestions({ format, intake, days, as, unit, isUnitOpen }: Open): readonly Question[] {
  const perUnit = metresOf(unit, days, intake);
  const yearly = (reading: Rows): number | null => {
    const rate = yearlyRate(as(reading).rain);
    return rate === null ? null : rate * perUnit;
  };
  const isMinusOneOpen = intake.minusOnes > 0 && [...intake.readings.mark.values()].includes(4);
  return [
    ...format.questions,
    stationQuestion(format, intake),
    isMinusOneOpen ? MINUS_ONE_QUESTION : null,
    isUnitOpen ? unitQuestion(days.rain, intake.withDecimals) : null,
    days.rows.open.length > 1 ? rowsQuestion(days.rows.open, yearly) : null,
    absentQuestion(days, perUnit),
  ].filter((question) => question !== null);
}

/** Those of them that no choice answers. */
export function unanswered(open: readonly Question[], choices: Choices): Question[] {
  return open.filter(({ id, options }) => {
    if (id === "year" || id === "between") return true;
    const answer = choices[id];
    if (answer === undefined) return true;
    return id === "station" && !options.some(({ value }) => value === String(answer).trim());
  });
}
