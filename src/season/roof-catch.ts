// What a roof brings each day of a record, and in a usual and the driest year.

import { dayRunoff } from "../physics/roof.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { arrivingRain } from "./arriving-rain.ts";
import type { RoofPart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import type { Sky } from "./sky.ts";
import { dayOfSeason, type Span, sumOver, wholeYears } from "./spans.ts";

/** A roof as far as its catch goes. */
export type CatchingRoof = Omit<RoofPart, "id" | "drainsTo">;

/** What is still to be flushed on the morning of a day [m]. */
export type FlushLeft = { readonly day: number; readonly left: number };

/**
 * Water that a roof brings on each day; nothing while it is not connected.
 *
 * @param arriving water that the sky brings each day [m]
 * @param firstDay day of element 0 [days since 1970-01-01]
 * @param wet what an event has still to flush on the morning of a day, whatever fell before; left out: all on the first [m]
 * @returns volume of each day; 0 on a day without a reading [m3]
 * @throws DomainError for a negative loss or a coefficient outside 0..1
 * @source dayRunoff
 */
export function dailyCatch(
  roof: CatchingRoof,
  arriving: Float64Array,
  firstDay: number,
  wet?: FlushLeft,
): Float64Array {
  const dates = { start: roof.catchFrom ?? "01-01", end: roof.catchUntil ?? "12-31" };
  const connected = dayOfSeason(dates, firstDay, arriving.length);
  const caught = new Float64Array(arriving.length);
  let flushLeft = roof.firstFlush;
  for (let day = 0; day < caught.length; day++) {
    const rain = arriving[day] as number;
    if (wet?.day === day) flushLeft = wet.left;
    if (Number.isNaN(rain)) continue;
    const result = dayRunoff(roof, rain, flushLeft);
    flushLeft = result.flushLeft;
    if (connected[day]) caught[day] = result.volume;
  }
  return caught;
}

/**
 * What a roof has still to flush on the morning of a day: all of it, unless an event that goes on has had its share.
 *
 * @param arriving water that the sky brings each day [m]
 * @param day of it, its own rain not yet fallen [day]
 * @param wet what is known of an earlier morning; left out: the first had all to flush [m]
 * @returns depth [m]
 * @source dayRunoff
 */
export function flushLeftOn(
  roof: CatchingRoof,
  arriving: Float64Array,
  day: number,
  wet: FlushLeft = { day: 0, left: roof.firstFlush },
): number {
  let { left } = wet;
  for (let before = wet.day; before < day; before++) {
    const rain = arriving[before] as number;
    if (!Number.isNaN(rain)) left = dayRunoff(roof, rain, left).flushLeft;
  }
  return left;
}

const CATCHES = keeper<Float64Array>(16);

/**
 * dailyCatch under a sky, kept with it; not to be written to.
 *
 * @param sky depths of each day [m]
 * @returns volume of each day [m3]
 * @throws DomainError for a negative loss or a coefficient outside 0..1
 * @source dailyCatch
 */
export function caughtUnder(roof: CatchingRoof, sky: Sky, wet?: FlushLeft): Float64Array {
  const { footprint, runoffCoefficient, wettingLoss, firstFlush, catchFrom, catchUntil } = roof;
  const own: CatchingRoof = { footprint, runoffCoefficient, wettingLoss, firstFlush, catchFrom, catchUntil };
  return CATCHES(sky, contentKey([own, wet]), () => dailyCatch(own, sky.arriving, sky.firstDay, wet));
}

/**
 * What a roof catches in a year.
 *
 * @returns mean of the whole calendar years, and that of the one with the least rain; null without a whole year, the second
 * without two, of which one is drier [m3]
 * @throws DomainError for a negative loss or a coefficient outside 0..1
 * @source dailyCatch
 */
export function roofCatch(
  roof: CatchingRoof,
  record: DailyRecord,
  rainScale: number,
): { readonly meanYearly: number | null; readonly driestYear: number | null } {
  const years = readYears(record);
  const driest = driestOf(record.rain, years);
  if (!driest) return { meanYearly: null, driestYear: null };
  const caught = dailyCatch(roof, arrivingRain(record, rainScale), record.firstDay);
  const total = years.reduce((sum, year) => sum + sumOver(caught, year), 0);
  return { meanYearly: total / years.length, driestYear: years.length > 1 ? sumOver(caught, driest) : null };
}

/** Whole calendar years without a gap. */
function readYears(record: DailyRecord): readonly Span[] {
  return wholeYears(record.firstDay, record.rain.length).filter((year) =>
    Number.isFinite(sumOver(record.rain, year)),
  );
}

/**
 * The span with the least rain, the first of equals.
 *
 * @param rain of each day [m]
 * @returns the span, or null of none
 */
export function driestOf(rain: Float64Array, spans: readonly Span[]): Span | null {
  let driest: Span | null = null;
  for (const span of spans) {
    if (!driest || sumOver(rain, span) < sumOver(rain, driest)) driest = span;
  }
  return driest;
}
