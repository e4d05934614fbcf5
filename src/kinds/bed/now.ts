// What a bed needs now and whether it will get it, in one sentence; and what a watering takes by hand or pump.

import { isReady, numberOrNull, valueIn } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs, Result } from "../../graph/types.ts";
import type { Driver } from "../../network/bounds.ts";
import { whyShort } from "../../telling/words/bounds.ts";
import { listed } from "../../telling/words/lists.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { WEEKDAYS } from "../../units/calendar-names.ts";
import { DAY } from "../../units/constants.ts";
import type { WeekOfBed } from "../season/week.ts";

const reasonOf = (result: Result | undefined): string => {
  if (result?.state === "none") return result.reason;
  return result?.state === "failed" ? result.problem.text : "it is still being worked out";
};

type Watering = WeekOfBed["waterings"][number];

function dayWords(watering: Watering, today: number): string {
  const ahead = watering.date - today;
  if (ahead === 0) return "today";
  return ahead === 1 ? "tomorrow" : `on ${WEEKDAYS[watering.weekday - 1]}`;
}

/** From this share on both amounts may read alike: they are said to two figures. */
const NEARLY = 0.95;

/** Whether it will get what it asks for next. */
function prospect({ asked, given, bound, over }: Watering, driver: Driver): string {
  const time = over > 1 ? ` over ${over} days` : "";
  if (bound === null && given >= asked) return `and will get it${time}`;
  if (given > asked * NEARLY) return `but gets a little less${time}: ${whyShort(bound, driver)}`;
  if (given > 0) return `but gets only {gets_next}${time}: ${whyShort(bound, driver)}`;
  return `but gets nothing: ${whyShort(bound, driver)}`;
}

function ofWeek(week: WeekOfBed): string {
  const today = parseIsoDate(week.today) ?? 0;
  const next = week.waterings[0];
  const since = week.assumed
    ? " Its last soak is not known, so its soil is taken as it is on this day in a middling year."
    : "";
  if (!next) {
    return week.thirstyFrom === null
      ? "It lacks {lacks_today} now and wants nothing in the coming week."
      : "It goes short in the coming week and does not ask: see when it is watered, or given up.";
  }
  const when = dayWords(next, today);
  const lacks = when === "today" ? "" : "It lacks {lacks_today} now. ";
  const wants = when === "today" ? "Today it wants {wants_next}" : `It wants {wants_next} ${when}`;
  return `${lacks}${wants}, ${prospect(next, week.driver)}.${since}`;
}

/**
 * How much how often, at the peak; a bed that holds less than a day's need is told so. Refilled each morning it may still
 * have enough in a season's balance: then it is not told that it has not.
 */
function givingOf(input: ModelInput, isEverShort: boolean): string {
  const interval = numberOrNull(input, "watering_interval");
  const [volume, need] = ["watering_volume", "peak_day_need"].map((name) => numberOrNull(input, name) ?? 0);
  if (interval === null) return "";
  if (interval > DAY) return ": {watering_volume} every {watering_interval}";
  if ((volume ?? 0) >= (need ?? 0) * (1 - 1e-9)) return ": {watering_volume} every day";
  return isEverShort
    ? ": {watering_volume} every day, and it is not enough: its soil holds no more"
    : ", every day: more than the {watering_volume} within easy reach of its roots";
}

/** Of peak days and usual seasons, where no day is given for today. */
function ofSeason(input: ModelInput): string {
  const need = "On peak days it needs {peak_day_need}";
  const share = numberOrNull(input, "share_met");
  const give = givingOf(input, share !== null && share < 1);
  if (share === null) return `${need}${give}. Whether it gets it: ${reasonOf(input.results["share_met"])}`;
  const short = numberOrNull(input, "days_short") ?? 0;
  const gets =
    short > 0
      ? "In a usual season it is short on {days_short} days and gets {share_met} of what it would drink"
      : "It gets it: never short in the seasons tried";
  return `${need}${give}. ${gets}.`;
}

function sentenceOf(input: ModelInput, week: WeekOfBed | null): Outcome {
  const peak = input.results["peak_day_need"];
  if (peak?.state === "failed") return { value: `What it needs is not known: ${peak.problem.text}` };
  if (peak?.state === "none") return { value: `It needs no water: ${peak.reason}.` };
  if (!isReady(input.results["watered_by"]))
    return { value: "On peak days it needs {peak_day_need}, and nobody waters it." };
  return { value: week ? ofWeek(week) : ofSeason(input) };
}

const amount = (value: number | null | undefined, reason: string): Outcome =>
  value === null || value === undefined ? { none: reason } : { value };

function weekdaysOf(week: WeekOfBed): string {
  const days = week.waterings.map(({ weekday }) => WEEKDAYS[weekday - 1] ?? "");
  if (days.length === DAYS_A_WEEK) return "every day";
  return listed(days);
}

const DAYS_A_WEEK = 7;

function nowOf(input: ModelInput): Outputs {
  const result = input.results["week"];
  const week = valueIn(result) as WeekOfBed | null;
  const why = reasonOf(result);
  const next = week?.waterings[0];
  const asksNothing = week ? "it asks for nothing in the coming week" : why;
  return {
    needs_today: sentenceOf(input, week),
    lacks_today: amount(week?.lacks, why),
    wants_next: amount(next?.asked, asksNothing),
    gets_next: amount(next?.given, asksNothing),
    week_days: week && next ? { value: weekdaysOf(week) } : { none: asksNothing },
    week_each: amount(week?.each, asksNothing),
  };
}

/** What it needs now and this week. */
export const now: Model = {
  name: "now",
  takes: [
    "week",
    "watered_by",
    "peak_day_need",
    "watering_volume",
    "watering_interval",
    "share_met",
    "days_short",
  ],
  tolerant: true,
  outputs: ["needs_today", "lacks_today", "wants_next", "gets_next", "week_days", "week_each"],
  run: nowOf,
};
