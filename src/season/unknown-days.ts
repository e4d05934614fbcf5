// Days before today of which neither a measured record nor the gauge tells: it rained on them as in the year of the record
// whose rain over those days is the middle one.

import type { Happened } from "../happened/happened.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { type GaugeDays, gaugeSpells } from "./happened-days.ts";
import { isMeasured } from "./measured.ts";
import type { Weather } from "./moment.ts";
import { yearsAhead } from "./years-ahead.ts";

/** What was taken for the rain of days that nothing tells of. */
export type RainTaken = {
  /** Spells of them, one after the other, the first and the last day of each [days since 1970-01-01]. */
  readonly spells: readonly { readonly first: number; readonly last: number }[];
  /** The year of the record that it is taken from; null: none reaches so far, and they are taken as dry. */
  readonly year: number | null;
  readonly madeUp: boolean;
};

/** First day that is carried on from, and today [days since 1970-01-01]. */
type Days = { readonly first: number; readonly today: number };

/** The days before today that nothing tells of, in order [days since 1970-01-01]. */
function unknownDays(record: DailyRecord, happened: readonly Happened[], gauge: GaugeDays, first: number) {
  const spells = gaugeSpells(happened, gauge);
  const isGauged = (date: number) =>
    spells.some(({ from, to }) => date >= gauge.first + from && date <= gauge.first + to);
  const before = Array.from({ length: Math.max(0, gauge.today - first) }, (_, day) => first + day);
  return before.filter((date) => !isMeasured(record, date) && !isGauged(date));
}

/**
 * The weather of the year whose rain over some days is the middle one, of an even count the drier: days that the gauge tells
 * of have no say, else a year that is in the middle for its rain on just those would bring the others too little.
 *
 * @param dates those days, in order [days since 1970-01-01]
 * @param eto of the record's days [m]
 * @returns null where no year of the record reaches over them
 */
function middlingYear(
  record: DailyRecord,
  eto: Float64Array,
  { first, today }: Days,
  dates: readonly number[],
) {
  const { ahead } = yearsAhead(record, eto, { today: first, last: today - 1 });
  const rainOf = ({ rain }: Weather) => dates.reduce((sum, date) => sum + (rain[date - first] as number), 0);
  const own = ahead.filter(({ shift }) => shift === 0);
  const sorted = own
    .map((one) => ({ ...one, sum: rainOf(one.weather) }))
    .sort((a, b) => a.sum - b.sum || a.year - b.year);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
}

/** Days in order, as spells of days that follow each other. */
function spellsOf(dates: readonly number[]): RainTaken["spells"] {
  const starts = dates.filter((date, at) => dates[at - 1] !== date - 1);
  const ends = dates.filter((date, at) => dates[at + 1] !== date + 1);
  return starts.map((first, at) => ({ first, last: ends[at] ?? first }));
}

export type UnknownDays = {
  readonly taken: RainTaken;
  readonly dates: readonly number[];
  readonly weather: Weather | null;
};

/**
 * What is taken for the days that nothing tells of.
 *
 * @param first day that is carried on from [days since 1970-01-01]
 * @returns the middling year's weather from that day on; null where all is known
 */
export function takenFor(
  record: DailyRecord,
  eto: Float64Array,
  happened: readonly Happened[],
  { first, gauge }: { readonly first: number; readonly gauge: GaugeDays },
): UnknownDays | null {
  const dates = unknownDays(record, happened, gauge, first);
  if (dates.length === 0) return null;
  const middle = middlingYear(record, eto, { first, today: gauge.today }, dates);
  return {
    dates,
    weather: middle?.weather ?? null,
    taken: { spells: spellsOf(dates), year: middle?.year ?? null, madeUp: record.madeUp },
  };
}
