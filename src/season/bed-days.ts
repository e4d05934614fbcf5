// What a bed's crops would use, and what its ground holds, on each day of a record, whatever water it gets.

import { intercropCoefficient } from "../physics/crop-coefficient.ts";
import { rainThatCounts } from "../physics/soil-water.ts";
import type { TopSoil } from "../physics/wetting-coefficient.ts";
import { type CropDays, type CropTrait, cropDays, cropTraits, meanBefore, TO_PLANT } from "./crop-days.ts";
import type { BedPart } from "./input.ts";
import type { Sky } from "./sky.ts";

/** Depths over a bed's ground on each day [m]; crops' and roots' are 0 on a day on which nothing grows. */
export type BedDays = {
  /** What its crops use when they are never short. */
  readonly potential: Float64Array;
  /** What their root zones hold, and what of it they take that day without stress. */
  readonly total: Float64Array;
  readonly readily: Float64Array;
  /** What they take without stress by the use of the week before: of several crops, what the one that has least does. */
  readonly easy: Float64Array;
  /** Water short at which the bed asks: so much that a day like the last ones takes it to what is easy; 0 while young. */
  readonly trigger: Float64Array;
  /** Rain that counts: on rooted ground, what overfills it still in it, and on the rest of the bed. */
  readonly rain: Float64Array;
  readonly restRain: Float64Array;
  /** What the ground under the planted part holds, as deep as roots may go. */
  readonly column: Float64Array;
  /** 1 on a day on which something is planted. */
  readonly planted: Uint8Array;
  /** 1 on such a day and on the few before it. */
  readonly toPlant: Uint8Array;
  /** Reference evapotranspiration of bare ground there, and the layer that dries. */
  readonly bare: Float64Array;
  readonly layer: TopSoil;
  /** What the whole bed holds, as deep as roots may go. */
  readonly room: number;
  /** Its crops in the part's order: their ages [day], and what each would use over its own ground. */
  readonly crops: readonly Pick<CropDays, "ages" | "use">[];
};

/** Ground over which a bed's depths are meant [m2]. */
export const wateredGround = (bed: BedPart): number => bed.area;

/**
 * Least share of a bed at which a crop is worth saving: smaller ones do not make the whole bed ask. Definition; where all
 * are smaller, all of them count.
 */
const WORTH_SAVING = 0.1;

/**
 * A bed's crops and ground over a record.
 *
 * @param sky depths of each day [m]
 * @param traits what a record teaches of each crop; of these very days when left out
 * @param room what the ground holds where crops of other days count too; of these very days when left out [m]
 * @returns depths of each day over the bed's ground [m]
 * @throws DomainError for stages, roots, shares or heights outside their relations
 * @validity the roots of several crops are taken together, each weighed by its share. The bed asks when the crop with the
 *   least water in easy reach does, of those on a tenth of the bed or more. Where only a share is wetted, so much of the
 *   ground is rooted, holds water and keeps rain
 * @source FAO-56 Eq. 58, 82, 83; Table 22 footnote 2; Annex 8, Eq. 8-1; crops that mingle: example 46; asking a day like
 *   the last ones ahead is our definition
 */
export function bedDays(
  bed: BedPart,
  sky: Sky,
  traits: readonly CropTrait[] = cropTraits(bed, sky),
  room?: number,
): BedDays {
  const length = sky.eto.length;
  const days = emptyDays(length);
  const ground: Ground = { rooted: new Float64Array(length), least: new Float64Array(length).fill(Infinity) };
  const worth = bed.crops.some(({ share }) => share >= WORTH_SAVING) ? WORTH_SAVING : 0;
  const grown = bed.crops.map((crop, place) => cropDays(bed, crop, sky, traits[place] as CropTrait));
  grown.forEach((one, place) => {
    const decides = one.crop.share > 0 && one.crop.share >= worth;
    addCrop(days, ground, { bed, ...one, roots: (traits[place] as CropTrait).roots, decides });
  });
  if (bed.mingled) mingle(days.potential, bed, grown, sky);
  wholeBed(days, ground, bed, sky);
  const held = bed.availableWater * bed.wettedShare * bed.rootLimit;
  const { total, readily } = bed.evaporable;
  return {
    ...days,
    layer: { total: total * bed.wettedShare, readily: readily * bed.wettedShare },
    room: room ?? largestOf(days.column, held),
    crops: grown.map(({ ages, use }) => ({ ages, use })),
  };
}

/** The largest of a series and of one more. */
function largestOf(series: Float64Array, other: number): number {
  let most = other;
  for (let day = 0; day < series.length; day++) most = Math.max(most, series[day] as number);
  return most;
}

function emptyDays(length: number) {
  const series = () => new Float64Array(length);
  return {
    potential: series(),
    total: series(),
    readily: series(),
    easy: series(),
    trigger: series().fill(Infinity),
    rain: series(),
    restRain: series(),
    column: series(),
    planted: new Uint8Array(length),
    toPlant: new Uint8Array(length),
    bare: series(),
  };
}

type Filled = ReturnType<typeof emptyDays>;
type Ground = { readonly rooted: Float64Array; readonly least: Float64Array };
/** Marks the days before each planting, and that itself; of those after the last day too. */
function markToPlant({ toPlant }: Filled, { crop, ages, after }: CropDays): void {
  if (crop.share === 0) return;
  const { length } = ages;
  for (let day = 0; day < length + after.length; day++) {
    if ((day < length ? ages[day] : after[day - length]) !== 0) continue;
    toPlant.fill(1, Math.max(0, day - TO_PLANT), Math.min(length, day + 1));
  }
}

type Adding = CropDays & Pick<CropTrait, "roots"> & { readonly bed: BedPart; readonly decides: boolean };

function addCrop(days: Filled, { rooted, least }: Ground, adding: Adding): void {
  const { bed, crop, ages, use, today, lately, roots, decides } = adding;
  const holds = bed.availableWater * bed.wettedShare;
  markToPlant(days, adding);
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    if (age < 0) continue;
    const depth = holds * (roots[age] as number);
    const held = depth * crop.share;
    add(rooted, day, crop.share);
    add(days.potential, day, (use[day] as number) * crop.share);
    add(days.total, day, held);
    add(days.readily, day, held * (today[day] as number));
    add(days.easy, day, held * (lately[day] as number));
    add(days.column, day, holds * bed.rootLimit * crop.share);
    if (age === 0 && crop.share > 0) days.planted[day] = 1;
    if (!decides) continue;
    least[day] = Math.min(least[day] as number, depth * (lately[day] as number));
    if (age < bed.youngDays) days.trigger[day] = 0;
  }
}

/** Crops whose leaves mingle use what one coefficient, weighed by height and share, gives over all their ground. */
function mingle(potential: Float64Array, bed: BedPart, grown: readonly CropDays[], sky: Sky): void {
  const planted = grown.filter(({ crop }) => crop.share !== 0);
  if (planted.length < 2) return;
  for (let day = 0; day < potential.length; day++) {
    const growing = planted.filter(({ ages }) => (ages[day] as number) >= 0);
    if (growing.length < 2) continue;
    const standing = growing.map(({ crop: { share, height }, kc }) => ({
      share,
      height,
      coefficient: kc[day] as number,
    }));
    const ground = standing.reduce((sum, { share }) => sum + share, 0);
    const depth = (sky.eto[day] as number) * bed.coverFactor * bed.mulchFactor;
    potential[day] = depth * intercropCoefficient(standing) * ground;
  }
}

/** When the bed asks, what rain does for it, and how fast it dries when bare. */
function wholeBed(days: Filled, { rooted, least }: Ground, bed: BedPart, sky: Sky): void {
  let standing = 0;
  for (let day = 0; day < rooted.length; day++) {
    const share = rooted[day] as number;
    const easy = Math.min(days.easy[day] as number, (least[day] as number) * share);
    const ahead = meanBefore(days.potential, day, standing);
    standing = share > 0 ? standing + 1 : 0;
    days.easy[day] = share > 0 ? easy : 0;
    days.trigger[day] = share > 0 ? Math.min(days.trigger[day] as number, Math.max(0, easy - ahead)) : 0;
    const reference = sky.eto[day] as number;
    days.bare[day] = reference * bed.coverFactor * bed.bareLeft * bed.wettedShare;
    if (bed.covered) continue;
    const counts = rainThatCounts(sky.arriving[day] as number, reference) * bed.wettedShare;
    days.rain[day] = counts * Math.min(1, share);
    days.restRain[day] = counts * (1 - Math.min(1, share));
  }
}

function add(series: Float64Array, day: number, amount: number): void {
  series[day] = (series[day] as number) + amount;
}
