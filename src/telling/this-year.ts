// This year as it was noted beside what a middling year of the record comes to, and what was not noted.

import type { UsualSoFar } from "../season/usual-so-far.ts";
import { calendarDate } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";
import type { Show } from "./bed-day.ts";
import { listed, wholeDays } from "./words/lists.ts";

/** Sum or least of what was noted [SI], and the days on which it was. */
export type NotedSum = { readonly id: string; readonly amount: number; readonly days: number };

type NotedDays = { readonly id: string; readonly days: number };

/** What the notes of a season add up to. */
export type NotedSoFar = {
  /** Days with any note at all. */
  readonly days: number;
  /** Given to each bed [m3]. */
  readonly given: readonly NotedSum[];
  /** Days on which a bed was soaked or watered and nobody said with how much. */
  readonly unmeasured: readonly NotedDays[];
  /** Days on which the ground was dug and found dry. */
  readonly dry: readonly NotedDays[];
  /** Lowest level of a dip [m]. */
  readonly dips: readonly NotedSum[];
  /** Of the gauge [m]; null: nothing was noted. */
  readonly rain: NotedSum | null;
};

export type ThisYear = {
  /** The season's days so far [days since 1970-01-01]. */
  readonly first: number;
  readonly last: number;
  readonly madeUp: boolean;
  readonly noted: NotedSoFar;
  readonly usual: UsualSoFar;
};

/** One thing noted, beside what was to be expected of it. */
export type Beside = { readonly what: string; readonly noted: string; readonly expected: string };

export type ToldYear = {
  readonly head: string;
  readonly rows: readonly Beside[];
  readonly missing: readonly string[];
};

const on = (date: number): string => dayName(calendarDate(date));

function rainRow({ noted, usual, madeUp }: ThisYear, show: Show): readonly Beside[] {
  if (!noted.rain) return [];
  const { amount, days } = noted.rain;
  const drier = usual.rain.filter((rain) => rain < amount).length;
  const rank = madeUp ? "" : `; if all of it was read, ${drier} of ${usual.seasons} years had less`;
  return [
    {
      what: "Rain in the gauge",
      noted: `${show(amount, "rain")}, read on ${wholeDays(days)}`,
      expected: `${show(usual.middleRain, "rain")}${rank}`,
    },
  ];
}

function bedRows({ noted, usual }: ThisYear, titleOf: (id: string) => string, show: Show): readonly Beside[] {
  return usual.beds.flatMap(({ id, given }) => {
    const own = noted.given.find((one) => one.id === id);
    const dry = noted.dry.find((one) => one.id === id);
    if (!own && !dry) return [];
    const got = own ? [`${show(own.amount, "volume")}, noted on ${wholeDays(own.days)}`] : [];
    const dug = dry ? [`dug dry on ${wholeDays(dry.days)}`] : [];
    return [{ what: titleOf(id), noted: [...got, ...dug].join("; "), expected: show(given, "volume") }];
  });
}

function tankRows(
  { noted, usual }: ThisYear,
  titleOf: (id: string) => string,
  show: Show,
): readonly Beside[] {
  return usual.tanks.flatMap(({ id, lowest }) => {
    const own = noted.dips.find((one) => one.id === id);
    if (!own) return [];
    return [
      {
        what: titleOf(id),
        noted: `lowest dip ${show(own.amount, "depth")}, dipped on ${wholeDays(own.days)}`,
        // A dip may be of a tank that was just emptied; the run's levels are those of evenings, once the lines have run.
        expected: `${show(lowest, "depth")} on the lowest evening, refilled`,
      },
    ];
  });
}

function missingOf({ noted, usual }: ThisYear, titleOf: (id: string) => string): readonly string[] {
  const without = (known: readonly { readonly id: string }[], all: readonly { readonly id: string }[]) =>
    all.filter(({ id }) => !known.some((one) => one.id === id)).map(({ id }) => titleOf(id));
  const unwatered = without(noted.given, usual.beds);
  const undipped = without(noted.dips, usual.tanks);
  return [
    ...(noted.rain ? [] : ["No rain was noted."]),
    ...(unwatered.length > 0 ? [`No amount of water was noted for ${listed(unwatered)}.`] : []),
    ...noted.unmeasured.map(
      ({ id, days }) => `${titleOf(id)} was watered on ${wholeDays(days)} without an amount.`,
    ),
    ...(undipped.length > 0 ? [`No dip was noted of ${listed(undipped)}.`] : []),
  ];
}

/** The year as noted, beside the middle season of the run over the record. */
export function thisYearTold(year: ThisYear, titleOf: (id: string) => string, show: Show): ToldYear {
  const { first, last, noted, usual, madeUp } = year;
  const of = madeUp ? "made-up seasons" : usual.seasons === 1 ? "season on record" : "seasons on record";
  const days = last - first + 1;
  return {
    head: `${on(first)} to ${on(last)}: something was noted on ${noted.days} of ${wholeDays(days)}. Expected is the middle of ${usual.seasons} ${of}, part by part.`,
    rows: [...rainRow(year, show), ...bedRows(year, titleOf, show), ...tankRows(year, titleOf, show)],
    missing: missingOf(year, titleOf),
  };
}
