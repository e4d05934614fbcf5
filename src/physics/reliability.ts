// How well a supply met its demand, by the measures of the storage literature.

import { DomainError } from "./domain-error.ts";

/** How well a demand was met. */
export type Reliability = {
  /** Share of the steps without a shortfall [-]. */
  readonly time: number;
  /** Share of the volume that was given [-]. */
  readonly volume: number;
  /** Runs of failing steps over failing steps; null where nothing failed [-]. */
  readonly resilience: number | null;
  /** Mean over the runs of the largest share short in each; null where nothing failed [-]. */
  readonly vulnerability: number | null;
  /** Largest share short in any step [-]. */
  readonly worst: number;
};

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-12;

/**
 * Reliability by time and by volume, resilience and vulnerability of a supply.
 *
 * @param supplied given in each step [m3]
 * @param demand wanted in each step; one number stands for every step [m3]
 * @returns the five shares [-]
 * @throws DomainError for a series of no step or a demand of nothing at all
 * @source Hashimoto, Stedinger and Loucks, WRR 18 (1982) 14-20; McMahon et al., J. Hydrol. 324 (2006) 359-382 (second-hand)
 */
export function reliability(supplied: ArrayLike<number>, demand: ArrayLike<number> | number): Reliability {
  const wants = Array.from(supplied, (_, step) =>
    typeof demand === "number" ? demand : (demand[step] ?? 0),
  );
  const wanted = wants.reduce((sum, want) => sum + want, 0);
  if (!(wanted > 0)) throw new DomainError("demand", wanted, "above 0", "definition of reliability");
  const shortShares = wants.map((want, step) => shortShare(supplied[step] ?? 0, want));
  const runs = worstOfEachRun(shortShares);
  const failing = shortShares.filter((share) => share > 0).length;
  return {
    time: 1 - failing / shortShares.length,
    volume: Array.from(supplied).reduce((sum, given) => sum + given, 0) / wanted,
    resilience: failing > 0 ? runs.length / failing : null,
    vulnerability: failing > 0 ? runs.reduce((sum, worst) => sum + worst, 0) / runs.length : null,
    worst: runs.reduce((most, worst) => Math.max(most, worst), 0),
  };
}

function shortShare(given: number, want: number): number {
  const share = want > 0 ? 1 - given / want : 0;
  return share > ROUNDING ? share : 0;
}

/** The largest share short in each unbroken run of failing steps. */
function worstOfEachRun(shortShares: readonly number[]): readonly number[] {
  const runs: number[] = [];
  shortShares.forEach((share, step) => {
    if (share === 0) return;
    if ((shortShares[step - 1] ?? 0) === 0) runs.push(share);
    else runs[runs.length - 1] = Math.max(runs[runs.length - 1] ?? 0, share);
  });
  return runs;
}
