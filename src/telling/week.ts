// The coming week in words: what each bed gets, by what means, and what stands in the way.

import type { Driver } from "../network/bounds.ts";
import type { BedWeek } from "../season/bed-week.ts";
import type { DayLine } from "../season/day-lines.ts";
import { weekday } from "../units/calendar.ts";
import { WEEKDAYS } from "../units/calendar-names.ts";
import type { Show } from "./bed-day.ts";
import { whyNot } from "./named-tanks.ts";
import { partOf } from "./today.ts";
import { listed, perhapsListed } from "./words/lists.ts";

/** A bed's week, and what drives its pumps. */
export type ToldWeek = Omit<BedWeek, "days"> & { readonly driver: Driver };

/** Whether there is enough for all of it. */
export function outlookWords(week: ToldWeek, show: Show, titleOf: (id: string) => string): string {
  const { outlook, asked, given, bound, driver } = week;
  if (outlook === "asks_nothing") return asksNothing(week, show);
  if (outlook === "all") return "There is enough for all of it.";
  const why = whyNot(bound, { driver, tanks: week.tanks, titleOf });
  if (outlook === "late") return `There is enough for all of it, but not always on the day it asks: ${why}.`;
  if (outlook === "none") return `There will be nothing for it: ${why}.`;
  const [has, wants] = [show(given, "volume"), show(asked, "volume")];
  return has === wants
    ? `There will be ${partOf(given, asked, show)}: ${why}.`
    : `There will be ${has} of ${wants}: ${why}.`;
}

type Headline = {
  readonly week: ToldWeek;
  /** Its own, in order. */
  readonly lines: readonly DayLine[];
  readonly titleOf: (id: string) => string;
};

const things = (count: string, thing: string): string => `${count} ${thing}${count === "1" ? "" : "s"}`;

const weekdaysOf = (lines: readonly DayLine[]): string =>
  lines.length === DAYS_A_WEEK
    ? "Every day"
    : listed(lines.map(({ day }) => WEEKDAYS[weekday(day) - 1] ?? ""));

const DAYS_A_WEEK = 7;

/** Means that could give as much instead, at once: what the lines take they tell themselves. */
function othersWords({ week, lines, titleOf }: Headline, each: number, show: Show): string {
  const used = new Set(lines.flatMap(({ goes }) => goes.map(({ by }) => by)));
  const others = week.ways.flatMap(({ id, time, trips, cans, reach }) => {
    if (used.has(id) || time === null || reach < each) return [];
    const rounds =
      trips > 0 ? `${things(show(cans, "count"), "can")} in ${things(show(trips, "count"), "trip")}, ` : "";
    return [`${rounds}${show(time, "duration")} with ${titleOf(id)}`];
  });
  return others.length === 0 ? "" : `; or ${perhapsListed(others)}`;
}

/** "Tuesday and Friday, 12 gal each", "60 gal on Tuesday and 94 gal on Friday": what the lines give, no more; "" where it gets less than it asks for. */
export function headline(asked: Headline, show: Show): string {
  const { lines, week } = asked;
  if (week.outlook !== "all" && week.outlook !== "late") return "";
  const amounts = lines.map(({ volume }) => show(volume, "volume"));
  const [each] = amounts;
  const [first] = lines;
  if (!first || each === undefined) return "";
  if (amounts.some((amount) => amount !== each))
    return listed(lines.map(({ day }, at) => `${amounts[at]} on ${WEEKDAYS[weekday(day) - 1]}`));
  const said = `${weekdaysOf(lines)}, ${each}${lines.length > 1 ? " each" : ""}`;
  return `${said}${othersWords(asked, first.volume, show)}`;
}

const asksNothing = ({ lacks }: ToldWeek, show: Show): string =>
  `Lacks ${show(lacks, "volume")}; asks for nothing this week.`;

export const ASSUMED_SOAK =
  "No soak in the last 60 days is known, so its soil is taken as it is on this day in a middling year.";

/** Which tanks' levels nobody gave. */
export const assumedTanks = (titles: readonly string[]): string =>
  `${listed(titles)} ${titles.length === 1 ? "was" : "were"} not dipped: taken as full as ${titles.length === 1 ? "it is" : "they are"} on this day in a middling year. Dip and enter the depth for a plan you can lean on.`;
