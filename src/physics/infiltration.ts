// Getting water into a dry bed: how much in all, how much at once, how long to wait, how deep it went.

import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const PRACTICE = "common practice, no source";

/**
 * Water that fills a dry root zone, as it leaves the can or hose.
 * V = area wetted share held depth dryness / efficiency
 * @param given.area - area of the bed [m2]
 * @param given.wettedShare - share of it that is watered, 0 to 1 [-]
 * @param given.held - water held between field capacity and wilting point [m/m]
 * @param given.depth - depth to be wetted [m]
 * @param given.dryness - share of the held water that is missing, 0 to 1 [-]
 * @param given.efficiency - share of the water given that reaches the roots, above 0 to 1 [-]
 * @returns volume for the first soak [m3]
 * @throws DomainError when a share is outside 0 to 1 or a size negative
 * @validity no crack or slope that carries water past the roots
 * @source definition; FAO-56 Eq. 82 for the water held
 */
export function firstSoakVolume(given: {
  readonly area: number;
  readonly wettedShare: number;
  readonly held: number;
  readonly depth: number;
  readonly dryness: number;
  readonly efficiency: number;
}): number {
  requireNotNegative("area of the bed", given.area, "definition");
  requireWithin("wetted share", given.wettedShare, [0, 1], "definition");
  requireWithin("held water", given.held, [0, 1], "definition");
  requireNotNegative("depth to be wetted", given.depth, "definition");
  requireWithin("dryness", given.dryness, [0, 1], "definition");
  requireEfficiency(given.efficiency);
  const missing = given.held * given.depth * given.dryness;
  return (given.area * given.wettedShare * missing) / given.efficiency;
}

/** A soak in passes: how many, how deep each [m], how long one takes to sink in and all of them [s]. */
export type SoakPasses = {
  readonly passes: number;
  readonly depthOfPass: number;
  readonly wait: number;
  readonly time: number;
};

/**
 * A soak split into passes that the surface can hold, each left to sink in before the next.
 * n = ceil(depth / most at once); wait = depth of a pass / intake rate
 * @param given.depth - depth to be given in all [m]
 * @param given.mostAtOnce - deepest pass that does not run off [m]
 * @param given.intakeRate - rate at which the soil takes water in [m/s]
 * @returns number of passes [-], depth of each [m], wait between two and time until the last has sunk in [s]
 * @throws DomainError when the depth is negative or a limit not above zero
 * @validity ponded water on level ground; a crusted or water-shy soil takes longer
 * @source common practice, no source
 */
export function soakPasses(given: {
  readonly depth: number;
  readonly mostAtOnce: number;
  readonly intakeRate: number;
}): SoakPasses {
  requireNotNegative("depth to be given", given.depth, PRACTICE);
  requirePositive("deepest pass", given.mostAtOnce, PRACTICE);
  requirePositive("intake rate", given.intakeRate, PRACTICE);
  // A depth that is a whole number of passes must not need one more for a rounding in the last bit.
  const passes = Math.ceil((given.depth / given.mostAtOnce) * (1 - 1e-12));
  const depthOfPass = passes === 0 ? 0 : given.depth / passes;
  const wait = depthOfPass / given.intakeRate;
  return { passes, depthOfPass, wait, time: passes * wait };
}

/**
 * How deep a depth of water wets a soil.
 * depth of water / water missing per depth of soil
 * @param water - water that soaked in, as a depth [m]
 * @param held - water held between field capacity and wilting point [m/m]
 * @param dryness - share of the held water that was missing, above 0 to 1 [-]
 * @returns depth of the wetted soil [m]
 * @throws DomainError when the water is negative, or the soil holds or lacks none
 * @validity even wetting; dig and look, as cracks and hard layers change it
 * @source definition
 */
export function wettedDepth(water: number, held: number, dryness: number): number {
  requireNotNegative("water that soaked in", water, "definition");
  requirePositive("held water", held, "definition");
  if (!(dryness > 0 && dryness <= 1))
    throw new DomainError("dryness", dryness, "above 0, at most 1", "definition");
  return water / (held * dryness);
}

function requireEfficiency(efficiency: number): void {
  if (!(efficiency > 0 && efficiency <= 1)) {
    throw new DomainError("efficiency", efficiency, "above 0, at most 1", "definition");
  }
}
