// The season of a whole worksheet that is asked to go on: its plan as the notes leave it, what is known of today, its record.

import { NO_RECORD, valueIn, wordIn } from "../graph/readers.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "../season/answer.ts";
import type { SeasonInput } from "../season/input.ts";
import { type WeekGiven, withNotes } from "../season/week-plan.ts";
import { isMadeUpKey, madeUpRecord } from "./made-up-records.ts";
import type { Whole } from "./work-out.ts";

/** What is asked of the season: nothing where there is no plan of it, no record or no day. */
export function askedOf({ results }: Whole, records: readonly DailyRecord[]) {
  const sheet = valueIn(results.get("season.plan")) as SeasonInput | null;
  const given = valueIn(results.get("season.week_given")) as WeekGiven | null;
  const plan = sheet && (given ? withNotes(sheet, given) : sheet);
  const key = wordIn(results.get("weather.record_in_use"));
  const record = records.find((one) => one.key === key) ?? (isMadeUpKey(key) ? madeUpRecord(key) : null);
  return { plan, given, record };
}

const failed = (why: string): SeasonFailure => ({ failed: why, at: null });

type Planned = { readonly plan: SeasonInput; readonly record: DailyRecord };

/** Its plan and record; else why there is nothing to run. */
export function plannedOf(whole: Whole, records: readonly DailyRecord[]): Planned | SeasonFailure {
  const { plan, record } = askedOf(whole, records);
  if (!plan) return failed("There is no season to go on with.");
  return record ? { plan, record } : failed(NO_RECORD);
}

/** The same with what is known of today; else why it cannot be asked. */
export function knownOf(
  whole: Whole,
  records: readonly DailyRecord[],
): (Planned & { readonly given: WeekGiven }) | SeasonFailure {
  const planned = plannedOf(whole, records);
  if ("failed" in planned) return planned;
  const { given } = askedOf(whole, records);
  return given ? { ...planned, given } : failed("Nothing is noted of these days yet: dip a tank.");
}
