// How reliable a season's water was: by volume, by time and by year.

import type { SeasonAnswer } from "./answer.ts";
import { type SeasonDates, type Span, wholeSeasons } from "./spans.ts";

/** Shares of the whole seasons of a record; null where there is nothing that could have gone short [-]. */
export type SeasonReliability = {
  /** Water given to beds and draws over that and what they went short of. */
  readonly volume: number | null;
  /** Days of the seasons on which no bed was short. */
  readonly days: number | null;
  /** Seasons without a single short day. */
  readonly years: number | null;
};

/**
 * Reliability by volume, by time and by year of a season's answer.
 *
 * @param dates first and last day of the season, `MM-DD`
 * @returns shares, or null where nothing was asked for or no crop stood within the season [-]
 * @source Hashimoto, Stedinger and Loucks, WRR 18 (1982) 14-20; McMahon et al., J. Hydrol. 324 (2006) 359-382 (second-hand)
 */
export function reliabilityOf(answer: SeasonAnswer, dates: SeasonDates): SeasonReliability {
  const { shortDay, firstDay, totals } = answer;
  const seasons = wholeSeasons(dates, firstDay, shortDay.length);
  const grows = totals.shareMet !== null && seasons.length > 0;
  const short = seasons.map((span) => shortDays(shortDay, span));
  const days = seasons.reduce((sum, { first, last }) => sum + last - first + 1, 0);
  return {
    volume: givenShare(answer),
    days: grows ? 1 - short.reduce((sum, count) => sum + count, 0) / days : null,
    years: grows ? short.filter((count) => count === 0).length / seasons.length : null,
  };
}

/**
 * Share by volume: got over got and unmet. Unmet is what crops could not use, over the efficiency, and what draws did not
 * get; what a bed asks for again the next day is not counted twice.
 *
 * @returns share, or null where nothing was asked for [-]
 * @source as reliabilityOf
 */
function givenShare({ totals, draws }: SeasonAnswer): number | null {
  const aSeason = draws.reduce((sum, { seasonVolume }) => sum + seasonVolume, totals.got);
  const given = aSeason * totals.seasons;
  const unmet = Object.values(totals.unmetByBound).reduce((sum, volume) => sum + volume, 0);
  return given + unmet > 0 ? given / (given + unmet) : null;
}

function shortDays(shortDay: Uint8Array, { first, last }: Span): number {
  let days = 0;
  for (let day = first; day <= last; day++) days += shortDay[day] as number;
  return days;
}
