// The year's other moments, asked of a whole worksheet: the first frost, when an empty tank is full, and this year against
// what was to be expected of it.

import { amountOf } from "../document/telling-notes.ts";
import type { Note } from "../document/worksheet.ts";
import { NO_RECORD, numberIn, valueIn, wordIn } from "../graph/readers.ts";
import { AS_READ, dipCounts, saysSo } from "../happened/dip.ts";
import type { Vessel } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { firstFrosts } from "../season/first-frost.ts";
import type { SeasonInput } from "../season/input.ts";
import type { TodayGiven } from "../season/moment-today.ts";
import { runSeason } from "../season/run.ts";
import { seasonAround } from "../season/spans.ts";
import { type TanksFull, tanksFull } from "../season/tank-full.ts";
import { usualSoFar } from "../season/usual-so-far.ts";
import type { Frosts } from "../telling/frost-jobs.ts";
import type { ThisYear } from "../telling/this-year.ts";
import { notedSoFar } from "./noted-so-far.ts";
import { askedOf } from "./season-asked.ts";
import type { Whole } from "./work-out.ts";

export type YearMoments = {
  readonly today: number;
  readonly frosts: Frosts;
  readonly full: TanksFull | null;
  /** Null where no season of this year has begun, or nothing is to set it beside. */
  readonly thisYear: ThisYear | null;
};

/** A season is looked back on for so many days after its end: our definition. */
const AFTER = 150;

function frostsOf({ results }: Whole, record: DailyRecord): Frosts {
  const own = wordIn(results.get("weather.frost_said"));
  if (own !== "") return { from: "grower", day: own };
  const found = firstFrosts(record, numberIn(results.get("site.latitude")) ?? 0);
  return found ? { from: "record", madeUp: record.madeUp, ...found } : { from: "nothing" };
}

/** Notes without the dips that say no depth, or more than a tank holds where nobody said to have read it so. */
function countedNotes(notes: readonly Note[], results: Whole["results"]): readonly Note[] {
  return notes.filter((note) => {
    if (note.what !== "dipped") return true;
    const depth = amountOf(note);
    const vessel = valueIn(results.get(`${note.where}.vessel`)) as Vessel | null;
    return depth !== null && dipCounts(depth, vessel?.height ?? Infinity, saysSo(note.text, AS_READ));
  });
}

function thisYearOf(
  { worksheet, results }: Whole,
  plan: SeasonInput,
  record: DailyRecord,
  today: number,
): ThisYear | null {
  const season = [0, AFTER / 2, AFTER].map((ago) => seasonAround(plan, today - ago)).find((one) => one);
  if (!season) return null;
  const span = { first: season.start, last: Math.min(today, season.end) };
  const answer = runSeason(plan, record);
  if ("failed" in answer) return null;
  const usual = usualSoFar(plan, record, answer, span.last - span.first + 1);
  return (
    usual && {
      ...span,
      madeUp: record.madeUp,
      noted: notedSoFar(countedNotes(worksheet.notes ?? [], results), span),
      usual,
    }
  );
}

/** Where nothing was noted: everything stands as usual. */
const nothingNoted = (today: number): TodayGiven => ({
  today,
  drying: "usual",
  levels: {},
  charges: {},
  lastSoaked: {},
});

/**
 * What the year holds besides watering.
 *
 * @param records all that are known, made-up ones among them
 * @param today the day it is, where no note tells of one [days since 1970-01-01]
 */
export function yearMoments(
  whole: Whole,
  records: readonly DailyRecord[],
  today: number,
): YearMoments | { readonly failed: string } {
  const { plan, given, record } = askedOf(whole, records);
  if (!record) return { failed: NO_RECORD };
  const day = given?.today ?? today;
  const frosts = frostsOf(whole, record);
  if (!plan) return { today: day, frosts, full: null, thisYear: null };
  const full = tanksFull(plan, record, given ?? nothingNoted(day));
  return {
    today: day,
    frosts,
    full: "failed" in full ? null : full,
    thisYear: thisYearOf(whole, plan, record, day),
  };
}
