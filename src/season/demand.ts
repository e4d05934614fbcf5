// What a bed needs on peak days: what its crops use when never short, less the rain that stands in for it. What a season
// needs is told by its run.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { isoDate } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import { firstGap } from "./arriving-rain.ts";
import { type BedDays, bedDays, wateredGround } from "./bed-days.ts";
import { type CropTrait, cropTraits } from "./crop-days.ts";
import type { BedPart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { peakDay, peakSpan } from "./peak-day.ts";
import { type Sky, skyOf } from "./sky.ts";
import { fullSoil, moveRoots, nothingCame, passDay, soakOf } from "./soil-step.ts";
import { dayOfSeason, type SeasonDates, type Span, sumOver, wholeSeasons } from "./spans.ts";

export type BedDemand = {
  /** Need of a peak day, net of rain that counts, over the efficiency [m3]. */
  readonly peakDayNeed: number;
  /** Potential crop use in the season; mean of whole seasons [m3]. */
  readonly potential: number;
  /** Depth of water within easy reach on the peak days, of the crop that has least [m]. */
  readonly easyDepth: number;
  /** That over the efficiency [m3]. */
  readonly easyVolume: number;
  /** A good watering: what so many peak days need as it lasts, at most the easy water [m3]. */
  readonly wateringVolume: number;
  /** How long that lasts on peak days, in whole days and at least one; null where a peak day needs nothing [s]. */
  readonly wateringInterval: number | null;
  /** Days a season on which its crops use water. */
  readonly daysWithNeed: number;
  /** Crop use less rain that counted, over the efficiency, on each day [m3]; below 0 where rain is kept for later. */
  readonly daily: Float64Array;
  /** Potential crop use of each day, depth over the watered ground [m]. */
  readonly use: Float64Array;
};

/**
 * What a bed needs, before anybody knows what it gets.
 *
 * @param dates first and last day of the season, `MM-DD`
 * @param eto reference evapotranspiration of each day [m]
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
 * @param dates first and last day of the season, `MM-DD`
 * @param sky depths of each day [m]
 * @throws DomainError for a crop or soil outside its relations
 */
export function grownBed(bed: BedPart, dates: SeasonDates, sky: Sky): GrownBed {
  const { id: _id, wateredBy: _ways, priority: _priority, worth: _worth, ...bedOnly } = bed;
  const { rule: _rule, letGo: _letGo, ...ground } = bedOnly;
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
 * @param dates first and last day of the season, `MM-DD`
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
  if (potential === 0) return { none: whyNothing(bed, days, seasons) };
  const counted = rainThatServed(days, dayOfSeason(dates, sky.firstDay, sky.eto.length));
  const perDepth = wateredGround(bed) / bed.efficiency;
  const daily = new Float64Array(counted.length);
  for (let day = 0; day < daily.length; day++)
    daily[day] = ((days.potential[day] as number) - (counted[day] as number)) * perDepth;
  const peakDayNeed = Math.max(0, peakDay(daily, seasons));
  const peaks = seasons.map((span) => peakSpan(daily, span));
  const peakDays = peaks.reduce((sum, { first, last }) => sum + last - first + 1, 0);
  const easyDepth = peaks.reduce((sum, span) => sum + sumOver(days.easy, span), 0) / peakDays;
  return {
    peakDayNeed,
    potential: potential * wateredGround(bed),
    easyDepth,
    easyVolume: easyDepth * perDepth,
    ...goodWatering(easyDepth * perDepth, peakDayNeed),
    daysWithNeed: seasons.reduce((sum, span) => sum + growingIn(days, span), 0) / seasons.length,
    daily,
    use: days.potential,
  };
}

/** Days of a season on which its crops use water. */
function growingIn({ potential }: BedDays, { first, last }: Span): number {
  let growing = 0;
  for (let day = first; day <= last; day++) if ((potential[day] as number) > 0) growing++;
  return growing;
}

/** Why its crops use nothing: none stands there in the season, or nothing dries. */
function whyNothing(bed: BedPart, days: BedDays, seasons: readonly Span[]): string {
  if (meanOver(days.total, seasons) === 0) return "nothing grows in it within the season";
  return bed.coverFactor === 0
    ? "its drying is set to nothing"
    : "the drying of the record in use comes to nothing";
}

/** How many whole peak days the easy water covers, at least one, and what they need. */
function goodWatering(
  easyVolume: number,
  peakDayNeed: number,
): Pick<BedDemand, "wateringVolume" | "wateringInterval"> {
  if (peakDayNeed === 0) return { wateringVolume: easyVolume, wateringInterval: null };
  // Days that just fit must not be lost by rounding.
  const days = Math.max(1, Math.floor((easyVolume / peakDayNeed) * (1 + 1e-9)));
  return { wateringVolume: Math.min(easyVolume, days * peakDayNeed), wateringInterval: days * DAY };
}

/**
 * Rain that stood in for water on each day, of a bed that is given just enough and no sooner than it must.
 *
 * @param days its crops and root zone [m]
 * @param dayInSeason day of the season, 0 outside
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
 * A bed that gets what it wants, and all that its ground lacks on the day of planting, and is never refused.
 *
 * @param days its crops and ground [m]
 * @param wants what it wants on a day on which its root zone lacks so much; null: nobody waters it that day [m]
 * @returns water given to the ground on each day [m]
 * @source FAO-56 ch. 8, water early in the day as in example 38
 */
export function neverRefused(
  bed: Pick<BedPart, "decidesOn">,
  days: BedDays,
  wants: (day: number, lack: number) => number | null,
): Float64Array {
  const byMorning = bed.decidesOn === "morning" ? 1 : 0;
  const watered = new Float64Array(days.total.length);
  const soil = fullSoil();
  const came = nothingCame();
  for (let day = 0; day < watered.length; day++) {
    moveRoots(days, day, soil);
    const fell = (days.rain[day] as number) * byMorning;
    const wanted = (days.total[day] as number) > 0 ? wants(day, Math.max(0, soil.depletion - fell)) : null;
    const soak = days.planted[day] === 1 ? Math.max(0, soakOf(days, day, soil) - fell) : 0;
    const given = wanted === null ? 0 : Math.max(wanted, soak);
    passDay(days, day, soil, given, came);
    watered[day] = given;
  }
  return watered;
}

function meanOver(series: Float64Array, seasons: readonly Span[]): number {
  return seasons.reduce((sum, span) => sum + sumOver(series, span), 0) / seasons.length;
}
