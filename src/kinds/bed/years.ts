// A bed's seasons one by one, as its table shows them; and the harvest likely lost in a usual one.

import type { Outcome } from "../../graph/types.ts";
import type { Driver } from "../../network/bounds.ts";
import type { BedAnswer, BedSeason } from "../../season/answer.ts";
import { cropLabel } from "./crops.ts";

/** One season of a bed: water [m3], days, and the share of the harvest likely lost; null where none is published. */
export type BedYear = {
  readonly year: number;
  readonly need: number;
  readonly got: number;
  readonly rain: number;
  readonly daysShort: number;
  readonly loss: number | null;
  /** The crop that loses most, in words, where the bed has several. */
  readonly crop: string;
  readonly binding: string | null;
  readonly driver: Driver;
};

function worst({ losses }: BedSeason): { readonly loss: number | null; readonly crop: string } {
  let found: { loss: number | null; crop: string } = { loss: null, crop: "" };
  for (const { crop, loss } of losses) {
    if (loss !== null && (found.loss === null || loss > found.loss)) found = { loss, crop: cropLabel(crop) };
  }
  return { ...found, crop: losses.length > 1 && (found.loss ?? 0) > 0 ? found.crop : "" };
}

function yearOf(season: BedSeason, driver: Driver): BedYear {
  const { year, need, got, rain, daysShort, binding } = season;
  return { year, need, got, rain, daysShort, binding, driver, ...worst(season) };
}

/** Rows of a bed that tell of its seasons one by one, by name. */
export function bedYears(
  { seasons, binding, none }: BedAnswer,
  driver: Driver,
): Readonly<Record<string, Outcome>> {
  const years = seasons.map((season) => yearOf(season, driver));
  const losses = years.flatMap(({ loss }) => (loss === null ? [] : [loss]));
  const mean = losses.reduce((sum, loss) => sum + loss, 0) / Math.max(1, losses.length);
  return {
    by_year: years.length > 0 ? { value: years } : { none: "the record has no whole season" },
    likely_loss:
      losses.length > 0 ? { value: mean } : { none: none ?? "no yield response is published for its crops" },
    goes_short_by: binding === null ? { none: "it never went short" } : { value: binding },
  };
}
