// One tank, one supply, one demand: the textbook storage methods that the season is held against.

import { DomainError } from "./domain-error.ts";

/** Down here numbers themselves are rounded by more than any share of them [m3]. */
const NO_WATER = 1e-300;

/** Storage that never fails, and how empty it would stand at each step. */
export type NoFailStorage = {
  /** Smallest volume that never runs out [m3]. */
  readonly capacity: number;
  /** Volume missing from full at the end of each step of the last cycle [m3]. */
  readonly missing: Float64Array;
};

/**
 * Smallest storage that meets every demand: K = max(0, K + D - Q) over the series, twice, the largest K.
 * One cycle is the mass curve's answer for a tank that starts full and need not end so.
 *
 * @param inflow into the tank in each step [m3]
 * @param demand wanted in each step; one number stands for every step [m3]
 * @param cycles how often the series is run through; left out: 2 [1]
 * @returns volume and the missing volume of each step [m3]
 * @throws DomainError when demand outruns supply, so that each further cycle needs more
 * @source Thomas and Burden 1963, as in Loucks and van Beek, Water Resource Systems, table 11.2 (read in course notes)
 */
export function sequentPeak(
  inflow: ArrayLike<number>,
  demand: ArrayLike<number> | number,
  cycles = 2,
): NoFailStorage {
  const steps = inflow.length;
  const missing = new Float64Array(steps);
  let [lack, most, supply, wanted] = [0, 0, 0, 0];
  for (let cycle = 0; cycle < cycles; cycle++) {
    for (let step = 0; step < steps; step++) {
      const drawn = typeof demand === "number" ? demand : (demand[step] as number);
      supply += inflow[step] as number;
      wanted += drawn;
      lack = Math.max(0, lack + drawn - (inflow[step] as number));
      missing[step] = lack;
      most = Math.max(most, lack);
    }
  }
  if (cycles > 1 && wanted > supply * (1 + 1e-9) + NO_WATER) {
    throw new DomainError("demand", wanted, `no more than the supply of ${supply}`, "sequent peak method");
  }
  return { capacity: most, missing };
}
