// What to water today and in the week as the command line gives it: in JSON, and as it is read.

import { valueIn } from "../graph/readers.ts";
import type { WeekSpan } from "../kinds/season/week.ts";
import type { ByHand } from "../season/by-hand.ts";
import type { DayLine, Go } from "../season/day-lines.ts";
import type { WeekAnswer } from "../season/week-plan.ts";
import type { Whole } from "../studies/work-out.ts";
import {
  byHandWords,
  lineWhy,
  lineWords,
  openTitle,
  openWords,
  rainsWords,
  refusalWords,
  sparedWords,
  type Voice,
} from "../telling/today.ts";
import { isoDate } from "../units/calendar.ts";
import { showQuantity } from "../units/show.ts";
import { optionsOf } from "./report.ts";

type Line = Pick<DayLine, "bed" | "volume" | "by" | "time" | "trips" | "hands" | "tankfuls" | "waits"> & {
  readonly why: string;
  /** By what and when it is given: [m3], [s], rounds, one's own time of it and how long after the hour of watering [s]. */
  readonly goes: readonly Pick<Go, "by" | "volume" | "time" | "trips" | "hands" | "wait">[];
};

export type TodayReport = {
  readonly today: readonly Line[];
  readonly week: readonly (Line & { readonly day: string })[];
  /** Hoses to be opened today: the tank that each fills, its level [m], and how long after that it is full [s]. */
  readonly opens: WeekAnswer["opens"];
  /** Rain of the forecast that is reckoned with [m], and what it spares: asked for on dry days [m3], until the bed asks next. */
  readonly rains: readonly { readonly day: string; readonly rain: number }[];
  readonly spared: readonly {
    readonly day: string;
    readonly bed: string;
    readonly asked: number;
    readonly until: string | null;
    readonly why: string;
  }[];
  /** Parts that are noted broken, which the plan does without. */
  readonly broken: readonly string[];
  /** Charging that the plan counts on its grower for: each battery, how, and on which days it is carried to the panel. */
  readonly by_hand: readonly {
    readonly battery: string;
    readonly way: ByHand["way"];
    readonly days: readonly string[];
    readonly said: string;
  }[];
  /** Beds that ask on a day and get nothing, and what they ask for [m3]. */
  readonly refused: readonly {
    readonly day: string;
    readonly bed: string;
    readonly asked: number;
    readonly why: string;
  }[];
};

/** The words of a worksheet's own units and titles. */
export function voiceOf(whole: Whole): Voice {
  const options = optionsOf(whole);
  const titles = new Map(whole.worksheet.cards.map(({ id, title }) => [id, title]));
  const span = valueIn(whole.results.get("season.week_span")) as WeekSpan | null;
  return {
    show: (si, measure) => showQuantity(si, measure, options),
    locale: options.locale,
    titleOf: (id) => titles.get(id) ?? id,
    driverOf: (bed) => span?.drivers[bed] ?? "either",
    tanksOf: (bed) => span?.tanks[bed],
    tankBy: (by) => span?.tankBy[by],
  };
}

function lineOf(line: DayLine, voice: Voice): Line {
  const { bed, volume, by, time, trips, hands, tankfuls, waits, goes } = line;
  return {
    bed,
    volume,
    by,
    time,
    trips,
    hands,
    tankfuls,
    waits,
    why: lineWhy(line, voice),
    goes: goes.map((go) => ({
      by: go.by,
      volume: go.volume,
      time: go.time,
      trips: go.trips,
      hands: go.hands,
      wait: go.wait,
    })),
  };
}

/** Today's and the week's lines in JSON. */
export function todayReport(whole: Whole, week: WeekAnswer): TodayReport {
  const { first, lines, opens, broken, byHand, refused, rains, spared } = week;
  const voice = voiceOf(whole);
  return {
    today: lines.filter(({ day }) => day === first).map((line) => lineOf(line, voice)),
    week: lines.map((line) => ({ day: isoDate(line.day), ...lineOf(line, voice) })),
    opens,
    rains: rains.map(({ day, rain }) => ({ day: isoDate(day), rain })),
    spared: spared.map((one) => ({
      day: isoDate(one.day),
      bed: one.bed,
      asked: one.asked,
      until: one.until === null ? null : isoDate(one.until),
      why: sparedWords(one, voice),
    })),
    broken,
    by_hand: byHand.map((one) => ({
      battery: one.battery,
      way: one.way,
      days: one.days.map(isoDate),
      said: byHandWords([one], voice).join(" "),
    })),
    refused: refused.map((one) => ({
      day: isoDate(one.day),
      bed: one.bed,
      asked: one.asked,
      why: refusalWords(one, voice),
    })),
  };
}

/** Today's and the week's lines as they are read. */
export function todayText(
  whole: Whole,
  { first, last, lines, refused, opens, byHand, rains, spared }: WeekAnswer,
): readonly string[] {
  const voice = voiceOf(whole);
  // What is broken stands with what it all rests on.
  const without = [
    ...(lines.length + rains.length > 0 ? [rainsWords(rains, voice)] : []),
    ...byHandWords(byHand, voice),
  ];
  if (lines.length + refused.length + spared.length === 0)
    return [...without, "Nothing to water in the coming week."];
  const days = Array.from({ length: last - first + 1 }, (_, place) => first + place);
  const told = days.flatMap((day) =>
    [
      ...(day === first ? opens : []).map((one) => `${openTitle(one.line, voice)}: ${openWords(one, voice)}`),
      ...lines.filter((line) => line.day === day).map((line) => lineWords(line, voice)),
      ...refused.filter((one) => one.day === day).map((one) => refusalWords(one, voice)),
      ...spared.filter((one) => one.day === day).map((one) => sparedWords(one, voice)),
    ].map((said) => `${isoDate(day)}  ${said}`),
  );
  return [...without, ...told];
}
