// From readings as met to readings in the order of days: settles day and month, and sorts where the file did not.
import { DAYS_A_YEAR } from "../units/constants.ts";
import { type Question, Refusal } from "./import-result.ts";
import type { Intake } from "./intake.ts";
import { unpackDate } from "./read-date.ts";
import type { Readings } from "./readings.ts";

type Order = "dmy" | "mdy";

/** A record longer than this is a misread date, and would fill the memory with missing days. */
const LONGEST_SPAN_YEARS = 400;

const ORDER_QUESTION: Question = {
  id: "date_order",
  text: "Is the day or the month first in its dates? Both can be read as a day of the calendar.",
  options: [
    { value: "dmy", label: "day first: 3/4 is 3 April" },
    { value: "mdy", label: "month first: 3/4 is 4 March" },
  ],
  likely: null,
};

/** First line at which a packed date is no day under the order, or null. */
function firstClash(readings: Readings, order: Order): { line: number; words: string } | null {
  for (let at = 0; at < readings.count; at++) {
    const packed = readings.day[at] ?? 0;
    if (Number.isNaN(unpackDate(packed, order))) {
      const words = `${Math.floor(packed / 100) % 100}/${packed % 100}/${Math.floor(packed / 10_000)}`;
      return { line: readings.line[at] ?? 0, words };
    }
  }
  return null;
}

/** How many rows follow the one before by one day: a daily record under its true order has most. */
function steps(readings: Readings, order: Order): number {
  let count = 0;
  for (let at = 1; at < readings.count; at++) {
    const step = unpackDate(readings.day[at] ?? 0, order) - unpackDate(readings.day[at - 1] ?? 0, order);
    if (step === 1) count++;
  }
  return count;
}

/** The order of day and month: chosen, told by the dates themselves, or a question. */
export function dateOrder(readings: Readings, chosen: Order | undefined, dotted: boolean): Order | Question {
  if (chosen) {
    const clash = firstClash(readings, chosen);
    if (clash) throw new Refusal(`"${clash.words}" is no day of the calendar in that order.`, clash.line);
    return chosen;
  }
  const dayFirst = firstClash(readings, "dmy");
  const monthFirst = firstClash(readings, "mdy");
  if (dayFirst && monthFirst) {
    const later = dayFirst.line > monthFirst.line ? dayFirst : monthFirst;
    throw new Refusal(
      `"${later.words}" is no day of the calendar in the order of the rows before it.`,
      later.line,
    );
  }
  if (dayFirst) return "mdy";
  if (monthFirst || dotted) return "dmy";
  const [byDay, byMonth] = [steps(readings, "dmy"), steps(readings, "mdy")];
  return { ...ORDER_QUESTION, likely: byDay === byMonth ? null : byDay > byMonth ? "dmy" : "mdy" };
}

/** Turns packed dates into day numbers in place. */
export function unpackDates(intake: Intake, order: Order): void {
  const logs = [intake.readings, ...intake.extras.values()];
  for (const log of logs) {
    for (let at = 0; at < log.count; at++) log.day[at] = unpackDate(log.day[at] ?? 0, order);
  }
}

/** Order of readings by day and time, those of one moment as they stand in the file; null where already so. */
export function readingOrder(readings: Readings): Uint32Array | null {
  const { day, minute, count } = readings;
  let sorted = true;
  for (let at = 1; at < count && sorted; at++) {
    const step = (day[at] ?? 0) - (day[at - 1] ?? 0);
    sorted = step > 0 || (step === 0 && (minute[at] ?? 0) >= (minute[at - 1] ?? 0));
  }
  if (sorted) return null;
  const order = new Uint32Array(count);
  for (let at = 0; at < count; at++) order[at] = at;
  return order.sort((a, b) => (day[a] ?? 0) - (day[b] ?? 0) || (minute[a] ?? 0) - (minute[b] ?? 0) || a - b);
}

/** First and last day, checked for a span that some record could have. */
export function dayRange(readings: Readings): { first: number; last: number } {
  let [first, last, line] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let at = 0; at < readings.count; at++) {
    const day = readings.day[at] ?? 0;
    const before = last - first;
    first = Math.min(first, day);
    last = Math.max(last, day);
    const limit = LONGEST_SPAN_YEARS * DAYS_A_YEAR;
    if (last - first > limit && !(before > limit)) line = readings.line[at] ?? 0;
  }
  if (line)
    throw new Refusal(`The dates span more than ${LONGEST_SPAN_YEARS} years; one of them is misread.`, line);
  return { first, last };
}
