// Rows that tell the same rain more than once, or the rain of two gauges: adding them up or keeping one is wrong.
import { Refusal } from "./import-result.ts";
import { holdsBefore, momentsOf, rollingMinutes, usualStep } from "./rolling-totals.ts";
import { groupsOf, type Series } from "./row-series.ts";
import type { RowsFound } from "./within-day.ts";

/** Days on which one moment may stand twice, as when a clock is set back: one, or this share. */
const OCCASIONAL = 0.05;
/** A total over the day before stays wet for about a day after each shower; common practice, no source. */
const LONG_SPELL = 20 * 60;
const LEAST_SPELLS = 5;
/** Rows stand as far apart as a total says, but where one is left out or a clock is set. */
const WHOLE = 0.9;

/** Line of the first moment that stands twice with different amounts, where they do so on many days; else null. */
function clashLine(series: Series): number | null {
  const groups = groupsOf(series);
  const { minute, rain, line } = series;
  const isClash = (at: number) =>
    (minute[at] ?? -1) >= 0 &&
    minute[at] === minute[at - 1] &&
    (rain[at] ?? 0) >= 0 &&
    (rain[at - 1] ?? 0) >= 0 &&
    rain[at] !== rain[at - 1];
  let [days, first] = [0, 0];
  for (const { from, to } of groups) {
    let at = from + 1;
    while (at < to && !isClash(at)) at++;
    if (at >= to) continue;
    days++;
    first ||= line[at] ?? 0;
  }
  return days > Math.max(1, groups.length * OCCASIONAL) ? first : null;
}

/** Whether every spell of wet rows is about as long as a day, as in totals over the last 24 hours. */
function isRolling(series: Series): boolean {
  const moment = momentsOf(series);
  let [spells, start] = [0, -1];
  for (let at = 0; at < series.count; at++) {
    const isWet = (series.rain[at] ?? 0) > 0;
    if (isWet && start < 0) start = at;
    if (isWet || start < 0) continue;
    if (start > 0 && moment(at) - moment(start) < LONG_SPELL) return false;
    start = -1;
    spells++;
  }
  return spells >= LEAST_SPELLS;
}

const TOLD_AGAIN = "added up, each rain would count many times.";

function refuseRolling(series: Series): void {
  if (isRolling(series))
    throw new Refusal(
      `After each rain the rows stay wet for about a day, as totals over the last 24 hours do: ${TOLD_AGAIN}`,
      null,
    );
  const minutes = rollingMinutes(series);
  if (minutes !== null)
    throw new Refusal(
      `The rows are totals over the last ${minutes % 60 ? `${minutes} minutes` : `${minutes / 60} hours`}, and stand closer than that: ${TOLD_AGAIN}`,
      null,
    );
  const clock = holdsBefore(series);
  if (clock !== null)
    throw new Refusal(
      `The rows at ${clock} never tell less than the row before, as totals that hold it do: ${TOLD_AGAIN}`,
      null,
    );
}

/** Refuses rows that stand closer than the hours that their header says. */
function refuseWindow(series: Series, hours: number | null): void {
  const step = hours === null ? null : usualStep(series);
  if (hours === null || step === null || step >= hours * 60 * WHOLE) return;
  throw new Refusal(
    `Its header says totals over ${hours} hours, yet rows stand closer than that: ${TOLD_AGAIN}`,
    null,
  );
}

/**
 * Refuses amounts within a day that overlap.
 *
 * @param windowHours what the header says of the hours of an amount
 */
export function refuseOverlaps(
  series: Series,
  { reading, open, isEventLog }: RowsFound,
  { isChosen, windowHours }: { readonly isChosen: boolean; readonly windowHours: number | null },
): void {
  if (reading === "day" || isEventLog) return;
  const line = clashLine(series);
  if (line !== null)
    throw new Refusal(
      "On many days one moment stands twice with different amounts: two gauges in one file, or morning and afternoon in a column of their own? Bring in one gauge, with its whole time.",
      line,
    );
  if (isChosen || reading !== "sum") return;
  refuseWindow(series, windowHours);
  if (open.length === 0 && groupsOf(series).length < series.count) refuseRolling(series);
}
