// What a bed's crops would use, and what its root zone holds, on each day of a record, whatever water it gets.

import { type CropCurve, cropCoefficient } from "../physics/crop-coefficient.ts";
import { depletionFraction, rainThatCounts, rootDepth } from "../physics/soil-water.ts";
import { calendarDate, dayInYear } from "../units/calendar.ts";
import type { BedPart, CropPart } from "./plan.ts";

/** Depths over a bed's watered ground on each day [m]; all 0 on a day on which nothing grows. */
export type BedDays = {
  /** What its crops use when they are never short. */
  readonly potential: Float64Array;
  /** What their root zones hold, and what of it they take without stress. */
  readonly total: Float64Array;
  readonly readily: Float64Array;
  /** Rain that counts and falls on rooted ground; what overfills the root zone is still in it. */
  readonly rain: Float64Array;
};

/** The sky over a bed: depths of each day [m]. */
export type Sky = {
  readonly firstDay: number;
  readonly arriving: Float64Array;
  readonly eto: Float64Array;
};

/** Ground that is watered and rooted [m2]. */
export const wateredGround = (bed: BedPart): number => bed.area * bed.wettedShare;

/**
 * A bed's crops and root zone over a record.
 *
 * @param bed the bed, units at the type's fields
 * @param sky depths of each day [m]
 * @returns depths of each day over the watered ground [m]
 * @throws DomainError for stages, roots or shares outside their relations
 * @validity the roots of several crops are taken together, each weighed by its share; their easy share of water is for
 *   the mean use of each over the record, as FAO-56 ch. 8 advises a constant one for a growing period
 * @source FAO-56 Eq. 58, 82, 83; Annex 8, Eq. 8-1
 */
export function bedDays(bed: BedPart, sky: Sky): BedDays {
  const days = emptyDays(sky.eto.length);
  const rooted = new Float64Array(sky.eto.length);
  for (const crop of bed.crops) addCrop(days, rooted, { bed, crop, sky });
  if (!bed.covered) {
    for (let day = 0; day < rooted.length; day++) {
      const share = rooted[day] as number;
      if (share === 0) continue;
      const counts = rainThatCounts(sky.arriving[day] as number, sky.eto[day] as number);
      days.rain[day] = counts * Math.min(1, share);
    }
  }
  return days;
}

function emptyDays(length: number): BedDays {
  const series = () => new Float64Array(length);
  return { potential: series(), total: series(), readily: series(), rain: series() };
}

type Growing = { readonly bed: BedPart; readonly crop: CropPart; readonly sky: Sky };

function addCrop(days: BedDays, rooted: Float64Array, { bed, crop, sky }: Growing): void {
  const ages = agesOf(crop, sky.firstDay, sky.eto.length);
  const use = new Float64Array(ages.length);
  let sum = 0;
  let grown = 0;
  for (let day = 0; day < ages.length; day++) {
    if ((ages[day] as number) < 0) continue;
    const kc = cropCoefficient(crop, ages[day] as number) ?? 0;
    use[day] = (sky.eto[day] as number) * kc * bed.coverFactor * bed.mulchFactor;
    sum += use[day] as number;
    grown++;
  }
  if (grown === 0) return;
  const easy = depletionFraction(crop.depletion, sum / grown);
  const deepest = Math.min(crop.rootEnd, bed.rootLimit);
  const fullGrown = crop.stages[0] + crop.stages[1];
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    if (age < 0) continue;
    const depth = rootDepth(Math.min(crop.rootStart, deepest), deepest, age, fullGrown);
    const held = bed.availableWater * depth * crop.share;
    add(rooted, day, crop.share);
    add(days.potential, day, (use[day] as number) * crop.share);
    add(days.total, day, held);
    add(days.readily, day, held * easy);
  }
}

function add(series: Float64Array, day: number, amount: number): void {
  series[day] = (series[day] as number) + amount;
}

/** Days since the last planting on each day, -1 outside the crop's life. */
function agesOf(crop: CropPart & CropCurve, firstDay: number, length: number): Int32Array {
  const ages = new Int32Array(length).fill(-1);
  const life = crop.stages[0] + crop.stages[1] + crop.stages[2] + crop.stages[3];
  const firstYear = calendarDate(firstDay - Math.ceil(life)).year;
  const lastYear = calendarDate(firstDay + length).year;
  for (let year = firstYear; year <= lastYear; year++) {
    const planted = dayInYear(crop.planted, year);
    if (planted === null) continue;
    const last = Math.min(length, planted - firstDay + Math.ceil(life));
    for (let day = Math.max(0, planted - firstDay); day < last; day++) ages[day] = day + firstDay - planted;
  }
  return ages;
}
