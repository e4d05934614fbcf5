// How reliable a season's water was, by volume.

import type { SeasonAnswer } from "./answer.ts";

/**
 * Share by volume: given over given and unmet. Unmet is what crops could not use, over the efficiency, and what draws and
 * fixed waterings did not get; what a bed asks for again the next day is not counted twice.
 *
 * @param answer of a season run [-]
 * @returns share, or null where nothing was asked for [-]
 * @source Hashimoto, Stedinger and Loucks, WRR 18 (1982) 14-20
 */
export function givenShare({ totals, draws }: SeasonAnswer): number | null {
  const aSeason = draws.reduce((sum, { seasonVolume }) => sum + seasonVolume, totals.met);
  const given = aSeason * totals.seasons;
  const unmet = Object.values(totals.unmetByBound).reduce((sum, volume) => sum + volume, 0);
  return given + unmet > 0 ? given / (given + unmet) : null;
}
