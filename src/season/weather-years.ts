// Reference evapotranspiration by the year and on a peak day.

import { peakDay } from "./peak-day.ts";
import { type SeasonDates, sumOver, wholeSeasons, wholeYears } from "./spans.ts";

/**
 * Mean yearly reference evapotranspiration.
 *
 * @param eto of each day [m]
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @returns mean of the whole calendar years; null without one [m]
 */
export function meanYearlyEto(eto: Float64Array, firstDay: number): number | null {
  const years = wholeYears(firstDay, eto.length);
  if (years.length === 0) return null;
  return years.reduce((sum, year) => sum + sumOver(eto, year), 0) / years.length;
}

/**
 * Reference evapotranspiration of a peak day of the season.
 *
 * @param eto of each day [m]
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param dates first and last day of the season, `MM-DD`
 * @returns the 0.9 quantile of the seasons' highest ten-day means; null without a whole season [m]
 */
export function peakDayEto(eto: Float64Array, firstDay: number, dates: SeasonDates): number | null {
  const seasons = wholeSeasons(dates, firstDay, eto.length);
  return seasons.length === 0 ? null : peakDay(eto, seasons);
}
