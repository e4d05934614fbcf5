// Readings of one's own gauge, typed or pasted, a line each: "12 Mar 0.4 in", "2024-03-12 10 mm", "3/14 trace".
import { calendarDate } from "../units/calendar.ts";
import { checkedGaugeChoices } from "./check-choices.ts";
import { type GaugeChoices, type Question, type RainUnit, Refusal } from "./import-result.ts";
import { METRES_OF } from "./rain-units.ts";
import { readNumber, TRACE, UNREADABLE } from "./read-cell.ts";
import { checkedDay, dateReader, dateShape, monthOfName, unpackDate } from "./read-date.ts";
import type { DailyRecord } from "./record.ts";
import { makeRecord } from "./record-key.ts";

export type GaugeResult =
  | {
      readonly state: "ready";
      readonly record: DailyRecord;
      readonly readings: number;
      readonly traces: number;
      readonly notes: readonly string[];
    }
  | { readonly state: "ask"; readonly questions: readonly Question[] }
  | { readonly state: "refused"; readonly reason: string; readonly line: number | null };

type Line = {
  readonly number: number;
  readonly date: string;
  readonly amount: string;
  readonly unit: RainUnit | null;
};

const AMOUNT =
  /[\s,;:=]+((?:\d+(?:[.,]\d+)?|[.,]\d+)|t|tr|trace|nil|none|dry)\s*(mm|millimet(?:re|er)s?|cm|in|ins|inch|inches|"|″)?\s*\.?$/i;
const DAY_AND_WORD = /^(\d{1,2})(?:st|nd|rd|th)?[\s.\-/]*([a-z]{3,9})\.?$/i;
const WORD_AND_DAY = /^([a-z]{3,9})\.?[\s.\-/]*(\d{1,2})(?:st|nd|rd|th)?$/i;
const TWO_NUMBERS = /^(\d{1,2})[-/.](\d{1,2})\.?$/;
const MOST_LINES = 50_000;
const LONGEST_SPAN = 150_000;

function unitOfWord(word: string | undefined): RainUnit | null {
  if (!word) return null;
  if (/^mm|^milli/i.test(word)) return "mm";
  return /^cm/i.test(word) ? "cm" : "in";
}

function readLines(text: string): Line[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES)
    throw new Refusal(`More than ${MOST_LINES} lines; bring a long record as a file.`, MOST_LINES);
  return lines.flatMap((raw, at) => {
    const line = raw.slice(0, 200).trim();
    if (line === "" || line.startsWith("#")) return [];
    const match = AMOUNT.exec(line);
    if (!match)
      throw new Refusal(`"${line.slice(0, 40)}" has no date and amount, such as "12 Mar 0.4 in".`, at + 1);
    return [
      {
        number: at + 1,
        date: line.slice(0, match.index).trim(),
        amount: match[1] ?? "",
        unit: unitOfWord(match[2]),
      },
    ];
  });
}

/** A date as far as its own text tells it: a day, a packed date of open order, or month and day without a year. */
type Dated =
  | { readonly kind: "day"; readonly day: number }
  | { readonly kind: "packed"; readonly packed: number }
  | {
      readonly kind: "month_day";
      readonly first: number;
      readonly second: number;
      readonly ordered: boolean;
    };

function datedOf(line: Line): Dated {
  const { date } = line;
  const shape = dateShape(date);
  if (shape) {
    const value = dateReader(shape)(date);
    if (!Number.isNaN(value))
      return shape === "slash" ? { kind: "packed", packed: value } : { kind: "day", day: value };
  }
  const two = TWO_NUMBERS.exec(date);
  if (two) return { kind: "month_day", first: Number(two[1]), second: Number(two[2]), ordered: false };
  const dayFirst = DAY_AND_WORD.exec(date);
  const monthFirst = WORD_AND_DAY.exec(date);
  const month = monthOfName(dayFirst?.[2] ?? monthFirst?.[1] ?? "");
  const day = Number(dayFirst?.[1] ?? monthFirst?.[2]);
  if (month && day) return { kind: "month_day", first: day, second: month, ordered: true };
  throw new Refusal(`"${date.slice(0, 40)}" is no date, or no day of the calendar.`, line.number);
}

function openQuestions(lines: readonly Line[], dates: readonly Dated[], choices: GaugeChoices): Question[] {
  const questions: Question[] = [];
  const unordered = dates.some(
    (date) => date.kind === "packed" || (date.kind === "month_day" && !date.ordered),
  );
  if (unordered && !choices.date_order) {
    const options = [
      { value: "dmy", label: "day first: 3/4 is 3 April" },
      { value: "mdy", label: "month first: 3/4 is 4 March" },
    ];
    questions.push({ id: "date_order", text: "Is the day or the month first?", options, likely: null });
  }
  if (dates.some((date) => date.kind === "month_day") && choices.year === undefined) {
    questions.push({ id: "year", text: "Which year is the first line of?", options: [], likely: null });
  }
  if (!choices.unit && lines.some((line) => !line.unit && /\d*[1-9]/.test(line.amount))) {
    const options = [
      { value: "mm", label: "millimetres" },
      { value: "in", label: "inches" },
    ];
    questions.push({ id: "unit", text: "In which unit are the amounts without one?", options, likely: null });
  }
  if (!choices.between) {
    const options = [
      { value: "zero", label: "no rain fell" },
      { value: "missing", label: "the gauge was not read" },
    ];
    questions.push({
      id: "between",
      text: "What of the days between that have no line?",
      options,
      likely: "zero",
    });
  }
  return questions;
}

type MonthDay = Extract<Dated, { kind: "month_day" }>;

function monthAndDay(date: MonthDay, order: "dmy" | "mdy"): { readonly month: number; readonly day: number } {
  const monthFirst = !date.ordered && order === "mdy";
  return monthFirst ? { month: date.first, day: date.second } : { month: date.second, day: date.first };
}

function fullDay(date: Dated, order: "dmy" | "mdy"): number {
  if (date.kind === "day") return date.day;
  return date.kind === "packed" ? unpackDate(date.packed, order) : Number.NaN;
}

/** Days of all lines; a line without a year takes the year before it, or the next where its month steps back. */
function daysOf(lines: readonly Line[], dates: readonly Dated[], choices: GaugeChoices): number[] {
  const order = choices.date_order ?? "dmy";
  let year = choices.year ?? 0;
  let before = 0;
  return dates.map((date, at) => {
    const months = date.kind === "month_day" ? monthAndDay(date, order) : null;
    if (months && months.month < before) year++;
    const day = months ? checkedDay(year, months.month, months.day) : fullDay(date, order);
    if (Number.isNaN(day)) {
      throw new Refusal(`"${lines[at]?.date}" is no day of the calendar.`, lines[at]?.number ?? null);
    }
    const calendar = calendarDate(day);
    before = calendar.month;
    year = calendar.year;
    return day;
  });
}

function amountOf(line: Line, choices: GaugeChoices): number {
  const value = /^(nil|none|dry)$/i.test(line.amount) ? 0 : readNumber(line.amount, true);
  if (value === TRACE) return 0;
  if (value === UNREADABLE || Number.isNaN(value))
    throw new Refusal(`"${line.amount}" is no amount of rain.`, line.number);
  return value * METRES_OF[line.unit ?? choices.unit ?? "mm"];
}

function settle(lines: readonly Line[], days: readonly number[], choices: GaugeChoices): GaugeResult {
  const [first, last] = [days.reduce((a, b) => Math.min(a, b)), days.reduce((a, b) => Math.max(a, b))];
  if (last - first > LONGEST_SPAN)
    throw new Refusal("The dates span more than 400 years; one of them is misread.", null);
  const rain = new Float64Array(last - first + 1).fill(choices.between === "zero" ? 0 : Number.NaN);
  const seen = new Set<number>();
  let twice = 0;
  lines.forEach((line, at) => {
    const index = (days[at] ?? first) - first;
    const amount = amountOf(line, choices);
    if (seen.has(index)) twice++;
    // Two readings of one day are two emptyings of the gauge.
    rain[index] = (seen.has(index) ? (rain[index] ?? 0) : 0) + amount;
    seen.add(index);
  });
  const record = makeRecord({
    title: choices.title ?? "Own gauge",
    source: `Own gauge readings, ${lines.length} lines; days between ${choices.between === "zero" ? "taken as without rain" : "not read"}`,
    madeUp: false,
    firstDay: first,
    rain,
  });
  const traces = lines.filter((line) => /^t/i.test(line.amount)).length;
  const notes = twice ? [`${twice} lines fall on a day that has one already; their amounts are added.`] : [];
  return { state: "ready", record, readings: lines.length, traces, notes };
}

/** Typed or pasted readings to a record, to the questions that stand in its way, or to a reason with its line. */
export function readOwnGauge(text: string, given: GaugeChoices = {}): GaugeResult {
  try {
    const choices = checkedGaugeChoices(given);
    const lines = readLines(text);
    if (lines.length === 0) return { state: "refused", reason: "There is no reading yet.", line: null };
    const dates = lines.map(datedOf);
    const questions = openQuestions(lines, dates, choices);
    if (questions.length) return { state: "ask", questions };
    return settle(lines, daysOf(lines, dates, choices), choices);
  } catch (problem) {
    if (problem instanceof Refusal) return { state: "refused", reason: problem.message, line: problem.line };
    throw problem;
  }
}
