// The coming week in words: what each bed gets, by what means, and what stands in the way.

import type { Driver } from "../network/bounds.ts";
import type { BedWeek } from "../season/week-plan.ts";
import type { Show } from "./bed-day.ts";
import { namedTanks } from "./named-tanks.ts";
import { whyShort } from "./words/bounds.ts";
import { listed, perhapsListed } from "./words/lists.ts";

/** A bed's week, and what drives its pumps. */
export type ToldWeek = Omit<BedWeek, "days"> & { readonly driver: Driver };

type Way = BedWeek["ways"][number];

/** Whether there is enough for all of it. */
export function outlookWords(week: ToldWeek, show: Show, titleOf: (id: string) => string): string {
  const { outlook, asked, given, bound, driver } = week;
  if (outlook === "all") return "There is enough for all of it.";
  const why = whyShort(bound, driver, namedTanks(week.tanks, titleOf));
  if (outlook === "none") return `There will be nothing for it: ${why}.`;
  const [has, wants] = [show(given, "volume"), show(asked, "volume")];
  return has === wants
    ? `There will be a little less than ${wants}: ${why}.`
    : `There will be ${has} of ${wants}: ${why}.`;
}

const things = (count: string, thing: string): string => `${count} ${thing}${count === "1" ? "" : "s"}`;

/** "9 cans in 5 trips, 12 min" or "4 min with the pump". */
function wayWords(way: Way, title: string, show: Show): string {
  if (way.time === null) return `${title} cannot give so much`;
  const time = show(way.time, "duration");
  return way.trips > 0
    ? `${things(show(way.cans, "count"), "can")} in ${things(show(way.trips, "count"), "trip")}, ${time}`
    : `${time} with ${title}`;
}

type Headline = {
  readonly week: ToldWeek;
  readonly titleOf: (id: string) => string;
  /** On which days, and how many cans each watering is. */
  readonly weekdays: string;
  readonly cans: string;
};

/** "Tuesday and Friday, 12 gal each: 4 min with the pump or 6 cans"; where there is not so much it promises none of it. */
export function headline({ week, titleOf, weekdays, cans }: Headline, show: Show): string {
  const own = week.ways.map((way) => wayWords(way, titleOf(way.id), show));
  const byCan = week.ways.some(({ trips }) => trips > 0);
  const ways = perhapsListed(byCan ? own : [...own, things(cans, "can")]);
  const each = week.each === null ? "" : show(week.each, "volume");
  const wish = week.outlook === "all" ? "" : "With enough water: ";
  return `${wish}${weekdays}, ${each}${week.waterings.length > 1 ? " each" : ""}: ${ways}`;
}

export const asksNothing = ({ lacks }: ToldWeek, show: Show): string =>
  `Lacks ${show(lacks, "volume")}; asks for nothing this week.`;

export const ASSUMED_SOAK =
  "No soak in the last 60 days is known, so its soil is taken as it is on this day in a middling year.";

/** Which tanks' levels nobody gave. */
export const assumedTanks = (titles: readonly string[]): string =>
  `${listed(titles)} ${titles.length === 1 ? "was" : "were"} not dipped: taken as full as ${titles.length === 1 ? "it is" : "they are"} on this day in a middling year. Dip and enter the depth for a plan you can lean on.`;
