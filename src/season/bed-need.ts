// What a bed needed in each season of a run, told by what became of its ground in that very run.

import type { Bed } from "./beds.ts";

/**
 * What a bed needed, season by season.
 * What its crops could have used and what its ground lacked at planting, less the rain that the ground kept, over the
 * efficiency; so that what it got never exceeds it.
 *
 * @param bed the bed after the last day
 * @returns by season, the last element for days outside whole ones [m3]
 */
export function needs({ potential, owed, rained, part }: Bed): Float64Array {
  return potential.seasons.map((use, place) => {
    const lacked = owed.seasons[place] as number;
    // Never less than nothing but by rounding.
    return Math.max(0, use + lacked - (rained.seasons[place] as number)) / part.efficiency;
  });
}
