// What thirst costs a crop by the stage in which it comes: in flower more than while it only grows leaves.

import { DomainError, requireNotNegative } from "./domain-error.ts";

const BOOK = "Doorenbos & Kassam (1979), FAO Irrigation and Drainage Paper 33";

/** Of a crop's initial, development, middle and late stage [-]. */
export type ByStage = readonly [number, number, number, number];

export type StageUse = {
  /** Yield response factor of the stage [-]. */
  readonly response: number;
  /** What the crop used in it [m]. */
  readonly use: number;
  /** What it could have used [m]. */
  readonly potential: number;
};

/**
 * Share of the harvest that is likely lost to thirst, by the stage in which it came.
 * 1 - Ya / Ym = Ky sum (Ky s (ETc s - ETa s)) / sum (Ky s ETc s), 1 at the most
 * @param factor - yield response factor Ky of the whole season [-]
 * @param stages - each with its own factor; of several only their ratio counts [-]
 * @returns likely loss, 0 to 1; 0 where nothing could be used [-]
 * @throws DomainError when a factor or depth is negative, or the use above the potential
 * @validity thirst of any stage counts by what it lacked, weighed by the stage: the same share in all stages gives FAO-56 Eq. 90
 * @source additive by stages, Stewart et al. 1977; factors by stage, FAO-33; scaled to the season's factor is our definition
 * (all from memory)
 */
export function stagewiseYieldLoss(factor: number, stages: readonly StageUse[]): number {
  requireNotNegative("yield response factor", factor, BOOK);
  let [lost, all] = [0, 0];
  for (const { response, use, potential } of stages) {
    requireNotNegative("yield response factor of a stage", response, BOOK);
    requireNotNegative("crop use", use, BOOK);
    if (!(use <= potential)) throw new DomainError("crop use", use, "0 to the potential", BOOK);
    lost += response * (potential - use);
    all += response * potential;
  }
  return all > 0 ? Math.min(1, (factor * lost) / all) : 0;
}

/** Thirst counts alike in all stages: FAO-56 Eq. 90. */
const ALIKE: ByStage = [1, 1, 1, 1];

/**
 * Yield response factors by stage, FAO-33 (from memory): growth of leaves stands for the first two stages; flowering and
 * yield formation, halved, for the middle one; ripening for the last.
 */
const RESPONSES: Readonly<Record<string, ByStage>> = {
  tomato: [0.4, 0.4, 0.95, 0.4],
  watermelon: [0.45, 0.7, 0.8, 0.3],
  cabbage: [0.2, 0.2, 0.45, 0.6],
  onion_dry: [0.45, 0.45, 0.8, 0.3],
  potato: [0.45, 0.8, 0.7, 0.2],
  bean_green: [0.2, 0.2, 0.93, 0.2],
  bean_dry: [0.2, 0.2, 0.93, 0.2],
  pea: [0.2, 0.2, 0.8, 0.2],
  sweet_corn: [0.4, 0.4, 1, 0.2],
};

/**
 * A crop's yield response factors by stage.
 *
 * @param crop its name in the tables
 * @returns factors of the four stages, all alike where none are published [-]
 * @source FAO-33 (from memory)
 */
export const stageResponses = (crop: string): ByStage => RESPONSES[crop] ?? ALIKE;
