// The coming week and a chosen season's calendar: what is known of today goes in, each bed's days come out.

import {
  numberIn,
  numberOf,
  numberOrNull,
  recordOf,
  valueIn,
  wordIn,
  wordOrNull,
} from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outcome, Outputs, Row } from "../../graph/types.ts";
import { dipCounts } from "../../happened/dip.ts";
import type { Happened } from "../../happened/happened.ts";
import { readHappened } from "../../happened/text.ts";
import type { Driver } from "../../network/bounds.ts";
import type { Vessel } from "../../physics/vessel.ts";
import { type SeasonCalendar, seasonCalendar } from "../../season/bed-calendar.ts";
import type { BedTanks } from "../../season/bed-tanks.ts";
import type { BedWeek } from "../../season/bed-week.ts";
import { readForecastText } from "../../season/forecast.ts";
import type { LeftOut, SeasonInput } from "../../season/input.ts";
import { type WeekAnswer, type WeekGiven, weekPlan, withNotes } from "../../season/week-plan.ts";
import { isoDate, parseIsoDate } from "../../units/calendar.ts";
import { HOUR } from "../../units/constants.ts";
import { choice, given, hidden, text } from "../rows.ts";
import { driverOf } from "./drivers.ts";

const DAYS = 7;

/** A level of today is taken as read so early where nobody knows when: our definition [s]. */
const DAWN = 6 * HOUR;

function numbersOf(cards: readonly CardView[], row: string): Readonly<Record<string, number>> {
  return Object.fromEntries(
    cards.flatMap(({ id, results }) => {
      const number = numberIn(results[row]);
      return number === null ? [] : [[id, number]];
    }),
  );
}

function daysOf(cards: readonly CardView[], row: string): Readonly<Record<string, number>> {
  return Object.fromEntries(
    cards.flatMap(({ id, results }) => {
      const day = parseIsoDate(wordIn(results[row]));
      return day === null ? [] : [[id, day]];
    }),
  );
}

/** That a bed was held back, planted or pulled up, or that something broke, moved no water by itself. */
const MOVES_NO_WATER: ReadonlySet<string> = new Set(["held", "planted", "pulled", "broke", "mended"]);

/** Whether a dip of a tank says no more than that holds, or its grower read it so. */
function isCounted(tanks: readonly CardView[]) {
  const full = new Map(
    tanks.map(({ id, results }) => [id, (valueIn(results["vessel"]) as Vessel | null)?.height]),
  );
  return ({ what, where, amount, asRead }: Happened): boolean =>
    what !== "dipped" || dipCounts(amount ?? 0, full.get(where) ?? Infinity, asRead === true);
}

function knownToday(input: ModelInput): Outcome {
  const today = parseIsoDate(wordOrNull(input, "site.today") ?? "");
  if (today === null) return { none: "no day given for today" };
  const tanks = input.cards["tank"] ?? [];
  const all = readHappened(wordOrNull(input, "site.happened") ?? "").filter(isCounted(tanks));
  const dipped = tanks.filter(({ results }) => wordIn(results["dip_counts"]) !== "asked");
  const known: WeekGiven = {
    today,
    days: DAYS,
    drying: wordOrNull(input, "week_drying") === "hot" ? "hot" : "usual",
    levels: numbersOf(dipped, "level_today"),
    dippedOn: daysOf(dipped, "dipped_on"),
    charges: {},
    lastSoaked: daysOf(input.cards["bed"] ?? [], "last_soaked"),
    dawn: DAWN,
    happened: all.filter(({ what }) => !MOVES_NO_WATER.has(what)),
    crops: all.flatMap(({ what, date, where }) =>
      what === "planted" || what === "pulled" ? [{ what, date, bed: where }] : [],
    ),
    breaks: all.flatMap(({ what, date, where }) =>
      what === "broke" || what === "mended" ? [{ what, date, where }] : [],
    ),
    heldBack: all.flatMap(({ what, date, where }) => (what === "held" && date === today ? [where] : [])),
    dipDoubt: numberOrNull(input, "dip_doubt") ?? 0,
    forecast: readForecastText(wordOrNull(input, "forecast") ?? "", today),
  };
  return { value: known };
}

/** What is known of today, for the week's plan. */
export const today: Model = {
  name: "today",
  takes: ["site.today", "site.happened", "week_drying", "forecast", "dip_doubt"],
  surveys: {
    tank: ["level_today", "dipped_on", "dip_counts", "vessel"],
    bed: ["last_soaked"],
  },
  tolerant: true,
  outputs: ["week_given"],
  run: (input) => ({ week_given: knownToday(input) }),
};

/** A bed's coming week, as its card and the printed plan read it. */
export type WeekOfBed = Omit<BedWeek, "days"> & { readonly today: string; readonly driver: Driver };

/** The week as a whole. */
export type WeekSpan = Pick<
  WeekAnswer,
  "rains" | "spared" | "assumedTanks" | "lines" | "refused" | "opens" | "broken" | "byHand" | "now" | "tankBy"
> & {
  readonly first: string;
  readonly last: string;
  /** Hour of watering, after midnight [s]. */
  readonly waterAt: number;
  /** What drives the pumps behind each bed. */
  readonly drivers: Readonly<Record<string, Driver>>;
  /** Where the water of each bed comes from. */
  readonly tanks: Readonly<Record<string, BedTanks>>;
};

const LEFT_OUT = "Left out of the season";

function failedRows(leftOut: readonly LeftOut[], row: string): Record<string, Outcome> {
  return Object.fromEntries(
    leftOut.map(({ id, reason, cause }) => {
      const failed = `${LEFT_OUT}: ${reason.replace(/\.$/, "")}.`;
      return [`${id}.${row}`, cause === undefined ? { failed } : { failed, cause }];
    }),
  );
}

/** What each tank holds by now, of those that somebody dipped. */
function waterNow(plan: SeasonInput, { now, assumedTanks }: WeekAnswer): Outputs {
  const held = Object.entries(now).map(([id, volume]): [string, Outcome] => [
    `${id}.water_now`,
    assumedTanks.includes(id) ? { none: "not dipped lately" } : { value: volume },
  ]);
  return { ...failedRows(plan.leftOut, "water_now"), ...Object.fromEntries(held) };
}

function weekOutputs(plan: SeasonInput, answer: WeekAnswer): Outputs {
  const rows: Record<string, Outcome> = failedRows(plan.leftOut, "week");
  for (const { days: _days, ...bed } of answer.beds) {
    const week: WeekOfBed = { ...bed, today: isoDate(answer.first), driver: driverOf(plan, [bed.id]) };
    rows[`${bed.id}.week`] = { value: week };
  }
  const span: WeekSpan = {
    first: isoDate(answer.first),
    last: isoDate(answer.last),
    assumedTanks: answer.assumedTanks,
    lines: answer.lines,
    refused: answer.refused,
    opens: answer.opens,
    broken: answer.broken,
    byHand: answer.byHand,
    rains: answer.rains,
    spared: answer.spared,
    now: answer.now,
    tankBy: answer.tankBy,
    tanks: Object.fromEntries(answer.beds.map(({ id, tanks }) => [id, tanks])),
    waterAt: plan.waterAt,
    drivers: Object.fromEntries(plan.beds.map(({ id }) => [id, driverOf(plan, [id])])),
  };
  return { ...rows, ...waterNow(plan, answer), "season.week_span": { value: span } };
}

/** The coming week of every bed. */
export const week: Model = {
  name: "week",
  takes: ["plan", "week_given"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: "by quantity id",
  run: (input) => {
    const given = input.values["week_given"] as WeekGiven;
    const plan = withNotes(input.values["plan"] as SeasonInput, given);
    const answer = weekPlan(plan, recordOf(input), given);
    if (!("failed" in answer)) return weekOutputs(plan, answer);
    const failed = { failed: answer.failed };
    return {
      ...failedRows(plan.leftOut, "week"),
      ...Object.fromEntries(plan.beds.map(({ id }) => [`${id}.week`, failed])),
      ...Object.fromEntries(plan.tanks.map(({ id }) => [`${id}.water_now`, failed])),
      "season.week_span": failed,
    };
  },
};

/** One day of a bed's calendar: water given [m3], whether it thirsted, was let go, was rained on, or nothing grew. */
export type CalendarDay = {
  readonly date: string;
  readonly asked: number;
  readonly given: number;
  /** Rain that its roots had room for [m] over its watered ground. */
  readonly rain: number;
  readonly stressed: boolean;
  readonly letGo: boolean;
  readonly grows: boolean;
  readonly bound: string | null;
};

export type CalendarOfBed = {
  readonly year: number;
  readonly driver: Driver;
  readonly days: readonly CalendarDay[];
};

function calendarOutputs(plan: SeasonInput, calendar: SeasonCalendar): Outputs {
  const rows: Record<string, Outcome> = failedRows(plan.leftOut, "calendar");
  for (const { id, days } of calendar.beds) {
    const shown: CalendarOfBed = {
      year: calendar.year,
      driver: driverOf(plan, [id]),
      days: days.map((day) => ({
        date: isoDate(day.date),
        asked: day.asked,
        given: day.given,
        rain: day.rain,
        stressed: day.stressed,
        letGo: day.letGo,
        grows: day.total > 0,
        bound: day.bound,
      })),
    };
    rows[`${id}.calendar`] = { value: shown };
  }
  return rows;
}

/** Every bed's days of the season that is looked at. */
export const calendar: Model = {
  name: "calendar",
  takes: ["plan", "look_at_year"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: "by quantity id",
  run: (input) => {
    const plan = input.values["plan"] as SeasonInput;
    const answer = seasonCalendar(plan, recordOf(input), numberOf(input, "look_at_year"));
    if (!("failed" in answer)) return calendarOutputs(plan, answer);
    return {
      ...failedRows(plan.leftOut, "calendar"),
      ...Object.fromEntries(plan.beds.map(({ id }) => [`${id}.calendar`, { failed: answer.failed }])),
    };
  },
};

/** Rows of the season card for the week and the calendar. */
export const WEEK_ROWS: readonly Row[] = [
  choice(
    "week_drying",
    "Plan the week for",
    { usual: "usual days of the time of year", hot: "hot days, as one year in ten has" },
    "usual",
    { minor: true },
  ),
  given("look_at_year", "Look at the season of", "year", null, {
    absent: "no year picked",
    minor: true,
    min: 0,
    max: 9999,
    sizeless: true,
  }),
  given("dip_doubt", "A dip may be off by", "depth", [0.5, "in"], { minor: true, max: 1 }),
  text("forecast", "What is expected of the next days", "", { hidden: true }),
  hidden("week_given", "What is known of today", "today", "series"),
  hidden("week_span", "The week", "week", "series"),
];
