// Would a bigger tank help? The same record with one tank smaller and bigger, one whole run for each size.

import type { DailyRecord } from "../rainfall/record.ts";
import type { DrawAnswer, SeasonAnswer } from "../season/answer.ts";
import type { SeasonInput, TankPart } from "../season/input.ts";
import { givenShare } from "../season/reliability-of-season.ts";
import { runSeason } from "../season/run.ts";
import { coarseFirst } from "./coarse-first.ts";

/** Times today's size: from a quarter to four times in equal ratios, today's exactly among them. */
export const SIZE_MULTIPLES: readonly number[] = Array.from(
  { length: 17 },
  (_, place) => 2 ** (place / 4 - 2),
);

/** Which tank of a plan, and the sizes to try as multiples of today's, rising [-]. */
export type SizeQuestion = {
  readonly plan: SeasonInput;
  readonly tank: string;
  readonly multiples: readonly number[];
};

/** How the whole season went with one size of the tank. */
export type SizePoint = {
  /** Times today's size [-]. */
  readonly multiple: number;
  /** What all vessels of that tank hold together [m3]. */
  readonly volume: number;
  /** Share of their thirst that the crops met; with no crop, of what the draws were due [-]. */
  readonly shareMet: number | null;
  /** Days a season on which a bed was short; with no crop, those of the draw that was short most often. */
  readonly daysShort: number | null;
  /** Lost to the ground from all tanks [m3] a season. */
  readonly spill: number;
};

export type SizeFailure = { readonly failed: string };

/**
 * A plan with one tank of another size: more vessels alike, or fewer, each as high as before.
 *
 * @param plan units at the type's fields
 * @param tank its id [-]
 * @param multiple of today's size, above 0 [-]
 * @returns the plan with volume, open surface and leak of that tank times the multiple [-]
 * @source definition
 */
export function withTankTimes(plan: SeasonInput, tank: string, multiple: number): SeasonInput {
  const resize = (part: TankPart): TankPart => ({
    ...part,
    vessel: { ...part.vessel, volume: part.vessel.volume * multiple },
    openArea: part.openArea * multiple,
    leak: part.leak * multiple,
  });
  return { ...plan, tanks: plan.tanks.map((part) => (part.id === tank ? resize(part) : part)) };
}

/**
 * Runs the season for every size, today's first and then the coarse picture before the fine; it rests after each run.
 *
 * @param question plan, tank and sizes, units at the type's fields
 * @param record the daily record [-]
 * @returns a point after each run; at the end null, or why a season could not be run
 * @source the season's own daily balance
 */
export function* tankSizes(
  question: SizeQuestion,
  record: DailyRecord,
): Generator<SizePoint, SizeFailure | null> {
  const { plan, tank, multiples } = question;
  const part = plan.tanks.find(({ id }) => id === tank);
  if (!part) return { failed: "This tank is left out of the season." };
  for (const place of coarseFirst(multiples.length, Math.max(0, multiples.indexOf(1)))) {
    const multiple = multiples[place] as number;
    const answer = runSeason(withTankTimes(plan, tank, multiple), record);
    if ("failed" in answer) return { failed: answer.failed };
    yield pointOf(answer, multiple, part.vessel.volume * multiple);
  }
  return null;
}

function pointOf(answer: SeasonAnswer, multiple: number, volume: number): SizePoint {
  const { shareMet, daysShort, spill } = answer.totals;
  const crops = shareMet !== null;
  return {
    multiple,
    volume,
    shareMet: crops ? shareMet : givenShare(answer),
    daysShort: crops ? daysShort : drawsShort(answer.draws),
    spill,
  };
}

function drawsShort(draws: readonly DrawAnswer[]): number | null {
  return draws.length > 0 ? Math.max(...draws.map(({ daysShort }) => daysShort)) : null;
}
