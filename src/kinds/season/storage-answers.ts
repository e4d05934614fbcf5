// What the season says of storage: how long full tanks last from the thirstiest day on, how reliable they are, how much would never fail.

import { valueOr } from "../../graph/outcomes.ts";
import type { Outcome, Outputs, Row } from "../../graph/types.ts";
import type { SeasonAnswer } from "../../season/answer.ts";
import type { SeasonInput } from "../../season/input.ts";
import { reliabilityOf } from "../../season/reliability-of-season.ts";
import { isoDate } from "../../units/calendar.ts";
import { NO_CROP } from "../none-said.ts";
import { output } from "../rows.ts";

/** Rows of the season card, in the order in which they are shown. */
export const STORAGE_ROWS: readonly Row[] = [
  output("worst_date_lasts", "From the thirstiest day, full tanks last", "run", "span", { minor: true }),
  output("worst_date", "The thirstiest day of the record", "run", "text", { minor: true }),
  output("reliability_years", "Seasons without a short day", "run", "share"),
  output("reliability_days", "Days without a short bed", "run", "share", { minor: true }),
  output("reliability_volume", "Got of what was asked for", "run", "share", { minor: true }),
  output("no_failure_storage", "Storage that would never run short", "run", "volume"),
];

/** Of one season nothing that is whole can be promised of others. */
function ofSeasons(share: number | null, seasons: number, reason: string): Outcome {
  if (share === 1 && seasons < 2)
    return { none: "nothing went short in this one season, which promises nothing of others" };
  return valueOr(share, reason);
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
    "season.worst_date_lasts": valueOr(totals.worstDateLasts, outlasts),
    "season.worst_date": valueOr(totals.worstDate === null ? null : isoDate(totals.worstDate), outlasts),
    "season.reliability_years": ofSeasons(reliability.years, totals.seasons, NO_CROP),
    "season.reliability_days": ofSeasons(reliability.days, totals.seasons, NO_CROP),
    "season.reliability_volume":
      totals.shareMet === null
        ? valueOr(reliability.volume, "nothing asks for water")
        : ofSeasons(reliability.volume, totals.seasons, "nothing asks for water"),
    "season.no_failure_storage": "volume" in noFailure ? { value: noFailure.volume } : noFailure,
  };
}
