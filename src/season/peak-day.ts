// The peak day: what nine seasons in ten stay under, by each season's highest ten-day mean.

import { quantile } from "./quantile.ts";
import type { Span } from "./spans.ts";

/** Days over which a peak is meant, and the quantile over the seasons: our definition. */
const PEAK_DAYS = 10;
const PEAK_QUANTILE = 0.9;

type Peak = { readonly mean: number; readonly span: Span };

/** Highest mean over ten days on end within a span, or over the whole of a shorter one, and which days those are. */
function highestMean(series: Float64Array, span: Span): Peak {
  const width = Math.min(PEAK_DAYS, span.last - span.first + 1);
  let sum = 0;
  let [highest, last] = [Number.NEGATIVE_INFINITY, span.last];
  for (let day = span.first; day <= span.last; day++) {
    sum += series[day] as number;
    if (day - span.first >= width) sum -= series[day - width] as number;
    if (day - span.first < width - 1 || sum <= highest) continue;
    highest = sum;
    last = day;
  }
  return { mean: highest / width, span: { year: span.year, first: last - width + 1, last } };
}

/** The ten days of a season, or all of a shorter one, on which a series is highest on the mean. */
export const peakSpan = (series: Float64Array, season: Span): Span => highestMean(series, season).span;

/**
 * A peak day of a daily series.
 *
 * @param series one value a day [any]
 * @param seasons the whole seasons, at least one
 * @returns the 0.9 quantile over the seasons of each season's highest ten-day mean [any]
 */
export function peakDay(series: Float64Array, seasons: readonly Span[]): number {
  return quantile(
    seasons.map((span) => highestMean(series, span).mean),
    PEAK_QUANTILE,
  );
}
