// What beds can use on each day of a season and what that pays, and the water that comes to them, by the past years.

import { type Bed, takesFrom } from "./beds.ts";
import { addTo, type Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { costADepth, potentialOver, type Stakes, stakesOf, worthOf } from "./worth.ts";

/** A bed's use on each day of the season: volume that it can use, and worth that is lost for each volume that it goes without. */
export type LaterUse = {
  readonly bed: string;
  /** [m3] */
  readonly need: Float64Array;
  /** [1/m3] */
  readonly pays: Float64Array;
};

/** All water behind a tank, and what is drawn from it and comes to it. */
export type Water = {
  /** [m3] */
  readonly capacity: number;
  readonly uses: readonly LaterUse[];
  /** By day of the season: what comes on it, of equally likely parts the mean of each [m3]. */
  readonly comes: readonly Float64Array[];
};

/** Days before and after a date whose water counts as that of the date; and parts of equal chance. */
const NEAR = 5;
const PARTS = 8;
/** A watering lasts about so long: what it pays is the mean of these days [day]. Ours: of 1, 5 and 10 days tried the middle one. */
const LASTS = 5;

/** Days of the longest season. */
const daysOf = ({ seasons }: SeasonState): number =>
  seasons.reduce((most, { first, last }) => Math.max(most, last - first + 1), 0);

/**
 * The water behind each tank from which beds are watered.
 *
 * @param whole a run over the past years, ready
 * @returns by the tank's place in the run
 */
export function watersOf(whole: SeasonState): ReadonlyMap<number, Water> {
  const days = daysOf(whole);
  const uses = new Map(stakesOf(whole).map((stakes) => [stakes.bed, useOf(whole, stakes, days)]));
  const tanks = new Set(whole.beds.flatMap(({ sources }) => sources.map(({ tank }) => tank)));
  return new Map([...tanks].map((tank) => [tank, waterBehind(whole, tank, uses, days)]));
}

function waterBehind(
  whole: SeasonState,
  tank: number,
  uses: ReadonlyMap<Bed, LaterUse>,
  days: number,
): Water {
  const behind = whole.feeders[tank] ?? [];
  const { capacity, dead } = whole.tanks;
  return {
    capacity: behind.reduce((sum, at) => sum + (capacity[at] as number) - (dead[at] as number), 0),
    uses: [...uses].flatMap(([bed, use]) => (takesFrom(bed, behind, whole.feeders) ? [use] : [])),
    comes: comingTo(whole, behind, days),
  };
}

function useOf({ seasons }: SeasonState, stakes: Stakes, days: number): LaterUse {
  const { part, perDepth, demand } = stakes.bed;
  const [need, cost] = [new Float64Array(days), new Float64Array(days)];
  for (const { first, last } of seasons) {
    const all = potentialOver([stakes], { first, last });
    for (let day = first; day <= last; day++) {
      const at = day - first;
      need[at] = (need[at] as number) + Math.max(0, demand?.daily[day] ?? 0) / seasons.length;
      cost[at] = (cost[at] as number) + costADepth(stakes, day, all) / seasons.length;
    }
  }
  const worth = perDepth > 0 ? worthOf(part) / perDepth : 0;
  return { bed: part.id, need, pays: meanAhead(cost).map((one) => one * worth) };
}

/** Mean of each value and those after it, as far as a watering lasts. */
const meanAhead = (values: Float64Array): Float64Array =>
  values.map((_, at) => {
    const lasting = values.subarray(at, at + LASTS);
    return lasting.reduce((sum, value) => sum + value, 0) / lasting.length;
  });

/** Roof water that comes to some tanks on each day of the season. */
function comingTo(whole: SeasonState, tanks: readonly number[], days: number): readonly Float64Array[] {
  const all = new Float64Array(whole.length);
  for (const tank of tanks) {
    const water = whole.roofWater[tank];
    if (water) addTo(all, water, 1);
  }
  return Array.from({ length: days }, (_, day) => meansByChance(nearby(whole.seasons, all, day).sort()));
}

/** A series on the days around a day of each season. */
function nearby(seasons: readonly Span[], series: Float64Array, day: number): Float64Array {
  const near = new Float64Array(seasons.length * (2 * NEAR + 1));
  let count = 0;
  for (const { first } of seasons) {
    const until = Math.min(series.length, first + day + NEAR + 1);
    for (let at = Math.max(0, first + day - NEAR); at < until; at++) near[count++] = series[at] as number;
  }
  return near.subarray(0, count);
}

/** Means of equally many of some sorted values. */
function meansByChance(sorted: Float64Array): Float64Array {
  const place = (part: number) => Math.floor((part * sorted.length) / PARTS);
  return Float64Array.from({ length: PARTS }, (_, part) => {
    const own = sorted.subarray(place(part), Math.max(place(part + 1), place(part) + 1));
    return own.length > 0 ? own.reduce((sum, value) => sum + value, 0) / own.length : 0;
  });
}
