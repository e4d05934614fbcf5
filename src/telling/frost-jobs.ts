// What is to be done before the first frost, and by which day.

import type { FrostJob, Words } from "../graph/words.ts";
import type { FirstFrosts } from "../season/first-frost.ts";
import { calendarDate, dayInYear, parseMonthDay } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";

/** What is known of first frosts here. */
export type Frosts =
  | { readonly from: "grower"; readonly day: string }
  | ({ readonly from: "record"; readonly madeUp: boolean } & FirstFrosts)
  | { readonly from: "nothing" };

function dayWords(text: string): string {
  const parsed = parseMonthDay(text);
  return parsed ? dayName(parsed) : text;
}

const SOONER = "On the ground and in a hollow it freezes sooner than in the record's air.";

/** By which day, and how that is known. */
export function frostSaid(frosts: Frosts): string {
  if (frosts.from === "nothing")
    return "The record does not tell how cold its nights were: say on The sky when it first freezes here.";
  if (frosts.from === "grower") return `By ${dayWords(frosts.day)}, the first frost as you know it.`;
  const { oneInTen, winters, frozen, sooner, madeUp } = frosts;
  if (oneInTen === null)
    return `It froze in ${frozen} of ${winters} winters on record: watch the forecast. ${SOONER}`;
  const day = dayWords(oneInTen);
  if (madeUp)
    return `By about ${day}, in made-up weather: say on The sky when it first freezes here. ${SOONER}`;
  const known =
    winters === 1
      ? `it froze that day in the one winter on record`
      : sooner === 0
        ? `in ${winters} winters on record it never froze sooner`
        : `in ${sooner} of ${winters} winters on record it froze sooner`;
  return `By ${day}: ${known}. ${SOONER}`;
}

/** `MM-DD`, or null where no day is known. */
const frostDay = (frosts: Frosts): string | null =>
  frosts.from === "nothing" ? null : frosts.from === "grower" ? frosts.day : frosts.oneInTen;

/** Jobs are done for a winter from so many days before its first frost on: our definition. */
const BEFORE = 120;

/** From which day on a part that was drained is drained for the coming winter, or the one that it is. */
export function doneSince(frosts: Frosts, today: number): number {
  const day = frostDay(frosts);
  if (day === null) return today - BEFORE;
  const { year } = calendarDate(today);
  const coming = [year - 1, year, year + 1].map((one) => (dayInYear(day, one) ?? today) - BEFORE);
  return Math.max(...coming.filter((from) => from <= today));
}

type Part = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  /** Link rows that lead somewhere. */
  readonly linked: ReadonlySet<string>;
};

export type FrostTask = Pick<FrostJob, "text" | "source"> & { readonly id: string; readonly title: string };

/** What is to be done with each part of the sheet that frost can hurt, in the order of the sheet. */
export const frostTasks = (parts: readonly Part[], words: Words): readonly FrostTask[] =>
  parts.flatMap(({ id, kind, title, linked }) => {
    const job = words[kind]?.frost;
    if (!job || (job.ifLinked !== undefined && !linked.has(job.ifLinked))) return [];
    return [{ id, title, text: job.text, source: job.source }];
  });
