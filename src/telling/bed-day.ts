// What a day's watering of a bed lacked, and what a day of its calendar was like, in words.

import { BOUNDS, type Driver } from "../network/bounds.ts";
import type { BedAnswer } from "../season/answer.ts";
import type { MeasureName } from "../units/measures.ts";
import { type NamedTanks, whyShortThen } from "./words/bounds.ts";
import { listed, wholeDays } from "./words/lists.ts";

/** A number as one would say it. */
export type Show = (si: number, measure: MeasureName) => string;

export type NotedBed = {
  readonly title: string;
  readonly notes: Pick<BedAnswer, "given" | "lacked" | "lastBy" | "unfilled"> & { readonly driver: Driver };
  /** Titles of what waters it, in order. */
  readonly ways: readonly string[];
  /** Of the tanks that its water comes from. */
  readonly tanks?: NamedTanks;
};

/** What it got, or by what it was helped out, and why no more. */
type Noted = {
  readonly title: string;
  /** "" where nothing; null where the helper made up for it. */
  readonly only: string | null;
  /** ", with Two cans" */
  readonly by: string;
  readonly why: string;
};

function notedOn({ title, notes, ways, tanks }: NotedBed, day: number, show: Show): Noted | null {
  const bound = BOUNDS[(notes.lacked[day] ?? 0) - 1];
  if (!bound) return null;
  const why = whyShortThen(bound, notes.driver, tanks);
  const last = notes.lastBy[day] ?? 0;
  const helper = last > 1 ? ways[last - 1] : undefined;
  if (notes.unfilled[day] !== 1)
    return helper ? { title, only: null, by: "", why: `${why}; ${helper} helped out` } : null;
  if (last === 0) return { title, only: "", by: "", why };
  const by = helper ? `, with ${helper}` : "";
  return { title, only: show(notes.given[day] ?? 0, "volume"), by, why };
}

/**
 * What a bed's watering lacked on a day.
 *
 * @param bed its title, notes and ways
 * @param day of the record, counted from 0
 * @returns a sentence; null where nothing was lacking
 */
export const dayNote = (bed: NotedBed, day: number, show: Show): string | null =>
  dayNotes([bed], day, show)[0] ?? null;

/** More beds than these are counted, not named. */
const MOST_NAMED = 2;

const named = (beds: readonly Noted[]): string =>
  beds.length > MOST_NAMED ? `${beds.length} beds` : listed(beds.map(({ title }) => title));

/** "A and B got nothing, C got only 3 gal", of beds that lacked the same. */
function gotSaid(beds: readonly Noted[]): string {
  const nothing = beds.filter(({ only }) => only === "");
  const some = beds.filter(({ only }) => only !== null && only !== "");
  const kinds = [...new Set(some.map(({ only, by }) => `${only}${by}`))];
  const parts = kinds.map((kind) => {
    const those = some.filter(({ only, by }) => `${only}${by}` === kind);
    return `${named(those)} got only ${those[0]?.only}${those.length > 1 ? " each" : ""}${those[0]?.by}`;
  });
  const onlys = parts.length > MOST_NAMED ? [`${named(some)} got only part of their water`] : parts;
  return [...(nothing.length > 0 ? [`${named(nothing)} got nothing`] : []), ...onlys].join(", ");
}

/** What the waterings of all beds lacked on a day: those that lacked the same share a sentence. */
export function dayNotes(beds: readonly NotedBed[], day: number, show: Show): readonly string[] {
  const alike = new Map<string, Noted[]>();
  for (const bed of beds) {
    const noted = notedOn(bed, day, show);
    if (noted) alike.set(noted.why, [...(alike.get(noted.why) ?? []), noted]);
  }
  return [...alike].map(([why, noted]) => `${gotSaid(noted) || named(noted)}: ${why}.`);
}

/** A day of a bed's calendar. */
export type ToldDay = {
  readonly date: string;
  readonly asked: number;
  readonly given: number;
  readonly rain: number;
  readonly stressed: boolean;
  readonly letGo: boolean;
  readonly grows: boolean;
};

/** What a day was like: "2021-07-03: got 12 gal, short". */
export function dayFacts(day: ToldDay, show: Show): string {
  const facts = [
    day.given > 0 ? `got ${show(day.given, "volume")}` : "",
    day.rain > 0 ? `rain ${show(day.rain, "rain")}` : "",
    day.stressed ? "short" : "",
    day.letGo ? "given up" : "",
  ].filter((fact) => fact !== "");
  return `${day.date}: ${facts.join(", ") || (day.grows ? "nothing" : "nothing grows")}`;
}

/** How a watering of the calendar went: "2021-07-03: 12 gal of 20 gal: your time ran out". */
export function wateringFacts(
  day: ToldDay & { readonly bound: string | null },
  driver: Driver,
  show: Show,
): string {
  const given = `${day.date}: ${show(day.given, "volume")}`;
  if (day.bound === null || day.given >= day.asked) return given;
  const asked = show(day.asked, "volume");
  const why = whyShortThen(day.bound, driver);
  return show(day.given, "volume") === asked
    ? `${given}, a little short: ${why}`
    : `${given} of ${asked}: ${why}`;
}

/** What a season of a bed was like, day by day. */
export function seasonFacts(year: number, days: readonly ToldDay[]): string {
  const watered = days.filter(({ given }) => given > 0).length;
  const short = days.filter(({ stressed }) => stressed).length;
  return `The season of ${year}: watered on ${wholeDays(watered)}, short on ${wholeDays(short)}.`;
}
