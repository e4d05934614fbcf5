// How long it lasts from today, in one sentence, and what that rests on.

import { type Expected, type Forecast, isMuchRain, muchRainSaid } from "../season/forecast.ts";
import type { Ahead, FromToday, Odds, UsualAndDry } from "../season/odds.ts";
import { MANY_YEARS } from "../season/years-ahead.ts";
import { counted, dayWords, EITHER_WAY, type LastsPiece, plain, until, worstOf } from "./lasts-pieces.ts";
import { outOfSeasonSaid } from "./out-of-season.ts";
import { shortToday } from "./short-today.ts";
import { brokenWords } from "./today.ts";
import { capital, listed } from "./words/lists.ts";

export { type Expected, type Forecast, isExpectable } from "../season/forecast.ts";
export type { Ahead, FromToday } from "../season/odds.ts";
export type { LastsPiece } from "./lasts-pieces.ts";

const toEnd = (date: number | null): string => (date === null ? "the season's end" : dayWords(date));

const TO_END_DRY = "Lasts to the season's end, even without rain.";

const reaching = ({ ahead }: Odds): number => ahead.filter((run) => run.short === null).length;

/** "In the two worst of 20 to Jul 24; in four to the end." */
function worstPieces(odds: Odds): readonly LastsPiece[] {
  const { members, short } = odds;
  const worst = worstOf(odds);
  const ends = reaching(odds);
  const name = worst === 1 ? `the worst of ${members}` : `the ${counted(worst)} worst of ${members}`;
  const low =
    short.oneInTen === null
      ? [plain(`In ${members - ends} of ${members} it does not`)]
      : [plain(`In ${name} to `), until(short.oneInTen)];
  if (ends === 0) return [...low, plain(".")];
  return [...low, plain(`; in ${counted(ends)} `), { text: "to the end", tone: "growth" }, plain(".")];
}

const EVERY_YEAR = "in every year of the record";

/** "Rough odds: only four years are known."; nothing where they are many. */
const roughSaid = ({ years }: Odds): string =>
  years >= MANY_YEARS
    ? ""
    : `Rough odds: only ${years === 1 ? "one year is" : `${counted(years)} years are`} known.`;

function oddsPieces(odds: Odds): readonly LastsPiece[] {
  if (reaching(odds) === odds.members) return [plain(`Lasts to the season's end ${EVERY_YEAR}.`)];
  return [plain("Lasts to "), until(odds.short.half), plain(" in a middling year. "), ...worstPieces(odds)];
}

const spaced = (...said: readonly string[]): string => said.filter((words) => words !== "").join(" ");

function withRough(from: FromToday, pieces: readonly LastsPiece[]): readonly LastsPiece[] {
  const rough = from.kind === "odds" ? roughSaid(from) : "";
  return rough === "" ? pieces : [...pieces, plain(` ${rough}`)];
}

function usualPieces({ usual, dry }: UsualAndDry): readonly LastsPiece[] {
  if (dry.short === null) return [plain(TO_END_DRY)];
  const without = [until(dry.short), plain(" without rain.")];
  if (usual === dry) return [plain("Lasts to "), ...without];
  if (usual.short === dry.short) return [plain("Lasts to "), until(dry.short), plain(`, ${EITHER_WAY}.`)];
  const about = usual.short === null ? "" : "about ";
  return [plain(`Lasts to ${about}`), until(usual.short), plain(" in usual weather, to "), ...without];
}

/** How long it lasts, in one sentence, its days apart; where beds are short already, which, since when, and how long it lasts then. */
export function lastsPieces(from: FromToday, titleOf: (id: string) => string): readonly LastsPiece[] {
  if (from.kind === "out_of_season") return [plain(outOfSeasonSaid(from.dates, from.today))];
  const now = shortToday(from, titleOf);
  if (now) return withRough(from, [plain(now.now), plain(" "), ...now.once]);
  return from.kind === "odds" ? withRough(from, oddsPieces(from)) : usualPieces(from);
}

const joined = (pieces: readonly LastsPiece[]): string => pieces.map(({ text }) => text).join("");

/** "Lasts to Aug 3 in a middling year. In the two worst of 20 to Jul 24; in four to the end." */
export const lastsSaid = (from: FromToday, titleOf: (id: string) => string): string =>
  joined(lastsPieces(from, titleOf));

/** The same at a glance: the words before the day, the day or the end, and a line more. */
export type LastsInShort = { readonly said: string; readonly day: string; readonly more: string };

/** "Two parts with something wrong are left out." */
export function leftOutSaid({ assumed }: FromToday): string {
  const count = assumed.leftOut.length;
  if (count === 0) return "";
  return count === 1
    ? "One part with something wrong is left out."
    : `${capital(counted(count))} parts with something wrong are left out.`;
}

/** "Two totes: not dipped lately, taken as in a middling year."; nothing where every tank was. */
export function undippedSaid(from: FromToday, titleOf: (id: string) => string): string {
  const { tanks } = from.assumed;
  return from.kind === "out_of_season" || tanks.length === 0
    ? ""
    : `${listed(tanks.map(titleOf))}: not dipped lately, taken as in a middling year.`;
}

const inShort = (day: number | null, more: string, about = ""): LastsInShort => ({
  said: day === null ? "Lasts to" : `Lasts to ${about}`.trim(),
  day: toEnd(day),
  more,
});

/** "Lasts to", "Aug 3", "In the two worst of 20 to Jul 24; in four to the end." */
export function lastsInShort(from: FromToday, titleOf: (id: string) => string): LastsInShort {
  if (from.kind === "out_of_season") return { said: lastsSaid(from, titleOf), day: "", more: "" };
  const now = shortToday(from, titleOf);
  const rough = from.kind === "odds" ? roughSaid(from) : "";
  if (now) return { said: now.now, day: "", more: spaced(joined(now.once), rough) };
  if (from.kind === "odds")
    return inShort(
      from.short.half,
      spaced(reaching(from) === from.members ? `${capital(EVERY_YEAR)}.` : joined(worstPieces(from)), rough),
    );
  const { usual, dry } = from;
  if (dry.short === null) return inShort(null, "Even without rain.");
  if (usual.short === dry.short)
    return inShort(dry.short, usual === dry ? "Without rain." : `${capital(EITHER_WAY)}.`);
  return inShort(usual.short, `In usual weather; to ${dayWords(dry.short)} without rain.`, "about");
}

const STAYS = "Some water stays in reach of the beds to the season's end";
const GONE = "No water is left in reach of the beds by";

/** Said where the lead says that no bed goes short all the same. */
const carriedSaid = (weather: string): string =>
  ` ${weather} rain, and what the ground holds, do for the beds after that.`;
const isCarried = ({ short, empty }: Pick<Ahead, "short" | "empty">): boolean =>
  short === null && empty !== null;

function emptyOdds({ members, empty, short, ahead }: Odds): string {
  const never = ahead.filter((run) => run.empty === null).length;
  if (never === members) return `${STAYS} ${EVERY_YEAR}.`;
  const worst = worstOf({ members });
  const name = worst === 1 ? `the worst of ${members}` : `the ${counted(worst)} worst of ${members}`;
  const low =
    empty.oneInTen === null
      ? `in ${members - never} of ${members} it does not`
      : `in ${name} none is left by ${dayWords(empty.oneInTen)}`;
  const carried = short.half === null && ahead.some(isCarried) ? carriedSaid("In a middling year") : "";
  return empty.half === null
    ? `${STAYS} in a middling year; ${low}.`
    : `${GONE} ${dayWords(empty.half)} in a middling year, in ${name} by ${dayWords(empty.oneInTen ?? empty.half)}.${carried}`;
}

/** When next to nothing is left in reach of the beds: "No water is left in reach of the beds by Aug 20 in a middling year, ..." */
export function emptySaid(from: FromToday): string {
  if (from.kind === "out_of_season") return "";
  if (from.kind === "odds") return emptyOdds(from);
  const { usual, dry } = from;
  if (dry.empty === null) return `${STAYS}, even without rain.`;
  const without = `by ${dayWords(dry.empty)} without rain`;
  if (usual === dry) return `${GONE} ${dayWords(dry.empty)} without rain.`;
  if (usual.empty === dry.empty) return `${GONE} ${dayWords(dry.empty)}, ${EITHER_WAY}.`;
  return usual.empty === null
    ? `${STAYS} in usual weather; without rain none is left by ${dayWords(dry.empty)}.`
    : `${GONE} about ${dayWords(usual.empty)} in usual weather, ${without}.${isCarried(usual) ? carriedSaid("In usual weather") : ""}`;
}

/** "So far 5 of 20 years."; nothing once all are in. */
export function soFarSaid(from: FromToday): string {
  if (from.kind !== "odds" || from.awaited === 0) return "";
  return `So far ${from.members} of ${from.members + from.awaited} past years; the others are being run.`;
}

/** What a day is by the runs: "Aug 3: not short yet in 10 of 20". */
export function daySaid(from: FromToday, date: number): string {
  const day = dayWords(date);
  const isGood = ({ short }: Ahead) => short === null || short > date;
  if (from.kind === "odds")
    return `${day}: not short yet in ${from.ahead.filter(isGood).length} of ${from.members}`;
  if (from.kind === "out_of_season") return day;
  const [usually, dry] = [isGood(from.usual), isGood(from.dry)];
  if (dry) return `${day}: not short yet, even without rain`;
  return usually && from.usual !== from.dry
    ? `${day}: short without rain, not in usual weather`
    : `${day}: short`;
}

/** With only the first bed in line watered: "With only the tunnel watered: to Sep 6". */
export function aloneSaid(from: FromToday, title: string): string {
  if (from.kind === "out_of_season") return "";
  const day = from.kind === "odds" ? from.short.half : from.usual.short;
  return `With only ${title} watered: to ${toEnd(day)}.`;
}

/** Titles and numbers as the reader knows them. */
export type LastsVoice = {
  readonly titleOf: (id: string) => string;
  readonly show: (si: number, measure: "volume" | "depth" | "rain" | "temperature" | "share") => string;
};

const few = (years: number): string =>
  `Only ${years === 1 ? "one year of weather is" : `${counted(years)} years of weather are`} known: each counts five times, shifted by up to ten days either way, and the odds are rough.`;

function weatherSaid(from: FromToday): readonly string[] {
  if (from.kind === "odds") return from.years < MANY_YEARS ? [few(from.years)] : [];
  if (from.kind === "out_of_season") return [];
  return from.because === "made_up"
    ? ["The weather is made up, so it tells no odds: one usual run and one without rain."]
    : [
        "No year of the record reaches from this day to the season's end: only a run without rain can be told.",
      ];
}

const oneOrMore = (titles: readonly string[], said: (all: string) => string): readonly string[] =>
  titles.length === 0 ? [] : [said(listed(titles))];

/** What was taken for rain that nobody measured since the first note that counts. */
function rainSaid({ assumed: { rain } }: FromToday): readonly string[] {
  if (!rain) return [];
  const { spells, year, madeUp } = rain;
  const days = spells.map(({ first, last }) =>
    first === last ? dayWords(first) : `${dayWords(first)} to ${dayWords(last)}`,
  );
  const as =
    year === null
      ? "as dry"
      : madeUp
        ? "as in a middling year of the made-up weather"
        : `as in ${year}, a middling year for those days`;
  return [`No rain of ${listed(days)} was measured or noted: taken ${as}.`];
}

/** What the answer rests on, a sentence each. */
export function restsOn(from: FromToday, titleOf: (id: string) => string): readonly string[] {
  const { tanks, beds, batteries, leftOut, broken } = from.assumed;
  const wrong = oneOrMore(
    leftOut.map(titleOf),
    (all) => `Left out, because something is wrong with it: ${all}.`,
  );
  // Nothing is reckoned from this morning on.
  if (from.kind === "out_of_season") return wrong;
  return [
    ...wrong,
    ...(broken.length > 0 ? [brokenWords(broken, { titleOf })] : []),
    ...weatherSaid(from),
    ...oneOrMore(
      [...tanks, ...beds, ...batteries].map(titleOf),
      (all) => `Not noted lately, so taken as on this day in a middling year: ${all}.`,
    ),
    ...rainSaid(from),
  ];
}

/** By which rule the beds are watered from today on; the titles of those that get nothing today, as one noted. */
export function ruleSaid(
  beds: readonly { readonly title: string; readonly when: string }[],
  hold: number,
  heldToday: readonly string[],
): string {
  const kept =
    hold > 0 && beds.length > 1
      ? ` A bed waits where less than ${hold} days' water would be left for those before it.`
      : "";
  const today = heldToday.length === 0 ? "" : ` Held back today, as you noted: ${listed(heldToday)}.`;
  return `As the sheet waters: ${beds.map(({ title, when }) => `${title} when ${when}`).join("; ")}.${kept}${today}`;
}

/** Where nobody said how likely it is, rain comes in half of all past years, of made-up ones in all: as the runs have it. */
function wetSaid({ rain, chance }: Expected, isOdds: boolean, { show }: LastsVoice): readonly string[] {
  if (rain === null) return [];
  if (rain === 0) return ["dry"];
  const much = show(rain, "rain");
  if (isOdds) return [`${much} in ${show(chance ?? 0.5, "share")} of the years`];
  return [
    chance === null || chance === 1 ? `${much} in usual weather` : `${much}, ${show(chance, "share")} likely`,
  ];
}

/** Rain of a day that can hardly be meant is asked about; "" where it can. */
export const expectedAsked = (depth: number | null, show: LastsVoice["show"]): string =>
  depth === null || !isMuchRain(depth) ? "" : muchRainSaid(show(depth, "rain"), "in a day");

/** The questions about a whole forecast, each with its day. */
export const forecastAsked = (forecast: Forecast, show: LastsVoice["show"]): readonly string[] =>
  Object.entries(forecast).flatMap(([day, { rain }]) => {
    const asked = expectedAsked(rain, show);
    return asked === "" ? [] : [`Forecast of ${dayWords(Number(day))}: ${asked}`];
  });

/** What one expects of the coming days, as it stands in the runs. */
export function forecastSaid(forecast: Forecast, isOdds: boolean, voice: LastsVoice): readonly string[] {
  const { show } = voice;
  const days = Object.entries(forecast).map(([day, expected]) => {
    const { highest } = expected;
    const wet = wetSaid(expected, isOdds, voice);
    const hot = highest === null ? [] : [show(highest, "temperature")];
    return `${dayWords(Number(day))}: ${[...wet, ...hot].join(", ")}`;
  });
  return days.length === 0 ? [] : [`Your own forecast stands for ${days.join("; ")}.`];
}
