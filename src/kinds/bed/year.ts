// What a bed uses, gets from rain and needs through a usual year, week by week and month by month.

import { wateredGround } from "../../season/bed-days.ts";
import type { BedDemand } from "../../season/demand.ts";
import type { BedPart } from "../../season/input.ts";
import type { Sky } from "../../season/sky.ts";
import { calendarDate, dayOfYear } from "../../units/calendar.ts";

/** Means of each span of the year: water a day at the hose [m3], and the crop coefficient; null where nothing grows. */
export type YearSpans = {
  readonly use: readonly number[];
  readonly rain: readonly number[];
  readonly need: readonly number[];
  readonly kc: readonly (number | null)[];
};

/** 52 weeks, the last a day or two longer; and twelve months. */
export type ThroughYear = { readonly weeks: YearSpans; readonly months: YearSpans };

const WEEKS = 52;
const WEEK = 7;
const MONTHS = 12;

type Daily = {
  readonly use: Float64Array;
  readonly need: Float64Array;
  readonly potential: Float64Array;
  readonly reference: Float64Array;
};

function spansOf(daily: Daily, count: number, placeOf: (day: number) => number): YearSpans {
  const sums = () => new Float64Array(count);
  const [days, use, need, potential, reference] = [sums(), sums(), sums(), sums(), sums()];
  const add = (series: Float64Array, place: number, amount: number): void => {
    series[place] = (series[place] as number) + amount;
  };
  for (let day = 0; day < daily.use.length; day++) {
    const place = placeOf(day);
    add(days, place, 1);
    add(use, place, daily.use[day] as number);
    add(need, place, daily.need[day] as number);
    if ((daily.potential[day] as number) <= 0) continue;
    add(potential, place, daily.potential[day] as number);
    add(reference, place, daily.reference[day] as number);
  }
  const mean = (series: Float64Array) =>
    Array.from(series, (sum, place) => sum / Math.max(1, days[place] as number));
  const used = mean(use);
  // Rain kept for later can make a week's need less than nothing; what it needs is then nothing.
  const needed = mean(need).map((amount) => Math.max(0, amount));
  return {
    use: used,
    need: needed,
    rain: used.map((amount, place) => Math.max(0, amount - (needed[place] as number))),
    kc: Array.from(reference, (sum, place) => (sum > 0 ? (potential[place] as number) / sum : null)),
  };
}

/** A usual year of a bed over all days of the record. */
export function throughYear(
  bed: BedPart,
  sky: Pick<Sky, "firstDay" | "eto">,
  demand: BedDemand,
): ThroughYear {
  const potential = demand.use;
  const perDepth = wateredGround(bed) / bed.efficiency;
  const daily: Daily = {
    potential,
    use: potential.map((depth) => depth * perDepth),
    need: demand.daily,
    reference: sky.eto.map((depth) => depth * bed.coverFactor),
  };
  const week = (day: number) => Math.min(WEEKS - 1, Math.floor((dayOfYear(sky.firstDay + day) - 1) / WEEK));
  const month = (day: number) => calendarDate(sky.firstDay + day).month - 1;
  return { weeks: spansOf(daily, WEEKS, week), months: spansOf(daily, MONTHS, month) };
}
