// What a bed needs over the record: a bed that is watered whenever its soil asks, rain that counts taken off.

import { DomainError } from "../physics/domain-error.ts";
import { stress } from "../physics/soil-water.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { isoDate } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import { firstGap } from "./arriving-rain.ts";
import { type BedDays, bedDays, wateredGround } from "./bed-days.ts";
import { peakDay } from "./peak-day.ts";
import type { BedPart } from "./plan.ts";
import { type Sky, skyOf } from "./sky.ts";
import { dayOfSeason, type SeasonDates, type Span, sumOver, wholeSeasons } from "./spans.ts";

export type BedDemand = {
  /** Need of a peak day, net of rain that counts, over the efficiency [m3]. */
  readonly peakDayNeed: number;
  /** Crop use in the season less rain that counted, over the efficiency; mean of whole seasons [m3]. */
  readonly seasonNeed: number;
  /** Potential crop use in the season; mean of whole seasons [m3]. */
  readonly potential: number;
  /** Water within easy reach of full-grown roots, of the crop that has least, over the efficiency [m3]. */
  readonly wateringVolume: number;
  /** How long that lasts on peak days; null where a peak day needs nothing [s]. */
  readonly wateringInterval: number | null;
  /** From soil with nothing left for roots to full, roots full grown, over the efficiency [m3]. */
  readonly firstSoak: number;
  /** Days a season on which its crops use water. */
  readonly daysWithNeed: number;
  /** Crop use less rain that counted, over the efficiency, on each day [m3]; below 0 where rain is kept for later. */
  readonly daily: Float64Array;
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
    const sky = skyOf(record, eto, rainScale);
    return demandOf(bed, dates, sky, bedDays(bed, sky));
  } catch (error) {
    if (error instanceof DomainError) return { none: error.message };
    throw error;
  }
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
export function demandOf(
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
  const { counted } = neverShort(bed, days, dayOfSeason(dates, sky.firstDay, sky.eto.length));
  const perDepth = wateredGround(bed) / bed.efficiency;
  const daily = days.potential.map((use, day) => (use - (counted[day] as number)) * perDepth);
  const peakDayNeed = Math.max(0, peakDay(daily, seasons));
  const wateringVolume = highest(days.trigger, seasons) * perDepth;
  return {
    peakDayNeed,
    // Rain kept from before a season can be more than all its use: then it needs none, not less than none.
    seasonNeed: seasons.reduce((sum, span) => sum + Math.max(0, sumOver(daily, span)), 0) / seasons.length,
    potential: potential * wateredGround(bed),
    wateringVolume,
    wateringInterval: peakDayNeed > 0 ? (wateringVolume / peakDayNeed) * DAY : null,
    firstSoak: highest(days.total, seasons) * perDepth,
    daysWithNeed: meanOver(
      days.potential.map((use) => (use > 0 ? 1 : 0)),
      seasons,
    ),
    daily,
  };
}

/**
 * A bed that is watered whenever it asks in the season, and is never refused.
 *
 * @param bed the bed, units at the type's fields
 * @param days its crops and root zone [m]
 * @param dayInSeason day of the season, 0 outside [-]
 * @param asks whether it asks on a day on which its root zone lacks so much; left out: when the easy water is gone [m]
 * @returns rain that the root zone had room for, and water given to the roots, on each day [m]
 * @source FAO-56 ch. 8, water early in the day as in example 38
 */
export function neverShort(
  bed: BedPart,
  days: BedDays,
  dayInSeason: Int32Array,
  asks: (day: number, lack: number) => boolean = (day, lack) => lack >= (days.trigger[day] as number),
): { readonly counted: Float64Array; readonly watered: Float64Array } {
  const { potential, total, readily, rain } = days;
  const byMorning = bed.decidesOn === "morning" ? 1 : 0;
  const counted = new Float64Array(potential.length);
  const watered = new Float64Array(potential.length);
  let depletion = 0;
  for (let day = 0; day < counted.length; day++) {
    const holds = total[day] as number;
    depletion = Math.min(depletion, holds);
    if (holds === 0) continue;
    const fallen = rain[day] as number;
    const lack = Math.max(0, depletion - fallen * byMorning);
    if (dayInSeason[day] && asks(day, lack)) {
      watered[day] = lack;
      depletion -= lack;
    }
    const counts = Math.min(fallen, depletion);
    counted[day] = counts;
    depletion -= counts;
    const use = (potential[day] as number) * stress(depletion, holds, readily[day] as number);
    depletion = Math.min(holds, depletion + use);
  }
  return { counted, watered };
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
