// One tank, one supply, one demand: the textbook loop that the season is held against.

import { requireNotNegative, requireWithin } from "../../src/physics/domain-error.ts";

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
  requireWithin("start", start, [0, capacity], SOURCE);
  const supply = inflow instanceof Float64Array ? inflow : Float64Array.from(inflow);
  const wanted = Float64Array.from(typeof demand === "number" ? [demand] : demand);
  if (typeof demand !== "number")
    requireWithin("demands", wanted.length, [supply.length, supply.length], SOURCE);
  const series: Series = {
    supply,
    wanted,
    stride: typeof demand === "number" ? 0 : 1,
    given: new Float64Array(supply.length),
    stored: new Float64Array(supply.length),
  };
  if (rule === "spill_first") spillFirst(series, capacity, start);
  else useFirst(series, capacity, start);
  return sums(series, start);
}

/** Arrays of one kind, so that the loops over decades stay fast; a stride of 0 repeats the one demand. */
type Series = {
  readonly supply: Float64Array;
  readonly wanted: Float64Array;
  readonly stride: number;
  readonly given: Float64Array;
  readonly stored: Float64Array;
};

function spillFirst(
  { supply, wanted, stride, given, stored }: Series,
  capacity: number,
  start: number,
): void {
  let volume = start;
  for (let step = 0; step < supply.length; step++) {
    const drawn = Math.min(wanted[step * stride] as number, volume);
    volume = Math.min(volume + (supply[step] as number) - drawn, capacity - drawn);
    given[step] = drawn;
    stored[step] = volume;
  }
}

function useFirst({ supply, wanted, stride, given, stored }: Series, capacity: number, start: number): void {
  let volume = start;
  for (let step = 0; step < supply.length; step++) {
    const together = volume + (supply[step] as number);
    const drawn = Math.min(wanted[step * stride] as number, together);
    volume = Math.min(together - drawn, capacity);
    given[step] = drawn;
    stored[step] = volume;
  }
}

function sums({ supply, wanted, stride, given, stored }: Series, start: number): TankYield {
  let inflow = 0;
  let total = 0;
  let spill = 0;
  let stepsMet = 0;
  let before = start;
  for (let step = 0; step < supply.length; step++) {
    const drawn = given[step] as number;
    const after = stored[step] as number;
    inflow += supply[step] as number;
    total += drawn;
    spill += before + (supply[step] as number) - drawn - after;
    if (drawn >= (wanted[step * stride] as number) * (1 - ROUNDING)) stepsMet++;
    before = after;
  }
  return { given, stored, inflow, yield: total, spill, end: before, stepsMet };
}
