// What a bed's crops would use, and what its root zone holds, on each day of a record, whatever water it gets.

import { type CropCurve, cropCoefficient, intercropCoefficient } from "../physics/crop-coefficient.ts";
import { depletionFraction, rainThatCounts, rootDepth } from "../physics/soil-water.ts";
import { calendarDate, dayInYear } from "../units/calendar.ts";
import { MILLIMETRE } from "../units/constants.ts";
import type { BedPart, CropPart } from "./input.ts";
import { localCurve } from "./local-curve.ts";
import type { Sky } from "./sky.ts";

/** Depths over a bed's watered ground on each day [m]; all 0 on a day on which nothing grows. */
export type BedDays = {
  /** What its crops use when they are never short. */
  readonly potential: Float64Array;
  /** What their root zones hold, and what of it they take without stress. */
  readonly total: Float64Array;
  readonly readily: Float64Array;
  /** Water short at which the bed asks: 0 while its plants are young. */
  readonly trigger: Float64Array;
  /** Rain that counts and falls on rooted ground; what overfills the root zone is still in it. */
  readonly rain: Float64Array;
};

/** Ground that is watered and rooted [m2]. */
export const wateredGround = (bed: BedPart): number => bed.area * bed.wettedShare;

/**
 * Least share of a bed at which a crop is worth saving: smaller ones do not make the whole bed ask. Definition; where all
 * are smaller, all of them count.
 */
const WORTH_SAVING = 0.1;

/**
 * A bed's crops and root zone over a record.
 *
 * @param bed the bed, units at the type's fields
 * @param sky depths of each day [m]
 * @param traits what a record teaches of each crop; of these very days when left out [-]
 * @returns depths of each day over the watered ground [m]
 * @throws DomainError for stages, roots, shares or heights outside their relations
 * @validity the roots of several crops are taken together, each weighed by its share; their easy share of water is for
 *   the mean use of each over the record, as FAO-56 ch. 8 advises a constant one for a growing period. The bed asks when
 *   the crop with the least water in easy reach does, of those on a tenth of the bed or more
 * @source FAO-56 Eq. 58, 82, 83; Annex 8, Eq. 8-1; crops that mingle: example 46
 */
export function bedDays(
  bed: BedPart,
  sky: Sky,
  traits: readonly CropTrait[] = cropTraits(bed, sky),
): BedDays {
  const length = sky.eto.length;
  const days = emptyDays(length);
  const rooted = new Float64Array(length);
  const least = new Float64Array(length).fill(Infinity);
  const worth = bed.crops.some(({ share }) => share >= WORTH_SAVING) ? WORTH_SAVING : 0;
  const grown = bed.crops.map((crop, place) => grow(bed, crop, sky, traits[place] as CropTrait));
  for (const one of grown) {
    const decides = one.crop.share > 0 && one.crop.share >= worth;
    addCrop(days, { rooted, least }, { bed, ...one, decides });
  }
  if (bed.mingled) mingle(days.potential, bed, grown, sky);
  for (let day = 0; day < length; day++) {
    const share = rooted[day] as number;
    if (share === 0) {
      days.trigger[day] = 0;
      continue;
    }
    days.trigger[day] = Math.min(
      days.trigger[day] as number,
      days.readily[day] as number,
      (least[day] as number) * share,
    );
    if (!bed.covered) {
      const counts = rainThatCounts(sky.arriving[day] as number, sky.eto[day] as number);
      days.rain[day] = counts * Math.min(1, share);
    }
  }
  return days;
}

function emptyDays(length: number): BedDays {
  const series = () => new Float64Array(length);
  const trigger = series().fill(Infinity);
  return { potential: series(), total: series(), readily: series(), trigger, rain: series() };
}

/** What a whole record teaches of a crop on its bed: its coefficients, and the share of water in easy reach [-]. */
export type CropTrait = { readonly curve: CropCurve; readonly easy: number };

/**
 * What a record teaches of each of a bed's crops.
 *
 * @param bed the bed, units at the type's fields
 * @param sky depths of each day [m]
 * @returns coefficients and easy share of each crop, those of the tables where it never stands in the record [-]
 * @throws DomainError for stages or heights outside their relations
 * @source FAO-56 ch. 8, Table 22 footnote 2, for the mean use over the crop's life
 */
export function cropTraits(bed: BedPart, sky: Sky): readonly CropTrait[] {
  return bed.crops.map((crop) => {
    const ages = agesOf(crop, sky.firstDay, sky.eto.length);
    const curve = localCurve(bed, crop, sky, ages);
    const kc = byAge(crop, (age) => cropCoefficient(curve, age) ?? 0);
    let sum = 0;
    let days = 0;
    for (let day = 0; day < ages.length; day++) {
      const age = ages[day] as number;
      if (age < 0) continue;
      sum += (sky.eto[day] as number) * (kc[age] as number);
      days++;
    }
    const mean = days === 0 ? USE_OF_TABLE : (sum / days) * bed.coverFactor * bed.mulchFactor;
    return { curve, easy: depletionFraction(crop.depletion, mean) };
  });
}

/** A value of each day of a crop's life, worked out once and not on every day of a record. */
function byAge({ stages }: CropPart, of: (age: number) => number): Float64Array {
  const life = stages[0] + stages[1] + stages[2] + stages[3];
  return Float64Array.from({ length: Math.ceil(life) }, (_, age) => of(age));
}

/** Crop use of a day for which the table of easy shares is drawn up [m]: FAO-56 Table 22. */
const USE_OF_TABLE = 5 * MILLIMETRE;

/** A crop through the days: its age [day], its coefficient [-] and what it uses over its own ground [m]. */
type Grown = {
  readonly crop: CropPart;
  readonly easy: number;
  readonly ages: Int32Array;
  readonly kc: Float64Array;
  readonly use: Float64Array;
};

function grow(bed: BedPart, crop: CropPart, sky: Sky, { curve, easy }: CropTrait): Grown {
  const ages = agesOf(crop, sky.firstDay, sky.eto.length);
  const kcOf = byAge(crop, (age) => cropCoefficient(curve, age) ?? 0);
  const [kc, use] = [new Float64Array(ages.length), new Float64Array(ages.length)];
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    if (age < 0) continue;
    kc[day] = kcOf[age] as number;
    use[day] = (sky.eto[day] as number) * (kc[day] as number) * bed.coverFactor * bed.mulchFactor;
  }
  return { crop, easy, ages, kc, use };
}

type Ground = { readonly rooted: Float64Array; readonly least: Float64Array };
type Adding = Grown & { readonly bed: BedPart; readonly decides: boolean };

function addCrop(
  days: BedDays,
  { rooted, least }: Ground,
  { bed, crop, easy, ages, use, decides }: Adding,
): void {
  const deepest = Math.min(crop.rootEnd, bed.rootLimit);
  const fullGrown = crop.stages[0] + crop.stages[1];
  const start = Math.min(crop.rootStart, deepest);
  const depthOf = byAge(crop, (age) => rootDepth(start, deepest, age, fullGrown));
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    if (age < 0) continue;
    const depth = depthOf[age] as number;
    const held = bed.availableWater * depth * crop.share;
    add(rooted, day, crop.share);
    add(days.potential, day, (use[day] as number) * crop.share);
    add(days.total, day, held);
    add(days.readily, day, held * easy);
    if (!decides) continue;
    least[day] = Math.min(least[day] as number, bed.availableWater * depth * easy);
    if (age < bed.youngDays) days.trigger[day] = 0;
  }
}

/** Crops whose leaves mingle use what one coefficient, weighed by height and share, gives over all their ground. */
function mingle(potential: Float64Array, bed: BedPart, grown: readonly Grown[], sky: Sky): void {
  for (let day = 0; day < potential.length; day++) {
    const standing = grown.flatMap((one) => {
      if ((one.ages[day] as number) < 0 || one.crop.share === 0) return [];
      return [{ share: one.crop.share, height: one.crop.height, coefficient: one.kc[day] as number }];
    });
    if (standing.length < 2) continue;
    const ground = standing.reduce((sum, { share }) => sum + share, 0);
    const depth = (sky.eto[day] as number) * bed.coverFactor * bed.mulchFactor;
    potential[day] = depth * intercropCoefficient(standing) * ground;
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
