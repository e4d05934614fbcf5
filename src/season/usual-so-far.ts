// What a middling season of a run has come to by so many days after its first: for setting what was noted beside it.

import { levelAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonAnswer } from "./answer.ts";
import type { SeasonInput } from "./input.ts";
import { quantile } from "./quantile.ts";
import { type Span, sumOver, wholeSeasons } from "./spans.ts";

export type UsualSoFar = {
  /** Whole seasons of the record. */
  readonly seasons: number;
  /** Given to each bed [m3], the middle season. */
  readonly beds: readonly { readonly id: string; readonly given: number }[];
  /** Lowest level of any evening [m], the middle season. */
  readonly tanks: readonly { readonly id: string; readonly lowest: number }[];
  /** Of each season, in order, and of the middle one [m]. */
  readonly rain: readonly number[];
  readonly middleRain: number;
};

/**
 * The middle of a run's seasons from their first day on.
 * Medians, each part by itself.
 *
 * @param answer of the input over the record
 * @param days counted from the season's first [day]
 * @returns null where the record has no whole season
 */
export function usualSoFar(
  input: SeasonInput,
  record: DailyRecord,
  answer: SeasonAnswer,
  days: number,
): UsualSoFar | null {
  const spans = wholeSeasons(input, record.firstDay, record.rain.length).map(
    (span): Span => ({ ...span, last: Math.min(span.last, span.first + days - 1) }),
  );
  if (spans.length === 0 || days < 1) return null;
  const middle = (of: (span: Span) => number): number => quantile(spans.map(of), 0.5);
  const rainOver = (span: Span): number => sumOver(record.rain, span) * input.rainScale;
  const vessels = new Map(input.tanks.map(({ id, vessel }) => [id, vessel]));
  const least = (stored: Float64Array, { first, last }: Span) =>
    Math.min(...stored.subarray(first, last + 1));
  return {
    seasons: spans.length,
    beds: answer.beds.map(({ id, given }) => ({ id, given: middle((span) => sumOver(given, span)) })),
    tanks: answer.tanks.map(({ id, stored }) => {
      const vessel = vessels.get(id);
      const held = middle((span) => least(stored, span));
      return { id, lowest: vessel ? levelAt(vessel, held) : 0 };
    }),
    rain: spans.map(rainOver),
    middleRain: middle(rainOver),
  };
}
