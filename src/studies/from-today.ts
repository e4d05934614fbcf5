// How long it lasts from today, and what to water today and in the week: asked of a whole worksheet.

import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "../season/answer.ts";
import { fromToday, type Members } from "../season/from-today.ts";
import type { FromToday } from "../season/odds.ts";
import { type WeekAnswer, weekPlan } from "../season/week-plan.ts";
import { knownOf } from "./season-asked.ts";
import type { Whole } from "./work-out.ts";

export type FromTodayAnswer = {
  readonly lasting: FromToday;
  readonly week: WeekAnswer;
};

const NO_WATERED_BED =
  "No bed with water is left to speak of: none stands on the sheet, or something is wrong with it.";

/** What is known of today; where no bed is left, none goes short: that it lasts would be said of nothing. */
function readyOf(whole: Whole, records: readonly DailyRecord[]): ReturnType<typeof knownOf> {
  const known = knownOf(whole, records);
  if ("failed" in known) return known;
  const hasBed = known.plan.beds.some(({ wateredBy }) => wateredBy.length > 0);
  return hasBed ? known : { failed: NO_WATERED_BED, at: null };
}

/**
 * How long it lasts from today on, and the lines of the week.
 *
 * @param records all that are known, made-up ones among them
 */
export function fromTodayOf(whole: Whole, records: readonly DailyRecord[]): FromTodayAnswer | SeasonFailure {
  const asked = readyOf(whole, records);
  if ("failed" in asked) return asked;
  const { plan, given, record } = asked;
  const lasting = fromToday(plan, record, given);
  if ("failed" in lasting) return lasting;
  const week = weekPlan(plan, record, given);
  if ("failed" in week) return week;
  return { lasting, week };
}

/** Which members of the odds are asked, and whether only one bed is watered from today on. */
export type LastsAsked = { readonly lasts: Members; readonly only?: string };

/** How long it lasts from today on, by some members. */
export function lastsOf(
  whole: Whole,
  records: readonly DailyRecord[],
  { lasts, only }: LastsAsked,
): FromToday | SeasonFailure {
  const asked = readyOf(whole, records);
  if ("failed" in asked) return asked;
  const { plan, record, given } = asked;
  return fromToday(plan, record, only === undefined ? given : { ...given, only }, lasts);
}
