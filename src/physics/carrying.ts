// Water carried by hand: rounds, weight, time, and what it asks of a body.

import { MINUTE } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const NIOSH = "Waters, Putz-Anderson & Garg (1994), revised NIOSH lifting equation";
const PANDOLF = "Pandolf, Givoni & Goldman (1977), J. Appl. Physiol. 43";

/**
 * Rounds it takes to carry a volume of water.
 * ceil(volume / (can volume cans at once))
 * @param volume - water to be carried [m3]
 * @param canVolume - water in one can [m3]
 * @param cansAtOnce - cans carried in a round [-]
 * @returns number of rounds, the last one perhaps not full [-]
 * @throws DomainError when the volume is negative, the can has no size or no can is carried
 * @validity cans filled to the same mark
 * @source definition
 */
export function tripsFor(volume: number, canVolume: number, cansAtOnce: number): number {
  requirePositive("cans at once", cansAtOnce, "definition");
  return Math.ceil(cansFor(volume, canVolume) / cansAtOnce);
}

/**
 * Cans that hold a volume of water.
 * ceil(volume / can volume)
 * @param volume - water to be carried [m3]
 * @param canVolume - water in one can [m3]
 * @returns number of cans, the last one perhaps not full [-]
 * @throws DomainError when the volume is negative or the can has no size
 * @validity cans filled to the same mark
 * @source definition
 */
export function cansFor(volume: number, canVolume: number): number {
  requireNotNegative("water to be carried", volume, "definition");
  requirePositive("can volume", canVolume, "definition");
  // Water that fills a whole number of cans must not need one more for a rounding in the last bit.
  return Math.ceil((volume / canVolume) * (1 - 1e-12));
}

/**
 * Weight of the full cans carried in a round.
 * cans at once (can + density can volume)
 * @param given.canVolume - water in one can [m3]
 * @param given.canWeight - mass of one empty can [kg]
 * @param given.cansAtOnce - cans carried in a round [-]
 * @param given.density - density of the water [kg/m3]
 * @returns mass carried [kg]
 * @throws DomainError when a value is negative
 * @validity full cans
 * @source definition
 */
export function weightPerTrip(given: {
  readonly canVolume: number;
  readonly canWeight: number;
  readonly cansAtOnce: number;
  readonly density: number;
}): number {
  for (const [name, value] of Object.entries(given)) requireNotNegative(name, value, "definition");
  return given.cansAtOnce * (given.canWeight + given.density * given.canVolume);
}

/**
 * Time of one round: fill, walk there, pour, walk back.
 * cans at once (fill + pour) + 2 distance / pace
 * @param given.distance - way from the tank to the bed [m]
 * @param given.pace - walking speed, both ways [m/s]
 * @param given.fillTime - time to fill one can [s]
 * @param given.pourTime - time to pour out one can [s]
 * @param given.cansAtOnce - cans carried in a round [-]
 * @returns time of a round [s]
 * @throws DomainError when a value is negative or the pace zero
 * @validity cans filled and poured one after the other
 * @source definition
 */
export function roundTime(given: {
  readonly distance: number;
  readonly pace: number;
  readonly fillTime: number;
  readonly pourTime: number;
  readonly cansAtOnce: number;
}): number {
  requirePositive("pace", given.pace, "definition");
  for (const [name, value] of Object.entries(given)) requireNotNegative(name, value, "definition");
  return given.cansAtOnce * (given.fillTime + given.pourTime) + (2 * given.distance) / given.pace;
}

/** How a load is lifted; lengths [m], angle [rad], both shares [-]. */
export type Lift = {
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  readonly twist: number;
  readonly frequencyFactor: number;
  readonly gripFactor: number;
};

/**
 * Load that most healthy workers can lift in that way.
 * 23 kg (0.25 / H) (1 - 0.3 |V - 0.75|) (0.82 + 0.045 / D) (1 - 0.0032 A) FM CM; a factor over 1 counts as 1
 * @param lift.reach - hands in front of the ankles H, 0.25 to 0.63 (less counts as 0.25) [m]
 * @param lift.height - hands above the floor at the start V, 0 to 1.75 [m]
 * @param lift.travel - height through which the load is lifted D, 0 to 1.75 (less than 0.25 counts as 0.25) [m]
 * @param lift.twist - twist of the body A, 0 to 135 degrees [rad]
 * @param lift.frequencyFactor - for how often, see `LIFT_FREQUENCY_FACTORS`, above 0 to 1 [-]
 * @param lift.gripFactor - 1 good, 0.95 fair, 0.90 poor (from memory) [-]
 * @returns recommended weight limit [kg]
 * @throws DomainError outside these ranges
 * @validity smooth two-handed lifts on a firm floor; not carrying, not one hand; the twist factor is from memory
 * @source revised NIOSH lifting equation, metric form
 */
export function recommendedWeightLimit(lift: Lift): number {
  requireWithin("reach", lift.reach, [0, 0.63], NIOSH);
  requireWithin("height of the hands", lift.height, [0, 1.75], NIOSH);
  requireWithin("height of the lift", lift.travel, [0, 1.75], NIOSH);
  requireWithin("twist", lift.twist, [0, (135 * Math.PI) / 180], NIOSH);
  for (const factor of [lift.frequencyFactor, lift.gripFactor]) {
    if (!(factor > 0 && factor <= 1))
      throw new DomainError("lifting factor", factor, "above 0, at most 1", NIOSH);
  }
  const reach = 0.25 / Math.max(0.25, lift.reach);
  const height = 1 - 0.3 * Math.abs(lift.height - 0.75);
  const travel = 0.82 + 0.045 / Math.max(0.25, lift.travel);
  const twist = 1 - 0.0032 * ((lift.twist * 180) / Math.PI);
  return 23 * reach * height * Math.min(1, travel) * twist * lift.frequencyFactor * lift.gripFactor;
}

/** Lifts a minute [1/min] and the frequency factor for up to an hour of it, as restated in public code. */
export const LIFT_FREQUENCY_FACTORS: readonly (readonly [perMinute: number, factor: number])[] = [
  [0.2, 1],
  [0.5, 0.97],
  [1, 0.94],
  [2, 0.91],
  [3, 0.88],
  [4, 0.84],
  [5, 0.8],
  [6, 0.75],
];

/**
 * Frequency factor of lifting for up to an hour, between the rows of the table in a straight line.
 * FM from the table; 1 below one lift in five minutes
 * @param liftsPerSecond - lifts in a second [1/s]
 * @returns frequency factor [-]
 * @throws DomainError when negative or more than six lifts a minute
 * @validity up to one hour, then rest
 * @source revised NIOSH lifting equation, table of the frequency factor as restated in public code
 */
export function liftFrequencyFactor(liftsPerSecond: number): number {
  const perMinute = liftsPerSecond * MINUTE;
  requireWithin("lifts a minute", perMinute, [0, 6], NIOSH);
  let [before, factorBefore] = [0, 1];
  for (const [at, factor] of LIFT_FREQUENCY_FACTORS) {
    if (perMinute <= at) {
      return factorBefore + ((perMinute - before) / (at - before)) * (factor - factorBefore);
    }
    [before, factorBefore] = [at, factor];
  }
  return factorBefore;
}

/**
 * How a load compares with the recommended limit.
 * LI = load / RWL
 * @param load - mass lifted [kg]
 * @param limit - recommended weight limit [kg]
 * @returns lifting index, acceptable up to 1 [-]
 * @throws DomainError when the load is negative or the limit not above zero
 * @validity as the limit
 * @source revised NIOSH lifting equation
 */
export function liftingIndex(load: number, limit: number): number {
  requireNotNegative("load", load, NIOSH);
  requirePositive("recommended weight limit", limit, NIOSH);
  return load / limit;
}

/**
 * Power that a body spends on walking with a load on its back; by hand it is more.
 * M = 1.5 W + 2 (W + L) (L / W)^2 + n (W + L) (1.5 V^2 + 0.35 V G), G in percent
 * @param given.body - mass of the person W [kg]
 * @param given.load - mass carried L [kg]
 * @param given.pace - walking speed V, 0 to 2.5 [m/s]
 * @param given.grade - rise over run, 0 to 0.25 [-]
 * @param given.terrain - 1 on a road, 1.1 on dirt, more on soft ground n [-]
 * @returns metabolic power [W]
 * @throws DomainError outside these ranges
 * @validity standing and walking, level or uphill; a lower bound for hand-carried cans
 * @source Pandolf, Givoni & Goldman 1977, as restated on a public page
 */
export function carryingPower(given: {
  readonly body: number;
  readonly load: number;
  readonly pace: number;
  readonly grade: number;
  readonly terrain: number;
}): number {
  requirePositive("mass of the person", given.body, PANDOLF);
  requireNotNegative("load", given.load, PANDOLF);
  requireWithin("pace", given.pace, [0, 2.5], PANDOLF);
  requireWithin("grade", given.grade, [0, 0.25], PANDOLF);
  requireWithin("terrain factor", given.terrain, [1, 5], PANDOLF);
  const total = given.body + given.load;
  const standing = 1.5 * given.body + 2 * total * (given.load / given.body) ** 2;
  const walking = 1.5 * given.pace ** 2 + 0.35 * given.pace * given.grade * 100;
  return standing + given.terrain * total * walking;
}
