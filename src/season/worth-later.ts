// What must stay in the tanks on each day because it is worth more later: dynamic programming over the water in reach alone.

import type { HoldingRule } from "./holding.ts";
import type { LaterUse, Water } from "./later-use.ts";
import type { SeasonState } from "./state.ts";

/** What the past years' need and water are multiplied by, since days are not drawn by themselves: tuned on those years. */
export type Leaning = { readonly need: number; readonly comes: number };

/** A bed is watered where half of what it asks for lies above what stays: as good as a part of it each day, and one can go by it. */
const HALF = 0.5;

/** Worths that differ by less are the same [-]. */
const ROUNDING = 1e-9;

/** Levels of the water in reach. */
const LEVELS = 40;

/** Volumes that a bed leaves on each day of the season, by bed [m3]. */
type Left = ReadonlyMap<string, Float64Array>;

/**
 * A rule by which a bed gets water only where none of it would be worth more later.
 *
 * @param waters by tank, as watersOf gives them
 * @source stochastic dynamic programming, Stedinger, Sule and Loucks 1984; marginal value of carryover, Draper and Lund 2004 (from
 *   memory); one store for all that is in reach, without the ground's own, is our simplification
 */
export function keptForLater(
  { beds }: SeasonState,
  waters: ReadonlyMap<number, Water>,
  leaning: Leaning,
): HoldingRule {
  const left = new Map([...waters].map(([tank, water]) => [tank, leftFor(water, leaning)] as const));
  const none = new Float64Array(0);
  return {
    above: HALF,
    kept: new Map(
      beds.map(({ part, sources }) => [
        part.id,
        sources.map(({ tank }) => left.get(tank)?.get(part.id) ?? none),
      ]),
    ),
  };
}

/** What water is worth by its volume, at levels from none to full. */
type Worths = Float64Array;

/** What each bed leaves of one water. */
export function leftFor(water: Water, leaning: Leaning): Left {
  const days = water.comes.length;
  const left = new Map(water.uses.map(({ bed }) => [bed, new Float64Array(days)]));
  let [next, now, after] = [1, 2, 3].map(() => new Float64Array(LEVELS)) as [Worths, Worths, Worths];
  for (let day = days - 1; day >= 0; day--) {
    fallOn(after, next, water, day, leaning.comes);
    const today = ranked(water, day, leaning.need, after);
    for (const { bed, keeps } of today) (left.get(bed) as Float64Array)[day] = keeps;
    drawFrom(now, after, water.capacity, today);
    const last = next;
    next = now;
    now = last;
  }
  return left;
}

/** What water is worth in the evening, before the day's rain, of what it is worth the next morning. */
function fallOn(evening: Worths, morning: Worths, water: Water, day: number, scale: number): void {
  const step = water.capacity / (LEVELS - 1);
  const rises = (water.comes[day] as Float64Array).map((volume) => (volume * scale) / step);
  // What comes is sorted, and on many days most of it is nothing.
  const dry = rises.lastIndexOf(0) + 1;
  for (let level = 0; level < LEVELS; level++) {
    const same = dry > 0 ? worthAt(morning, level) : 0;
    let sum = 0;
    for (let part = 0; part < dry; part++) sum += same;
    for (let part = dry; part < rises.length; part++)
      sum += worthAt(morning, level + (rises[part] as number));
    evening[level] = sum / rises.length;
  }
}

/** Between the levels in straight lines; more than full is full. The innermost of all loops of the advice asks it. */
function worthAt(worths: Worths, level: number): number {
  const low = Math.min(LEVELS - 2, Math.floor(level));
  const from = worths[low] as number;
  const to = worths[low + 1] as number;
  return from + (to - from) * Math.min(1, level - low);
}

/** A day's use of a bed, and what it leaves for later [m3]. */
type Today = {
  readonly bed: string;
  readonly need: number;
  readonly pays: number;
  readonly keeps: number;
};

/** The day's uses from the one that pays most to the least. */
function ranked({ uses, capacity }: Water, day: number, scale: number, after: Worths): readonly Today[] {
  return uses
    .map(({ bed, need, pays }: LaterUse): Today => {
      const paid = pays[day] as number;
      return {
        bed,
        need: (need[day] as number) * scale,
        pays: paid,
        keeps: keptAbove(after, capacity, paid),
      };
    })
    .sort((a, b) => b.pays - a.pays);
}

/** The volume of which the last litre is worth as much later as it pays now [m3]. */
function keptAbove(after: Worths, capacity: number, pays: number): number {
  const step = capacity / (LEVELS - 1);
  let before = Infinity;
  for (let level = 0; level < LEVELS - 1; level++) {
    const slope = ((after[level + 1] as number) - (after[level] as number)) / step;
    // A slope is that of the middle between two levels.
    if (slope <= pays * (1 + ROUNDING))
      return level === 0 ? 0 : (level - 0.5 + (before - pays) / (before - slope)) * step;
    before = slope;
  }
  return capacity;
}

/** What water is worth in the morning, drawn by each use down to what that leaves. */
function drawFrom(morning: Worths, evening: Worths, capacity: number, uses: readonly Today[]): void {
  const step = capacity / (LEVELS - 1);
  for (let level = 0; level < LEVELS; level++) {
    let held = level * step;
    let gained = 0;
    for (let use = 0; use < uses.length; use++) {
      const { need, pays, keeps } = uses[use] as Today;
      const given = Math.min(need, Math.max(0, held - keeps));
      held -= given;
      gained += given * pays;
    }
    morning[level] = gained + worthAt(evening, held / step);
  }
}
