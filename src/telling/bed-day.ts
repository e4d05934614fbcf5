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

/** What it got or by what it was helped out, and why no more. */
type Noted = { readonly title: string; readonly got: string; readonly why: string; readonly after: string };

function notedOn({ title, notes, ways, tanks }: NotedBed, day: number, show: Show): Noted | null {
  const bound = BOUNDS[(notes.lacked[day] ?? 0) - 1];
  if (!bound) return null;
  const why = whyShortThen(bound, notes.driver, tanks);
  const last = notes.lastBy[day] ?? 0;
  const helper = last > 1 ? ways[last - 1] : undefined;
  if (notes.unfilled[day] !== 1)
    return helper ? { title, got: "", why, after: `; ${helper} helped out` } : null;
  if (last === 0) return { title, got: " got nothing", why, after: "" };
  const by = helper ? `, with ${helper}` : "";
  return { title, got: ` got only ${show(notes.given[day] ?? 0, "volume")}${by}`, why, after: "" };
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

/** What the waterings of all beds lacked on a day: those with the same to say share a sentence. */
export function dayNotes(beds: readonly NotedBed[], day: number, show: Show): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const bed of beds) {
    const noted = notedOn(bed, day, show);
    if (!noted) continue;
    const said = `${noted.got}: ${noted.why}${noted.after}.`;
    alike.set(said, [...(alike.get(said) ?? []), noted.title]);
  }
  return [...alike].map(
    ([said, titles]) => `${titles.length > MOST_NAMED ? `${titles.length} beds` : listed(titles)}${said}`,
  );
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
