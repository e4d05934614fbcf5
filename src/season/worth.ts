// What beds are worth to their grower, and what of it a run loses to thirst, by crop and stage.

import { type ByStage, stageResponses, stagewiseYieldLoss } from "../physics/yield-response.ts";
import type { BedDays } from "./bed-days.ts";
import type { Bed } from "./beds.ts";
import type { BedPart } from "./input.ts";
import { isThirsty } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";

/** Where no yield response factor is published thirst costs harvest one to one: our definition. */
const NO_FACTOR = 1;
const STAGES = 4;

/** What a whole bed is worth. */
export const worthOf = ({ worth, area }: Pick<BedPart, "worth" | "area">): number => worth * area;

/** A crop of a bed through the days of a run. */
type CropStake = {
  /** Its share of the bed's worth, and its yield response factors [-]. */
  readonly share: number;
  readonly factor: number;
  readonly responses: ByStage;
  /** Its stage on each day of the season, 0 to 3; -1: it does not stand. And what it would use [m]. */
  readonly stage: Int8Array;
  readonly use: Float64Array;
};

/** All that a bed stands to lose in a run. */
export type Stakes = { readonly bed: Bed; readonly crops: readonly CropStake[] };

/**
 * What the beds of a run stand to lose, crop by crop.
 *
 * @param state the run, ready for its first day
 */
export function stakesOf(state: SeasonState): readonly Stakes[] {
  return state.beds.map((bed) => {
    const whole = bed.part.crops.reduce((sum, { share }) => sum + share, 0);
    const crops = bed.part.crops.map((crop, place): CropStake => {
      const { ages, use } = bed.days.crops[place] as BedDays["crops"][number];
      return {
        share: whole > 0 ? crop.share / whole : 0,
        factor: crop.yieldResponse ?? NO_FACTOR,
        responses: stageResponses(crop.crop),
        stage: stagesOf(crop.stages, ages, state.dayInSeason),
        use,
      };
    });
    return { bed, crops };
  });
}

/** The stage of each day; -1 where the crop does not stand, or it is not the season. */
function stagesOf(stages: ByStage, ages: Int32Array, dayInSeason: Int32Array): Int8Array {
  const found = new Int8Array(ages.length).fill(-1);
  for (let day = 0; day < found.length; day++) {
    const age = ages[day] as number;
    if (age >= 0 && dayInSeason[day] !== 0) found[day] = stageAt(stages, age);
  }
  return found;
}

/** The stage of a day, the first day of a crop being the first of its stage. */
function stageAt(stages: ByStage, age: number): number {
  let end = 0;
  for (let stage = 0; stage < STAGES; stage++) {
    end += stages[stage] as number;
    if (age + 1 <= end) return stage;
  }
  return STAGES - 1;
}

/** Depths by crop and stage, four a crop [m]. */
export type ByCropStage = readonly Float64Array[];

/**
 * What crops would use over days of a run, by bed, crop and stage.
 *
 * @param days first and last, both included [day of the run]
 * @returns depths [m]
 */
export function potentialOver(
  stakes: readonly Stakes[],
  days: { readonly first: number; readonly last: number },
): ByCropStage {
  return stakes.map(({ crops }) => {
    const sums = noDepths(crops);
    crops.forEach(({ stage, use }, crop) => {
      for (let day = days.first; day <= days.last; day++) {
        const at = stage[day] as number;
        if (at >= 0) sums[crop * STAGES + at] = (sums[crop * STAGES + at] as number) + (use[day] as number);
      }
    });
    return sums;
  });
}

/** What the beds of a run lacked, in its order. */
export type Thirst = {
  /** By crop and stage [m]. */
  readonly lacked: ByCropStage;
  /** Days on which a bed was short in the season, and the first of them [day of the run]; -1: none. */
  readonly days: Int32Array;
  readonly from: Int32Array;
};

/** Nothing yet, of each crop and stage of a bed. */
export const noDepths = (crops: readonly unknown[]): Float64Array => new Float64Array(crops.length * STAGES);

export const noThirst = (stakes: readonly Stakes[]): Thirst => ({
  lacked: stakes.map(({ crops }) => noDepths(crops)),
  days: new Int32Array(stakes.length),
  from: new Int32Array(stakes.length).fill(-1),
});

/**
 * Books what the beds lacked on a day of the season, in its evening.
 *
 * @param thirst gets it; a day of less thirst than counts as short books none
 * @param day of the run
 */
export function bookThirst(stakes: readonly Stakes[], thirst: Thirst, day: number): void {
  for (let place = 0; place < stakes.length; place++) {
    const { bed, crops } = stakes[place] as Stakes;
    const potential = bed.days.potential[day] as number;
    if (potential === 0 || !isThirsty(potential, bed.came.use)) continue;
    thirst.days[place] = (thirst.days[place] as number) + 1;
    if ((thirst.from[place] as number) < 0) thirst.from[place] = day;
    addThirst(crops, thirst.lacked[place] as Float64Array, day, 1 - bed.came.use / potential);
  }
}

function addThirst(crops: readonly CropStake[], sums: Float64Array, day: number, share: number): void {
  for (let crop = 0; crop < crops.length; crop++) {
    const { stage, use } = crops[crop] as CropStake;
    const at = stage[day] as number;
    if (at < 0) continue;
    const slot = crop * STAGES + at;
    sums[slot] = (sums[slot] as number) + (use[day] as number) * share;
  }
}

/**
 * Share of a bed's worth that its crops lose.
 *
 * @param thirst what they lacked, by crop and stage [m]
 * @param potentials what they could use in the whole season, in parts that add up [m]
 * @returns share, 0 to 1 [-]
 * @source stagewiseYieldLoss
 */
export function shareLost(
  { crops }: Stakes,
  thirst: Float64Array,
  potentials: readonly Float64Array[],
): number {
  let lost = 0;
  for (let crop = 0; crop < crops.length; crop++) {
    const { share, factor, responses } = crops[crop] as CropStake;
    const stages = responses.map((response, stage) => {
      const slot = crop * STAGES + stage;
      const potential = potentials.reduce((sum, part) => sum + (part[slot] as number), 0);
      return { response, potential, use: Math.max(0, potential - (thirst[slot] as number)) };
    });
    lost += share * stagewiseYieldLoss(factor, stages);
  }
  return lost;
}

/** The same of every bed of a run, the potentials of all beds in parts that add up [m]. */
export const sharesLost = (
  stakes: readonly Stakes[],
  { lacked }: Thirst,
  parts: readonly ByCropStage[],
): Float64Array =>
  Float64Array.from(stakes, (stake, bed) =>
    shareLost(
      stake,
      lacked[bed] as Float64Array,
      parts.map((part) => part[bed] as Float64Array),
    ),
  );

/**
 * What a depth of water that a bed's crops go without on a day costs, as a share of its worth.
 *
 * @param day of the run
 * @param potentials what they could use in the whole season, in parts that add up [m]
 * @returns share a depth, 0 where nothing stands [1/m]
 * @source stagewiseYieldLoss, its slope
 */
export function costADepth({ bed, crops }: Stakes, day: number, potentials: readonly Float64Array[]): number {
  const all = bed.days.potential[day] as number;
  if (all === 0) return 0;
  return crops.reduce((sum, { share, factor, responses, stage, use }, crop) => {
    const at = stage[day] as number;
    if (at < 0) return sum;
    const weighed = responses.reduce((most, response, of) => {
      const slot = crop * STAGES + of;
      return most + response * potentials.reduce((part, more) => part + (more[slot] as number), 0);
    }, 0);
    const cost = (factor * (responses[at] as number) * (use[day] as number)) / (weighed * all);
    return weighed > 0 ? sum + share * cost : sum;
  }, 0);
}

/** Share of all that beds are worth that is lost, of the worth of each and the share of it that is lost [-]. */
export function shareOfWorth(worths: readonly number[], lost: Float64Array): number {
  let [gone, all] = [0, 0];
  for (let place = 0; place < worths.length; place++) {
    gone += (worths[place] as number) * (lost[place] as number);
    all += worths[place] as number;
  }
  return all > 0 ? gone / all : 0;
}
