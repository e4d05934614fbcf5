// `--from-today`: how long it lasts, and what to water today and in the week.

import { isReady, numberIn, valueIn } from "../graph/readers.ts";
import { shownValue } from "../graph/shown.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Ahead, FromToday, Ranks } from "../season/odds.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import { adviceOf } from "../studies/advice.ts";
import { type FromTodayAnswer, fromTodayOf } from "../studies/from-today.ts";
import type { Whole } from "../studies/work-out.ts";
import { emptySaid, forecastSaid, lastsSaid, restsOn, ruleSaid } from "../telling/from-today.ts";
import { bedsShortToday } from "../telling/short-today.ts";
import { isoDate } from "../units/calendar.ts";
import { type AdviceAnswer, type AdviceReport, adviceReport, adviceText } from "./advice-report.ts";
import { optionsOf } from "./report.ts";
import { type TodayReport, todayReport, todayText, voiceOf } from "./today-lines.ts";
import { FileError } from "./usage.ts";

type RankedDays = {
  readonly one_in_ten: string | null;
  readonly half: string | null;
  readonly nine_in_ten: string | null;
  readonly members: number;
};

type Days = { readonly members: number; readonly last: number };

type TwoDays = { readonly usual: string | null; readonly dry: string | null };

export type FromTodayReport = TodayReport & {
  readonly kind: FromToday["kind"];
  readonly short_from: RankedDays | TwoDays | null;
  readonly empty_from: RankedDays | TwoDays | null;
  readonly reaches_end: number | null;
  readonly season_end: string | null;
  /** Beds that are short today in most of the runs in which one is, and since when, as far as notes tell. */
  readonly short_today: readonly { readonly bed: string; readonly since: string | null }[];
  /** Parts of which nothing was noted lately. */
  readonly assumed: readonly string[];
  readonly said: readonly string[];
  readonly advice: AdviceReport;
};

type Answer = FromTodayAnswer & { readonly advice: AdviceAnswer };

/** Null where it does not come before the season's end. */
const dateOf = (day: number | null, last: number): string | null =>
  day === null || day >= last ? null : isoDate(day);

const ranked = ({ oneInTen, half, nineInTen }: Ranks, { members, last }: Days): RankedDays => ({
  one_in_ten: dateOf(oneInTen, last),
  half: dateOf(half, last),
  nine_in_ten: dateOf(nineInTen, last),
  members,
});

function lastingReport(from: FromToday): Pick<FromTodayReport, "short_from" | "empty_from" | "reaches_end"> {
  if (from.kind === "out_of_season") return { short_from: null, empty_from: null, reaches_end: null };
  if (from.kind === "odds")
    return {
      short_from: ranked(from.short, from),
      empty_from: ranked(from.empty, from),
      reaches_end: from.reachesEnd,
    };
  const both = (of: (run: Ahead) => number | null): TwoDays => ({
    usual: dateOf(of(from.usual), from.last),
    dry: dateOf(of(from.dry), from.last),
  });
  return {
    short_from: both(({ short }) => short),
    empty_from: both(({ empty }) => empty),
    reaches_end: null,
  };
}

/** Asks a worked-out worksheet how long it lasts; a file error where it cannot be told. */
export function fromTodayAnswer(whole: Whole, records: readonly DailyRecord[]): Answer {
  const answer = fromTodayOf(whole, records);
  if ("failed" in answer) throw new FileError(`How long it lasts cannot be told: ${answer.failed}`);
  return { ...answer, advice: adviceOf(whole, records) };
}

/** By which rule each bed is watered, the first in turn first. */
function ruleOf({ worksheet, graph, results }: Whole, heldToday: readonly string[]): string {
  const beds = worksheet.cards.flatMap(({ id, title }) => {
    const turn = numberIn(results.get(`${id}.priority`));
    const rule = `${id}.rule`;
    return isReady(results.get(rule)) && turn !== null
      ? [
          {
            title,
            when: shownValue(graph, worksheet, results, rule, optionsOf({ worksheet, graph, results })),
            turn,
          },
        ]
      : [];
  });
  const hold = numberIn(results.get("season.hold_days")) ?? 0;
  return ruleSaid(
    beds.sort((a, b) => a.turn - b.turn),
    hold,
    heldToday,
  );
}

/** How long it lasts, and all that this rests on, a sentence each. */
function saidOf(whole: Whole, lasting: FromToday): readonly string[] {
  const voice = voiceOf(whole);
  const rests = restsOn(lasting, voice.titleOf);
  if (lasting.kind === "out_of_season") return [lastsSaid(lasting, voice.titleOf), ...rests];
  const given = valueIn(whole.results.get("season.week_given")) as WeekGiven | null;
  return [
    lastsSaid(lasting, voice.titleOf),
    emptySaid(lasting),
    ruleOf(whole, lasting.heldBack.map(voice.titleOf)),
    ...rests,
    ...forecastSaid(given?.forecast ?? {}, lasting.kind === "odds", voice),
  ];
}

/** The answer as the command line gives it in JSON. */
export function fromTodayReport(whole: Whole, { lasting, week, advice }: Answer): FromTodayReport {
  const { tanks, beds, batteries } = lasting.assumed;
  return {
    kind: lasting.kind,
    ...lastingReport(lasting),
    season_end: lasting.kind === "out_of_season" ? null : isoDate(lasting.last),
    short_today: bedsShortToday(lasting).map((bed) => {
      const since = lasting.since[bed];
      return { bed, since: since === undefined ? null : isoDate(since) };
    }),
    ...todayReport(whole, week),
    assumed: [...tanks, ...beds, ...batteries],
    said: saidOf(whole, lasting),
    advice: adviceReport(advice),
  };
}

/** The answer as it is read. */
export function fromTodayText(whole: Whole, { lasting, week, advice }: Answer): string {
  return `${[...saidOf(whole, lasting), "", ...adviceText(whole, advice), ...todayText(whole, week)].join("\n")}\n`;
}
