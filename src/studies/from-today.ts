// How long it lasts from today, and what to water today and in the week: asked of a whole worksheet.

import { valueIn, wordIn } from "../graph/readers.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "../season/answer.ts";
import { fromToday, type Members } from "../season/from-today.ts";
import type { SeasonInput } from "../season/input.ts";
import type { FromToday } from "../season/odds.ts";
import { type WeekAnswer, type WeekGiven, weekPlan, withNotes } from "../season/week-plan.ts";
import { isMadeUpKey, madeUpRecord } from "./made-up-records.ts";
import type { Whole } from "./work-out.ts";

export type FromTodayAnswer = {
  readonly lasting: FromToday;
  readonly week: WeekAnswer;
};

type Asked = { readonly plan: SeasonInput; readonly given: WeekGiven; readonly record: DailyRecord };

/** What is asked of the season: nothing where there is no plan of it, no record or no day. */
export function askedOf({ results }: Whole, records: readonly DailyRecord[]) {
  const sheet = valueIn(results.get("season.plan")) as SeasonInput | null;
  const given = valueIn(results.get("season.week_given")) as WeekGiven | null;
  const plan = sheet && (given ? withNotes(sheet, given) : sheet);
  const key = wordIn(results.get("weather.record_in_use"));
  const record = records.find((one) => one.key === key) ?? (isMadeUpKey(key) ? madeUpRecord(key) : null);
  return { plan, given, record };
}

/** Of today nothing is known. */
export const NOTHING_NOTED = "Nothing is noted of these days yet: dip a tank.";

const NO_WATERED_BED =
  "No bed with water is left to speak of: none stands on the sheet, or something is wrong with it.";

/** The same where all of it is there; else why it cannot be asked. */
function readyOf(whole: Whole, records: readonly DailyRecord[]): Asked | SeasonFailure {
  const { plan, given, record } = askedOf(whole, records);
  if (!plan) return { failed: "There is no season to go on with.", at: null };
  if (!given) return { failed: NOTHING_NOTED, at: null };
  if (!record) return { failed: "The rain record is not here.", at: null };
  // Where no bed is left, none goes short: that it lasts would be said of nothing.
  if (plan.beds.every(({ wateredBy }) => wateredBy.length === 0)) return { failed: NO_WATERED_BED, at: null };
  return { plan, given, record };
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
