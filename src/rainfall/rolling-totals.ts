// Whether rows within a day are totals over more than the time from one row to the next: each rain is then told many times.
// Shares and counts: common practice, no source.
import { MINUTES_A_DAY } from "../units/constants.ts";
import type { Series } from "./row-series.ts";

/** Rows that stand the usual step apart, for there to be one. */
const KEPT = 0.8;
const LEAST_SPELLS = 5;
const LEAST_WET = 30;
/** Wet rows that may speak against totals, as where an amount was corrected. */
const SLIPS = 0.02;
/** Amounts of a file are rounded to this share of a step of theirs at the most. */
const ROUNDING = 1e-6;
/** Rows after a wet one at one hour of the day, none of which falls: by chance once in a million files. */
const LEAST_HELD = 20;

/** Minutes of each row since a fixed day. */
export function momentsOf({ day, minute }: Series): (at: number) => number {
  return (at) => (day[at] ?? 0) * MINUTES_A_DAY + (minute[at] ?? 0);
}

/** Minutes from one row to the next where most rows keep them, or null. */
export function usualStep(series: Series): number | null {
  const moment = momentsOf(series);
  const steps = new Map<number, number>();
  for (let at = 1; at < series.count; at++) {
    const step = moment(at) - moment(at - 1);
    steps.set(step, (steps.get(step) ?? 0) + 1);
  }
  const [step, count] = [...steps].sort((a, b) => b[1] - a[1])[0] ?? [0, 0];
  return step > 0 && count >= (series.count - 1) * KEPT ? step : null;
}

/** Rows of the shortest wet spell that has a dry row before and after, and the number of spells. */
function shortestSpell({ rain, count }: Series): { readonly rows: number; readonly spells: number } {
  let [rows, spells, length] = [Number.POSITIVE_INFINITY, 0, -1];
  for (let at = 0; at < count; at++) {
    const value = rain[at] ?? Number.NaN;
    if (value > 0 && length >= 0) length++;
    else if (value === 0) {
      if (length > 0) {
        rows = Math.min(rows, length);
        spells++;
      }
      length = 0;
    } else if (!(value > 0)) length = -1;
  }
  return { rows, spells };
}

/** Whether the amounts are sums of so many rows before: taken apart, none of those is below nought. */
function comesApart({ rain, count }: Series, rows: number): boolean {
  const parts = new Float64Array(count);
  let [wet, slips] = [0, 0];
  // Before a dry row nothing is left over of older rain, so that each spell is taken apart by itself.
  let isKnown = false;
  for (let at = 0; at < count; at++) {
    const value = rain[at] ?? Number.NaN;
    if (value === 0) isKnown = true;
    else if (Number.isNaN(value)) isKnown = false;
    if (!isKnown || value === 0) continue;
    wet++;
    const part = value - (rain[at - 1] ?? 0) + (parts[at - rows] ?? 0);
    if (part < -ROUNDING * Math.max(1, value)) slips++;
    parts[at] = Math.max(0, part);
  }
  return wet >= LEAST_WET && slips <= wet * SLIPS;
}

/** Minutes over which each row is a total where they are more than from row to row, as the amounts prove; else null. */
export function rollingMinutes(series: Series): number | null {
  const step = usualStep(series);
  const { rows, spells } = shortestSpell(series);
  if (step === null || spells < LEAST_SPELLS || rows < 2 || rows * step > MINUTES_A_DAY) return null;
  return comesApart(series, rows) ? rows * step : null;
}

/** The time of day whose rows never tell less than a wet row before them, as "06:00"; null where there is none. */
export function holdsBefore({ minute, rain, count }: Series): string | null {
  const held = new Map<number, { wet: number; falls: number }>();
  for (let at = 1; at < count; at++) {
    const [before, value, clock] = [rain[at - 1] ?? 0, rain[at] ?? Number.NaN, minute[at] ?? -1];
    if (!(before > 0) || Number.isNaN(value) || clock < 0) continue;
    const known = held.get(clock) ?? { wet: 0, falls: 0 };
    held.set(clock, { wet: known.wet + 1, falls: known.falls + (value < before ? 1 : 0) });
  }
  for (const [clock, { wet, falls }] of held)
    if (wet >= LEAST_HELD && falls <= wet * SLIPS)
      return `${String(Math.floor(clock / 60)).padStart(2, "0")}:${String(clock % 60).padStart(2, "0")}`;
  return null;
}
