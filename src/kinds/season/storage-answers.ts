// What the season says of storage: how long full tanks last at worst, how reliable they are, how much would never fail.

import type { Outcome, Outputs, Row } from "../../graph/types.ts";
import type { SeasonAnswer } from "../../season/answer.ts";
import type { SeasonInput } from "../../season/input.ts";
import { reliabilityOf } from "../../season/reliability-of-season.ts";
import { isoDate } from "../../units/calendar.ts";
import { output } from "../rows.ts";

const RUN = "your record, day by day";
const RELIABILITY = "Hashimoto, Stedinger and Loucks, Water Resources Research 18 (1982), second-hand";

/** Rows of the season card, in the order in which they are shown. */
export const STORAGE_ROWS: readonly Row[] = [
  output(
    "worst_date_lasts",
    "Full tanks last, at worst",
    "run",
    "span",
    "From full and with no more rain, from the day of the record from which they are used up soonest: what the beds would use, other draws, leaks and open water, day by day.",
    RUN,
  ),
  output(
    "worst_date",
    "From this day on",
    "run",
    "text",
    "The day of the record's seasons from which full tanks are used up soonest, were there no more rain.",
    RUN,
  ),
  output(
    "reliability_years",
    "Seasons without a short day",
    "run",
    "share",
    "Of the whole seasons of the record, those in which no bed was short on any day.",
    RELIABILITY,
  ),
  output(
    "reliability_days",
    "Days without a short bed",
    "run",
    "share",
    "Of all days of the whole seasons, those on which no bed was short.",
    RELIABILITY,
    { minor: true },
  ),
  output(
    "reliability_volume",
    "Given of what was wanted",
    "run",
    "share",
    "Water given to beds and other draws over that and what they went short of.",
    RELIABILITY,
    { minor: true },
  ),
  output(
    "no_failure_storage",
    "Storage that never fails",
    "run",
    "volume",
    "The smallest store that would have met every watering, draw, leak and open water of the record run through twice, all tanks taken as one, every litre of it within reach, and a day's rain at hand for that day's watering.",
    "sequent peak method: Thomas and Burden 1963, as in Loucks and van Beek, Water Resource Systems, table 11.2 (read in course notes)",
  ),
];

const NO_CROP = "no crop stands within the season";

function or(value: number | string | null, reason: string): Outcome {
  return value === null ? { none: reason } : { value };
}

/** Of one season nothing that is whole can be promised of others. */
function ofSeasons(share: number | null, seasons: number, reason: string): Outcome {
  if (share === 1 && seasons < 2)
    return { none: "nothing went short in this one season, which promises nothing of others" };
  return or(share, reason);
}

/** Outcomes of these rows by quantity id. */
export function storageOutputs(plan: SeasonInput, answer: SeasonAnswer): Outputs {
  const { totals, noFailure } = answer;
  const reliability = reliabilityOf(answer, { start: plan.start, end: plan.end });
  const outlasts =
    totals.daysOfAutonomy === null
      ? "no tank serves a bed that needs water"
      : "full tanks outlast every season of the record";
  return {
    "season.worst_date_lasts": or(totals.worstDateLasts, outlasts),
    "season.worst_date": or(totals.worstDate === null ? null : isoDate(totals.worstDate), outlasts),
    "season.reliability_years": ofSeasons(reliability.years, totals.seasons, NO_CROP),
    "season.reliability_days": ofSeasons(reliability.days, totals.seasons, NO_CROP),
    "season.reliability_volume":
      totals.shareMet === null
        ? or(reliability.volume, "nothing asks for water")
        : ofSeasons(reliability.volume, totals.seasons, "nothing asks for water"),
    "season.no_failure_storage": "volume" in noFailure ? { value: noFailure.volume } : noFailure,
  };
}
