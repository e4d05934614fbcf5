// What happened to each bed day by day, noted only while someone wants to read it.

import { BOUNDS, type DayBound } from "../network/bounds.ts";
import type { Bed } from "./beds.ts";
import { ownBound, TANKFUL } from "./bounds.ts";
import { isThirsty } from "./soil-step.ts";
import { handsFor, type Served, type Source } from "./sources.ts";

/** What one source gave on a day: water [m3], its running or carrying time [s], rounds with cans; one's own time and that of setting up [s]. */
export type Portion = {
  readonly id: string;
  readonly volume: number;
  readonly time: number;
  readonly trips: number;
  readonly hands: number;
  readonly setUp: number;
  /** From the hour of watering until the tank was full again for it [s]; 0: the first go. */
  readonly wait: number;
};

/** A bed's day. Depths are over its watered ground [m]. */
export type BedDay = {
  /** [days since 1970-01-01] */
  readonly date: number;
  /** Its place among the beds of that day, in the order in which they are watered. */
  readonly turn: number;
  /** [m3], and by which sources, in order. */
  readonly asked: number;
  readonly given: number;
  readonly from: readonly Portion[];
  /** Why it got less than it asked for, or is thirsty; null: neither. */
  readonly bound: DayBound | null;
  /** What each allowance alone would have let through of a short watering, by its place in BOUNDS [m3]; else null. */
  readonly allowances: readonly number[] | null;
  /** So dry that its crops held back. */
  readonly stressed: boolean;
  /** Let go in a dry spell. */
  readonly letGo: boolean;
  /** Of the water given, and of the rain, what its ground had room for. */
  readonly kept: number;
  readonly rain: number;
  /** By its crops, and by bare ground. */
  readonly use: number;
  readonly dried: number;
  readonly potential: number;
  /** Water short in the evening in the root zone and in the rest of its ground; what of it crops do not feel; at which the bed asks; and all the root zone holds. */
  readonly depletion: number;
  readonly rest: number;
  readonly readily: number;
  readonly trigger: number;
  readonly total: number;
};

export type DayLog = { readonly days: Map<string, BedDay[]>; readonly today: Map<string, Portion[]> };

/** Nothing noted yet. */
export const newLog = (): DayLog => ({ days: new Map(), today: new Map() });

/**
 * Notes what a source has just given a bed; a second tankful on the same day by itself.
 *
 * @param served by which source, by its place in the bed's list, what it gave [m3] and after what wait [s]
 */
export function noteServed(
  log: DayLog,
  bed: Bed,
  { rank, amount, time, trips, wait }: Served & { readonly rank: number; readonly wait: number },
): void {
  const source = bed.sources[rank] as Source;
  const portions = log.today.get(bed.part.id) ?? [];
  const hands = handsFor(source, time);
  portions.push({ id: source.id, volume: amount, time, trips, hands, setUp: source.setUp, wait });
  log.today.set(bed.part.id, portions);
}

/** What came of a bed's day: water and rain that its ground kept, what was used, and lost while bare [m]. */
type Came = {
  readonly date: number;
  readonly turn: number;
  readonly day: number;
  readonly kept: number;
  readonly rained: number;
  readonly use: number;
  readonly dried: number;
};

/** As it is told of a day: of a tankful others may have drawn first. */
function toldBound({ othersFirst }: Bed, place: number): DayBound | null {
  return place === TANKFUL && othersFirst ? "others_first" : (BOUNDS[place] ?? null);
}

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/** Rain may have refilled it since a watering that was short: what bound that one is told, thirsty or not. */
function boundOfDay(bed: Bed, short: boolean, stressed: boolean): number {
  const isRefilled = bed.bound === ownBound(bed.sources);
  return stressed && !(short && isRefilled) ? bed.bound : bed.shortBound;
}

/**
 * Notes a bed's day in the evening.
 *
 * @param came what came of the day [m]
 */
export function noteDay(log: DayLog, bed: Bed, came: Came): void {
  const { day } = came;
  const { id } = bed.part;
  const given = bed.given[day] as number;
  const potential = bed.days.potential[day] as number;
  const stressed = isThirsty(potential, came.use);
  const short = bed.asked - given > bed.asked * ROUNDING;
  const rows = log.days.get(id) ?? [];
  rows.push({
    date: came.date,
    turn: came.turn,
    asked: bed.asked,
    given,
    from: log.today.get(id) ?? [],
    bound: short || stressed ? toldBound(bed, boundOfDay(bed, short, stressed)) : null,
    allowances: short ? Array.from(bed.lacks, (lack) => bed.asked - lack) : null,
    stressed,
    letGo: bed.letGo?.[day] === 1,
    kept: came.kept,
    rain: came.rained,
    use: came.use,
    dried: came.dried,
    potential,
    depletion: bed.soil.depletion,
    rest: bed.soil.rest,
    readily: bed.days.readily[day] as number,
    trigger: bed.days.trigger[day] as number,
    total: bed.days.total[day] as number,
  });
  log.days.set(id, rows);
  log.today.delete(id);
}
