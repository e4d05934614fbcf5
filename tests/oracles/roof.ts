// A roof through a record, day after day.

import { dayRunoff, type Roof } from "../../src/physics/roof.ts";

/**
 * Water that a roof gives on each day of a record.
 *
 * @param roof area and losses, units at the type's fields
 * @param rain of each day [m]
 * @returns volume of each day [m3]
 * @throws DomainError as dayRunoff
 * @source dayRunoff, day after day, with the diverter empty at the start
 */
export function dailyRunoff(roof: Roof, rain: ArrayLike<number>): Float64Array {
  let flushLeft = roof.firstFlush;
  return Float64Array.from(rain, (depth) => {
    const day = dayRunoff(roof, depth, flushLeft);
    flushLeft = day.flushLeft;
    return day.volume;
  });
}
