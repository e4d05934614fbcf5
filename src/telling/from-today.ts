// How long it lasts from today, in one sentence, and what that rests on.

import type { FromToday, Odds } from "../season/from-today.ts";
import { MANY_YEARS } from "../season/years-ahead.ts";
import { calendarDate } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { capital, listed } from "./words/lists.ts";

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

const isShortNow = ({ ahead }: Odds, today: number) =>
  isNow(
    ahead.map((run) => run.short),
    today,
  );

const reaching = ({ ahead }: Odds) => ahead.filter((run) => run.short === null).length;

/** "In the two worst of 20 to Jul 24; in four to the end." */
function worstSaid(odds: Odds): string {
  const { members, short } = odds;
  const worst = worstOf(odds);
  const ends = reaching(odds);
  const name = worst === 1 ? `the worst of ${members}` : `the ${counted(worst)} worst of ${members}`;
  const low =
    short.oneInTen === null
      ? `In ${members - ends} of ${members} it does not`
      : `In ${name} to ${dayWords(short.oneInTen)}`;
  return `${low}; in ${counted(ends)} to the end.`;
}

const EVERY_YEAR = "in every year of the record";

function oddsSaid(odds: Odds, today: number): string {
  if (isShortNow(odds, today)) return SHORT_NOW;
  if (reaching(odds) === odds.members) return `Lasts to the season's end ${EVERY_YEAR}.`;
  return `Lasts to ${toEnd(odds.short.half)} in a middling year. ${worstSaid(odds)}`;
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

/** The same at a glance: the words before the day, the day or the end, and a line more. */
export type LastsInShort = { readonly said: string; readonly day: string; readonly more: string };

const inShort = (day: number | null, more: string, about = ""): LastsInShort => ({
  said: day === null ? "Lasts to" : `Lasts to ${about}`.trim(),
  day: toEnd(day),
  more,
});

/** "Lasts to", "Aug 3", "In the two worst of 20 to Jul 24; in four to the end." */
export function lastsInShort(from: FromToday): LastsInShort {
  const whole = { said: lastsSaid(from), day: "", more: "" };
  if (from.kind === "out_of_season" || whole.said === SHORT_NOW) return whole;
  if (from.kind === "odds")
    return inShort(
      from.short.half,
      reaching(from) === from.members ? `${capital(EVERY_YEAR)}.` : worstSaid(from),
    );
  const { usual, dry } = from;
  if (dry.short === null) return inShort(null, "Even without rain.");
  return inShort(usual.short, `In usual weather; to ${dayWords(dry.short)} without rain.`, "about");
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
