// How long it lasts from today, in one sentence, and what that rests on.

import type { FromToday, Odds } from "../season/from-today.ts";
import { MANY_YEARS } from "../season/years-ahead.ts";
import { calendarDate } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { listed } from "./words/lists.ts";

/** "Aug 3". */
function dayWords(date: number): string {
  const { month, day } = calendarDate(date);
  return `${SHORT_MONTHS[month - 1]} ${day}`;
}

const WORDS = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const counted = (count: number): string => WORDS[count] ?? String(count);

const toEnd = (date: number | null): string => (date === null ? "the season's end" : dayWords(date));

/** Rank of the day that is named as one in ten. */
const worstOf = ({ members }: Odds): number => Math.max(1, Math.floor((members + 1) / 10 + 1e-9));

const SHORT_NOW = "A bed is short today, whatever the weather.";
const isNow = (days: readonly (number | null)[], today: number) => days.every((day) => day === today);

function oddsSaid(odds: Odds, today: number): string {
  const { members, short, ahead } = odds;
  if (
    isNow(
      ahead.map((run) => run.short),
      today,
    )
  )
    return SHORT_NOW;
  const worst = worstOf(odds);
  const ends = ahead.filter((run) => run.short === null).length;
  const middle = `Lasts to ${toEnd(short.half)} in a middling year.`;
  if (ends === members) return "Lasts to the season's end in every year of the record.";
  const name = worst === 1 ? `the worst of ${members}` : `the ${counted(worst)} worst of ${members}`;
  const low =
    short.oneInTen === null
      ? `In ${members - ends} of ${members} it does not`
      : `In ${name} to ${dayWords(short.oneInTen)}`;
  return `${middle} ${low}; in ${counted(ends)} to the end.`;
}

/** "Lasts to Aug 3 in a middling year. In the two worst of 20 to Jul 24; in four to the end." */
export function lastsSaid(from: FromToday): string {
  if (from.kind === "out_of_season") return "Today lies outside the season.";
  if (from.kind === "odds") return oddsSaid(from, from.today);
  const { usual, dry } = from;
  if (isNow([usual.short, dry.short], from.today)) return SHORT_NOW;
  if (dry.short === null) return "Lasts to the season's end, even without rain.";
  const usually = usual.short === null ? "the season's end" : `about ${dayWords(usual.short)}`;
  return `Lasts to ${usually} in usual weather, to ${dayWords(dry.short)} without rain.`;
}

/** What the answer rests on, a sentence each. */
export function restsOn(from: FromToday, titleOf: (id: string) => string): readonly string[] {
  const { tanks, beds, batteries } = from.assumed;
  const parts = [...tanks, ...beds, ...batteries].map(titleOf);
  const assumed =
    parts.length === 0
      ? []
      : [`Not noted lately, so taken as on this day in a middling year: ${listed(parts)}.`];
  if (from.kind === "usual_and_dry")
    return ["The weather is made up, so it tells no odds: one usual run and one without rain.", ...assumed];
  if (from.kind !== "odds") return assumed;
  const few =
    from.years < MANY_YEARS
      ? [
          `Only ${from.years === 1 ? "one year of weather is" : `${counted(from.years)} years of weather are`} known: each counts five times, shifted by up to ten days either way, and the odds are rough.`,
        ]
      : [];
  return [...few, ...assumed];
}
