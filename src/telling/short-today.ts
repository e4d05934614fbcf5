// Beds that are short already this morning: which, since when, and how long it lasts once they have had their water.

import { type Ahead, dayAtRank, type FromToday, type Odds, type UsualAndDry } from "../season/odds.ts";
import { MANY_YEARS } from "../season/years-ahead.ts";
import { counted, dayWords, EITHER_WAY, type LastsPiece, plain, until, worstOf } from "./lasts-pieces.ts";
import { listed } from "./words/lists.ts";

type InSeason = Exclude<FromToday, { readonly kind: "out_of_season" }>;

/** Which beds are short and in how many years, and how long it lasts then; that none does where some stay short. */
export type ShortToday = { readonly now: string; readonly once: readonly LastsPiece[] };

/** The beds that are short today in most of the runs in which one is. */
export function bedsShortToday(from: FromToday): readonly string[] {
  if (from.kind === "out_of_season") return [];
  const { today } = from;
  const runs = from.kind === "odds" ? from.ahead : [from.usual, from.dry];
  const short = runs.filter((run) => run.short === today);
  const counts = new Map<string, number>();
  for (const { beds } of short)
    for (const [bed, day] of Object.entries(beds))
      if (day === today) counts.set(bed, (counts.get(bed) ?? 0) + 1);
  return [...counts].filter(([, count]) => 2 * count > short.length).map(([bed]) => bed);
}

/** "Long bed (since Jul 17) is". */
function whoIs(from: InSeason, titleOf: (id: string) => string): string {
  const titles = bedsShortToday(from).map((bed) => {
    const since = from.since[bed];
    return since === undefined ? titleOf(bed) : `${titleOf(bed)} (since ${dayWords(since)})`;
  });
  if (titles.length === 0) return "A bed is";
  return `${listed(titles)} ${titles.length === 1 ? "is" : "are"}`;
}

const onceOf = (from: FromToday): string =>
  `Once ${bedsShortToday(from).length > 1 ? "they have their" : "it has its"} water, no bed is short again`;

/** Where some bed is short on each day of the coming week. */
const stayingShort = (weather: string): string =>
  `No day of the coming week is without a short bed${weather}.`;

/** "until Aug 3 in a middling year, in the two worst of 20 until Jul 24." */
function thenByOdds(odds: InSeason & Odds): readonly LastsPiece[] {
  const { today } = odds;
  const days = odds.ahead.map(({ again }) => again);
  const [half, low] = [dayAtRank(days, 0.5), dayAtRank(days, 0.1)];
  if (half === today) return [plain(stayingShort(" in a middling year"))];
  const worst = worstOf(odds);
  const name =
    worst === 1 ? `the worst of ${odds.members}` : `the ${counted(worst)} worst of ${odds.members}`;
  const middle = [
    plain(`${onceOf(odds)} ${half === null ? "before" : "until"} `),
    until(half),
    plain(" in a middling year"),
  ];
  if (low === null || low === half) return [...middle, plain(".")];
  if (low === today) return [...middle, plain(`; in ${name} some stay short.`)];
  return [...middle, plain(`; in ${name} until `), until(low), plain(".")];
}

const againSaid = (day: number | null, weather: string): readonly LastsPiece[] => [
  plain(day === null ? "before " : "until "),
  until(day),
  plain(weather),
];

function thenByTwo(from: InSeason & UsualAndDry): readonly LastsPiece[] {
  const { usual, dry, today } = from;
  const once = plain(`${onceOf(from)} `);
  if (usual === dry)
    return dry.again === today
      ? [plain(stayingShort(" without rain"))]
      : [once, ...againSaid(dry.again, " without rain.")];
  if (usual.again === today)
    return [plain(stayingShort(dry.again === today ? ", rain or none" : " in usual weather"))];
  if (dry.again === today)
    return [once, ...againSaid(usual.again, " in usual weather; without rain some stay short.")];
  // Watered on other days a bed may do without for longer in one run than in the other; rain is not what does it.
  const isLonger = (dry.again ?? Infinity) >= (usual.again ?? Infinity);
  if (isLonger) return [once, ...againSaid(usual.again, `, ${EITHER_WAY}.`)];
  return [once, ...againSaid(usual.again, " in usual weather, "), ...againSaid(dry.again, " without rain.")];
}

/** Whether beds are short today in most years, or in usual weather and without rain: then the day after that is told of. */
const isShortToday = (from: InSeason): boolean =>
  from.kind === "odds"
    ? from.short.half === from.today
    : from.usual.short === from.today && from.dry.short === from.today;

/** The day of each run that the sentence on top speaks of, with the middle and the bad one among them. */
export type ToldDays = {
  readonly of: (run: Pick<Ahead, "short" | "again">) => number | null;
  readonly middle: number | null;
  readonly bad: number | null;
};

export function toldDays(from: InSeason): ToldDays {
  const isAgain = isShortToday(from);
  const of: ToldDays["of"] = ({ short, again }) => (isAgain ? again : short);
  if (from.kind !== "odds") return { of, middle: of(from.usual), bad: of(from.dry) };
  const days = from.ahead.map(of);
  return { of, middle: dayAtRank(days, 0.5), bad: dayAtRank(days, 0.1) };
}

function byOdds(from: InSeason & Odds, titleOf: (id: string) => string): ShortToday {
  const { today, ahead, members } = from;
  const now = ahead.filter((run) => run.short === today).length;
  const who = whoIs(from, titleOf);
  const once = thenByOdds(from);
  if (now === members) return { now: `${who} short today, whatever the weather.`, once };
  const ends = ahead.filter((run) => run.short === null).length;
  const end = ends === 0 ? "" : `; in ${counted(ends)} of the ${members} no bed is short before the end`;
  // How it stands this morning is certain, and what weather comes today is not.
  const where =
    from.years < MANY_YEARS
      ? `in ${now} of ${members} runs of past weather`
      : `in the weather of ${now} of ${members} past years`;
  return { now: `${who} short today ${where}${end}.`, once };
}

/** What is said where beds are short today, in most years or in usual weather and without rain; null: they are not. */
export function shortToday(from: InSeason, titleOf: (id: string) => string): ShortToday | null {
  if (!isShortToday(from)) return null;
  if (from.kind === "odds") return byOdds(from, titleOf);
  return { now: `${whoIs(from, titleOf)} short today.`, once: thenByTwo(from) };
}
