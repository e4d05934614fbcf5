// A bed's seasons one by one: need, given, what rain gave, stress, what bound it, and the harvest likely lost.

import { yieldLoss } from "../physics/soil-water.ts";
import type { BedSeason, CropLoss } from "./answer.ts";
import { needs } from "./bed-need.ts";
import type { Bed } from "./beds.ts";
import type { CropPart } from "./input.ts";
import type { Span } from "./spans.ts";
import { bindingOf, byBound } from "./totals.ts";

/**
 * A bed's whole seasons, one by one.
 *
 * @param bed the bed after the last day
 * @param seasons whole seasons of the record
 * @param firstDay first day of the record [days since 1970-01-01]
 * @source loss of harvest, FAO-56 Eq. 90, by the whole bed's share of its use in the season
 */
export function bedSeasons(bed: Bed, seasons: readonly Span[], firstDay: number): readonly BedSeason[] {
  const need = needs(bed);
  return seasons.map((span, place) => {
    const at = (sums: Float64Array) => sums[place] as number;
    const days = bed.shortBy[place] as Float64Array;
    const short = bed.firstShort[place] as number;
    const potential = at(bed.potential.seasons);
    const useShare = potential > 0 ? Math.min(1, at(bed.use.seasons) / potential) : null;
    return {
      year: span.year,
      need: need[place] as number,
      got: at(bed.got.seasons),
      given: at(bed.met.seasons),
      rain: at(bed.rained.seasons),
      useShare,
      daysShort: at(bed.daysShort.seasons),
      firstShort: short < 0 ? null : firstDay + short,
      unmetByBound: byBound(bed.unmet[place] as Float64Array),
      shortDaysByBound: byBound(days),
      binding: bindingOf(days),
      losses: bed.part.crops.map((crop) => lossOf(crop, useShare)),
    };
  });
}

function lossOf({ crop, yieldResponse }: CropPart, useShare: number | null): CropLoss {
  return {
    crop,
    loss: yieldResponse === null || useShare === null ? null : yieldLoss(yieldResponse, useShare),
  };
}
