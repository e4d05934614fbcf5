// How a run of the days before this morning takes in what was seen and done on them.

import type { Happened } from "../happened/happened.ts";
import { MINUTE } from "../units/constants.ts";
import { asRecorded } from "./forecast.ts";

/** What happened on a day, as the day of a run takes it: in the morning, with its watering, and in the evening. */
export type HappenedDay = {
  readonly morning: readonly Happened[];
  readonly noon: readonly Happened[];
  readonly evening: readonly Happened[];
};

const NOTHING: HappenedDay = { morning: [], noon: [], evening: [] };

export const isWatering = ({ what }: Happened): boolean => what === "gave" || what === "soaked";

type Watered = { readonly watered: Times | null; readonly isWatered: boolean };
type Times = { readonly first: number; readonly last: number };

/** Minutes of a day's first and last watering of which the minute is known; null: none is. */
function wateredAt(day: readonly Happened[]): Times | null {
  const minutes = day.flatMap((one) => (isWatering(one) && one.minute !== null ? [one.minute] : []));
  return minutes.length === 0 ? null : { first: Math.min(...minutes), last: Math.max(...minutes) };
}

/** Waterings of which nobody knows the minute first, then what else was seen at no known one. */
const orderOf = (one: Happened): number => one.minute ?? (isWatering(one) ? -2 : -1);
const byMinute = (one: Happened, other: Happened): number => orderOf(one) - orderOf(other);

function partOf(one: Happened, { watered, isWatered }: Watered, waterAt: number): keyof HappenedDay {
  if (isWatering(one)) return "noon";
  if (one.side !== null) return one.side === "after" ? "evening" : "morning";
  if (one.minute === null) return isWatered ? "noon" : "morning";
  if (watered && one.minute < watered.first) return "morning";
  const isLate = one.minute * MINUTE >= waterAt;
  if (!watered) return isLate ? "evening" : "morning";
  return isLate && one.minute > watered.last ? "evening" : "noon";
}

/**
 * What happened, by days.
 * Before the hour of watering counts for the evening before, later for tonight; where a watering of that day has its
 * minute, before it and after it.
 *
 * @param happened in order
 * @param waterAt hour of watering [s]
 */
export function byDay(happened: readonly Happened[], waterAt: number): (date: number) => HappenedDay {
  const days = new Map<number, Happened[]>();
  for (const one of happened) {
    if (one.what === "rain") continue;
    const day = days.get(one.date);
    if (day) day.push(one);
    else days.set(one.date, [one]);
  }
  return (date) => {
    const day = days.get(date);
    if (!day) return NOTHING;
    // Where no minute is known, what was read tells of what the day's watering left.
    const watered = {
      watered: wateredAt(day),
      isWatered: day.some((one) => isWatering(one) && one.minute === null),
    };
    const of = (part: keyof HappenedDay) => day.filter((one) => partOf(one, watered, waterAt) === part);
    return { morning: of("morning"), noon: of("noon").sort(byMinute), evening: of("evening") };
  };
}

export type GaugeDays = {
  /** First day of the rain, and today [days since 1970-01-01]. */
  readonly first: number;
  readonly today: number;
  /** Hour of watering [s], and what the record's rain is multiplied by to be the site's [-]. */
  readonly waterAt: number;
  readonly rainScale: number;
};

/**
 * Rain by the gauge, on the days that its readings tell of.
 *
 * @param rain the record's, as far as it is known, from the first day on [m]
 * @returns rain of each day, as the record would have it [m]: what fell since the reading before goes as the record's rain of
 *   those days does, all of it to the last of them where that has none; a first reading tells of its own day alone
 */
export function withGauge(rain: Float64Array, happened: readonly Happened[], days: GaugeDays): Float64Array {
  const spells = gaugeSpells(happened, days);
  if (spells.length === 0) return rain;
  const own = rain.slice();
  for (const spell of spells) spread(own, spell);
  return own;
}

/** What each reading tells of, in order. */
export function gaugeSpells(happened: readonly Happened[], days: GaugeDays): readonly Spell[] {
  const sorted = [...readingsOf(happened, days)].sort(([one], [other]) => one - other);
  return sorted.map(([end, depth], at) => ({
    from: (sorted[at - 1]?.[0] ?? end - 1) + 1 - days.first,
    to: end - days.first,
    depth,
  }));
}

/** Depths of the gauge by the last day that each tells of [m]; those of one day are added, as it was emptied between. */
function readingsOf(happened: readonly Happened[], days: GaugeDays): ReadonlyMap<number, number> {
  const readings = new Map<number, number>();
  for (const { what, date, minute, side, amount } of happened) {
    if (what !== "rain" || amount === null) continue;
    const isBefore =
      side === "before" || (side === null && minute !== null && minute * MINUTE < days.waterAt);
    const end = isBefore || date >= days.today ? date - 1 : date;
    readings.set(end, (readings.get(end) ?? 0) + asRecorded(amount, days.rainScale));
  }
  return readings;
}

/** Days from the first of some on, both included [day], and the rain of all of them [m]. */
type Spell = { readonly from: number; readonly to: number; readonly depth: number };

function spread(rain: Float64Array, { from, to, depth }: Spell): void {
  const first = Math.max(0, from);
  if (to < first || to >= rain.length) return;
  const sum = rain.subarray(first, to + 1).reduce((all, fell) => all + fell, 0);
  for (let day = first; day <= to; day++)
    rain[day] = sum > 0 ? ((rain[day] as number) * depth) / sum : day === to ? depth : 0;
}
