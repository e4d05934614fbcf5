// What a bed needs over the record: what its crops use when never short, less the rain that stands in for it.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { isoDate } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import { firstGap } from "./arriving-rain.ts";
import { type BedDays, bedDays, type CropTrait, cropTraits, wateredGround } from "./bed-days.ts";
import type { BedPart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { peakDay } from "./peak-day.ts";
import { type Sky, skyOf } from "./sky.ts";
import { eveningOf } from "./soil-step.ts";
import { dayOfSeason, type SeasonDates, type Span, sumOver, wholeSeasons } from "./spans.ts";

export type BedDemand = {
  /** Need of a peak day, net of rain that counts, over the efficiency [m3]. */
  readonly peakDayNeed: number;
  /** Crop use in the season less rain that counted, over the efficiency; mean of whole seasons [m3]. */
  readonly seasonNeed: number;
  /** Potential crop use in the season; mean of whole seasons [m3]. */
  readonly potential: number;
  /** Depth of water within easy reach of full-grown roots, of the crop that has least [m]. */
  readonly easyDepth: number;
  /** That over the watered ground and the efficiency [m3]. */
  readonly wateringVolume: number;
  /** How long that lasts on peak days; null where a peak day needs nothing [s]. */
  readonly wateringInterval: number | null;
  /** From soil with nothing left for roots to full, roots full grown, over the efficiency [m3]. */
  readonly firstSoak: number;
  /** Days a season on which its crops use water. */
  readonly daysWithNeed: number;
  /** Crop use less rain that counted, over the efficiency, on each day [m3]; below 0 where rain is kept for later. */
  readonly daily: Float64Array;
  /** Potential crop use of each day, depth over the watered ground [m]. */
  readonly use: Float64Array;
};

/**
 * What a bed needs.
 *
 * @param bed the bed, units at the type's fields
 * @param dates first and last day of the season, `MM-DD` [-]
 * @param record the daily record [-]
 * @param eto reference evapotranspiration of each day [m]
 * @param rainScale factor on all rain [-]
 * @returns needs [m3], or why there are none
 * @validity need is the crop's, whatever the rule by which the bed is watered
 * @source FAO-56 ch. 8; the peak day's quantile is our definition
 */
export function bedDemand(
  bed: BedPart,
  dates: SeasonDates,
  record: DailyRecord,
  eto: Float64Array,
  rainScale: number,
): BedDemand | { readonly none: string } {
  const gap = firstGap(record);
  if (gap !== null) return { none: `the record has no rain reading on ${isoDate(gap)}` };
  try {
    const grown = grownBed(bed, dates, skyOf(record, eto, rainScale));
    return grown.demand ?? { none: grown.none };
  } catch (error) {
    if (error instanceof DomainError) return { none: error.message };
    throw error;
  }
}

/** A bed's crops through a record: their days, and what they need or why that cannot be said. */
export type GrownBed = { readonly traits: readonly CropTrait[]; readonly days: BedDays } & (
  | { readonly demand: BedDemand; readonly none: null }
  | { readonly demand: null; readonly none: string }
);

const GROWN = keeper<GrownBed>(32);

/**
 * A bed's crops through a record, kept with its sky whoever waters it and by whatever rule; not to be written to.
 *
 * @param bed the bed, units at the type's fields
 * @param dates first and last day of the season, `MM-DD`
 * @param sky depths of each day [m]
 * @throws DomainError for a crop or soil outside its relations
 */
export function grownBed(bed: BedPart, dates: SeasonDates, sky: Sky): GrownBed {
  const { id: _id, wateredBy: _ways, priority: _priority, rule: _rule, letGo: _letGo, ...ground } = bed;
  return GROWN(sky, contentKey([ground, dates.start, dates.end]), () => {
    const traits = cropTraits(bed, sky);
    const days = bedDays(bed, sky, traits);
    const demand = demandOf(bed, dates, sky, days);
    return "none" in demand
      ? { traits, days, demand: null, none: demand.none }
      : { traits, days, demand, none: null };
  });
}

/**
 * What a bed needs, its days being known.
 *
 * @param bed the bed, units at the type's fields
 * @param dates first and last day of the season, `MM-DD` [-]
 * @param sky depths of each day [m]
 * @param days its crops and root zone [m]
 * @returns needs [m3], or why there are none
 * @source as bedDemand
 */
function demandOf(
  bed: BedPart,
  dates: SeasonDates,
  sky: Sky,
  days: BedDays,
): BedDemand | { readonly none: string } {
  if (bed.crops.length === 0) return { none: "nothing grows in it" };
  const seasons = wholeSeasons(dates, sky.firstDay, sky.eto.length);
  if (seasons.length === 0) return { none: "the record has no whole season" };
  const potential = meanOver(days.potential, seasons);
  if (potential === 0) return { none: "nothing grows in it within the season" };
  const counted = rainThatServed(days, dayOfSeason(dates, sky.firstDay, sky.eto.length));
  const perDepth = wateredGround(bed) / bed.efficiency;
  const daily = days.potential.map((use, day) => (use - (counted[day] as number)) * perDepth);
  const peakDayNeed = Math.max(0, peakDay(daily, seasons));
  const easyDepth = highest(days.trigger, seasons);
  const wateringVolume = easyDepth * perDepth;
  return {
    peakDayNeed,
    // Never less than nothing but by rounding.
    seasonNeed: seasons.reduce((sum, span) => sum + Math.max(0, sumOver(daily, span)), 0) / seasons.length,
    potential: potential * wateredGround(bed),
    easyDepth,
    wateringVolume,
    wateringInterval: peakDayNeed > 0 ? (wateringVolume / peakDayNeed) * DAY : null,
    firstSoak: highest(days.total, seasons) * perDepth,
    daysWithNeed: meanOver(
      days.potential.map((use) => (use > 0 ? 1 : 0)),
      seasons,
    ),
    daily,
    use: days.potential,
  };
}

/**
 * Rain that stood in for water on each day, of a bed that is given just enough and no sooner than it must.
 *
 * @param days its crops and root zone [m]
 * @param dayInSeason day of the season, 0 outside [-]
 * @returns rain that refilled what was used, in a season what was used since it began [m]
 * @validity a bed that is filled up each time it asks lets some of that rain run through; the season's run says how much.
 *   Less use or deeper easy water never makes this need more
 * @source FAO-56 Eq. 85 and 86, water early in the day as in example 38; giving no sooner than must be is our definition
 */
function rainThatServed(days: BedDays, dayInSeason: Int32Array): Float64Array {
  const { potential, readily, rain } = days;
  const served = new Float64Array(potential.length);
  let used = 0;
  for (let day = 0; day < served.length; day++) {
    // A season owes nothing to the days before it. What is more than the easy water was given before it was missed.
    used = dayInSeason[day] === 1 ? 0 : Math.min(used, readily[day] as number);
    const serves = Math.min(rain[day] as number, used);
    served[day] = serves;
    used += (potential[day] as number) - serves;
  }
  return served;
}

/**
 * A bed that gets what it lacks whenever it asks, and is never refused.
 *
 * @param bed the bed, units at the type's fields
 * @param days its crops and root zone [m]
 * @param asks whether it asks on a day on which its root zone lacks so much [m]
 * @returns water given to the roots on each day [m]
 * @source FAO-56 ch. 8, water early in the day as in example 38
 */
export function neverRefused(
  bed: BedPart,
  days: BedDays,
  asks: (day: number, lack: number) => boolean,
): Float64Array {
  const byMorning = bed.decidesOn === "morning" ? 1 : 0;
  const watered = new Float64Array(days.total.length);
  let depletion = 0;
  for (let day = 0; day < watered.length; day++) {
    const holds = days.total[day] as number;
    depletion = Math.min(depletion, holds);
    const lack = Math.max(0, depletion - (days.rain[day] as number) * byMorning);
    if (holds > 0 && asks(day, lack)) watered[day] = lack;
    depletion = eveningOf(days, day, depletion, watered[day] as number);
  }
  return watered;
}

function meanOver(series: Float64Array, seasons: readonly Span[]): number {
  return seasons.reduce((sum, span) => sum + sumOver(series, span), 0) / seasons.length;
}

function highest(series: Float64Array, seasons: readonly Span[]): number {
  let most = 0;
  for (const { first, last } of seasons) {
    for (let day = first; day <= last; day++) most = Math.max(most, series[day] as number);
  }
  return most;
}
