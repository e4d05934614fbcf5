// One tank, one supply, one demand: the textbook storage methods that the season is held against.

import { DomainError, requireNotNegative } from "./domain-error.ts";

const SOURCE = "Jenkins et al. 1978; Fewkes and Butler 2000";
/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-12;

/** A tank over a series of steps of equal length. */
export type TankRun = {
  /** Into the tank in each step [m3]. */
  readonly inflow: ArrayLike<number>;
  /** Wanted in each step; one number stands for every step [m3]. */
  readonly demand: ArrayLike<number> | number;
  /** Volume when full [m3]. */
  readonly capacity: number;
  /** Volume before the first step [m3]. */
  readonly start: number;
  /** `spill_first`: yield after spillage; `use_first`: yield before spillage. */
  readonly rule: "spill_first" | "use_first";
};

/** What a run of one tank gave. */
export type TankYield = {
  /** Given in each step [m3]. */
  readonly given: Float64Array;
  /** Left at the end of each step [m3]. */
  readonly stored: Float64Array;
  /** Sum of what flowed in [m3]. */
  readonly inflow: number;
  /** Sum of what was given [m3]. */
  readonly yield: number;
  /** Sum of what found no room [m3]. */
  readonly spill: number;
  /** Left at the end [m3]. */
  readonly end: number;
  /** Steps in which the whole demand was given [1]. */
  readonly stepsMet: number;
};

/**
 * Runs one tank through its steps.
 * Spill first: Y = min(D, V), V = min(V + Q - Y, S - Y). Use first: Y = min(D, V + Q), V = min(V + Q - Y, S).
 *
 * @param run supply, demand and tank, units at the type's fields
 * @returns series and sums [m3]
 * @throws DomainError for a negative capacity, or a start that the tank cannot hold
 * @source Jenkins et al. 1978 and Fewkes and Butler 2000, Building Serv. Eng. Res. Technol. 21, 99-106 (read second-hand)
 */
export function tankYield({ inflow, demand, capacity, start, rule }: TankRun): TankYield {
  requireNotNegative("capacity", capacity, SOURCE);
  if (!(start >= 0 && start <= capacity))
    throw new DomainError("start", start, `from 0 to ${capacity}`, SOURCE);
  const steps = inflow.length;
  const given = new Float64Array(steps);
  const stored = new Float64Array(steps);
  let [volume, totalIn, totalGiven, totalSpill, stepsMet] = [start, 0, 0, 0, 0];
  const spillFirst = rule === "spill_first";
  for (let step = 0; step < steps; step++) {
    const wanted = typeof demand === "number" ? demand : (demand[step] as number);
    const arriving = inflow[step] as number;
    const together = volume + arriving;
    const drawn = Math.min(wanted, spillFirst ? volume : together);
    const room = spillFirst ? capacity - drawn : capacity;
    const left = together - drawn;
    volume = Math.min(left, room);
    totalSpill += left - volume;
    totalIn += arriving;
    totalGiven += drawn;
    if (drawn >= wanted * (1 - ROUNDING)) stepsMet++;
    given[step] = drawn;
    stored[step] = volume;
  }
  return { given, stored, inflow: totalIn, yield: totalGiven, spill: totalSpill, end: volume, stepsMet };
}

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
  if (cycles > 1 && wanted > supply * (1 + 1e-9)) {
    throw new DomainError("demand", wanted, `no more than the supply of ${supply}`, "sequent peak method");
  }
  return { capacity: most, missing };
}
