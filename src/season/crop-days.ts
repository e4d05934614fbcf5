// A crop through the days of a record: its age, what it would use, and what share of its water it takes with ease.

import { type CropCurve, cropCoefficient } from "../physics/crop-coefficient.ts";
import { partlyWettedCoefficient } from "../physics/dual-coefficient.ts";
import { depletionFraction, rootDepth } from "../physics/soil-water.ts";
import { calendarDate, dayInYear } from "../units/calendar.ts";
import type { BedPart, CropPart } from "./input.ts";
import { localCurve } from "./local-curve.ts";
import { layNoted } from "./noted-crops.ts";
import type { Sky } from "./sky.ts";

/** What a whole record teaches of a crop on its bed, by its age in days: the same in any other weather. */
export type CropTrait = {
  /** Coefficient over its ground [-]. */
  readonly kc: Float64Array;
  /** Depth of its roots [m]. */
  readonly roots: Float64Array;
};

/** A crop on each day of a record; all 0 where it does not stand. */
export type CropDays = {
  readonly crop: CropPart;
  /** Days since planting; -1: it does not stand. */
  readonly ages: Int32Array;
  /** The same of the few days after the record's last. */
  readonly after: Int32Array;
  /** Coefficient over its ground [-], and what it would use there [m]. */
  readonly kc: Float64Array;
  readonly use: Float64Array;
  /** Share of its water that it takes without stress: by that day's use, and by the mean use of the week before [-]. */
  readonly today: Float64Array;
  readonly lately: Float64Array;
};

/**
 * What a record teaches of each of a bed's crops.
 *
 * @param sky depths of each day [m]
 * @returns coefficients of each crop, those of the tables where it never stands in the record [-], and roots [m]
 * @throws DomainError for stages, shares, heights or roots outside their relations
 * @source FAO-56 Eq. 58, 62, 65 and 70: air corrects the plants' own coefficient by as much as the whole; a wetted share as
 *   in examples 33 and 34
 */
export function cropTraits(bed: BedPart, sky: Sky): readonly CropTrait[] {
  return bed.crops.map((crop) => {
    const curve = localCurve(bed, crop, sky, agesOf(crop, sky.firstDay, sky.eto.length));
    return { kc: coefficients(bed, crop, curve), roots: rootDepths(bed, crop) };
  });
}

function coefficients(bed: BedPart, crop: CropPart, curve: CropCurve): Float64Array {
  const basal = {
    kcInitial: crop.kcbInitial,
    kcMiddle: Math.max(0, crop.kcbMiddle + curve.kcMiddle - crop.kcMiddle),
    kcEnd: Math.max(0, crop.kcbEnd + curve.kcEnd - crop.kcEnd),
    stages: crop.stages,
  };
  return byAge(crop, (age) =>
    partlyWettedCoefficient({
      coefficient: cropCoefficient(curve, age) ?? 0,
      basal: cropCoefficient(basal, age) ?? 0,
      wetted: bed.wettedShare,
      canopy: bed.canopyShare,
    }),
  );
}

function rootDepths({ rootLimit }: BedPart, crop: CropPart): Float64Array {
  const deepest = Math.min(crop.rootEnd, rootLimit);
  const start = Math.min(crop.rootStart, deepest);
  return byAge(crop, (age) => rootDepth(start, deepest, age, crop.stages[0] + crop.stages[1]));
}

/** A value of each day of a crop's life, worked out once and not on every day of a record. */
function byAge({ stages }: CropPart, of: (age: number) => number): Float64Array {
  const life = stages[0] + stages[1] + stages[2] + stages[3];
  return Float64Array.from({ length: Math.ceil(life) }, (_, age) => of(age));
}

/** So many days before its planting a crop counts as to be planted: our definition [day]. */
export const TO_PLANT = 3;

/** Days whose mean use tells how fast a bed has been drying: our definition. */
export const LATELY = 7;

/**
 * Mean of a daily series over the days before a day, as far as something has grown on them.
 *
 * @param series one value a day [m]
 * @param day which [day]
 * @param back days before it that count, at most a week of them [day]
 * @returns mean; of the day itself where none count [m]
 */
export function meanBefore(series: Float64Array, day: number, back: number): number {
  const days = Math.min(LATELY, back, day);
  if (days <= 0) return series[day] as number;
  let sum = 0;
  for (let before = 1; before <= days; before++) sum += series[day - before] as number;
  return sum / days;
}

/**
 * A crop through a record.
 *
 * @param crop one of its crops
 * @param sky depths of each day [m]
 * @param trait what a record teaches of it
 * @returns its days, depths over its own ground [m]
 * @throws DomainError for a share that is taken without stress outside its relation
 * @source FAO-56 Table 22 footnote 2, day by day
 */
export function cropDays(bed: BedPart, crop: CropPart, sky: Sky, trait: CropTrait): CropDays {
  const all = agesOf(crop, sky.firstDay, sky.eto.length + TO_PLANT);
  const [ages, after] = [all.subarray(0, sky.eto.length), all.subarray(sky.eto.length)];
  const series = () => new Float64Array(ages.length);
  const days = { crop, ages, after, kc: series(), use: series(), today: series(), lately: series() };
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    if (age < 0) continue;
    const kc = trait.kc[age] as number;
    const use = (sky.eto[day] as number) * kc * bed.coverFactor * bed.mulchFactor;
    days.kc[day] = kc;
    days.use[day] = use;
    days.today[day] = depletionFraction(crop.depletion, use);
    days.lately[day] = depletionFraction(crop.depletion, meanBefore(days.use, day, age));
  }
  return days;
}

/** Days since the last planting on each day, -1 outside the crop's life; as it was noted, where it was. */
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
  layNoted(ages, crop, firstDay, Math.ceil(life));
  return ages;
}
