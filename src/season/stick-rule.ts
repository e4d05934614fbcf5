// The rule that a dip stick can carry: one mark a month, above it all beds are watered, below it none of those that are held back.

import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate } from "../units/calendar.ts";
import { byWorth, type HoldingRule } from "./holding.ts";
import type { SeasonInput } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { prepareSeason } from "./run.ts";
import type { SeasonState } from "./state.ts";
import { hardest, lossOf, sumBelow, type Trial, trialsOf } from "./trials.ts";

/** A season of the record: what is lost of all that the beds are worth, by the marks and by the season's own days [-]. */
export type TriedYear = { readonly year: number; readonly loss: number; readonly plain: number };

export type StickRule = {
  /** By month, 1 January to 12 December, in the season's order: the share of what full tanks hold in reach [-]. */
  readonly marks: ReadonlyMap<number, number>;
  /** Beds that get no water below the marks. */
  readonly held: readonly string[];
};

/** How many of the seasons it was tuned on, and how each of them would have gone. */
export type TunedStick = StickRule & { readonly on: number; readonly years: readonly TriedYear[] };

/** Shares that are tried for all months at once, for the months until one, for each alone; then steps to either side. */
const ALIKE: readonly number[] = [0, 0.15, 0.3, 0.5, 0.75];
const UNTIL: readonly number[] = [0.35, 0.6, 0.85];
const ALONE: readonly number[] = [0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
const STEPS: readonly number[] = [0.08, 0.04];
/** The highest mark: full tanks are never saved. */
const MOST = 0.95;

const KEPT = keeper<{ readonly stick: TunedStick | null }>(8);

/**
 * The marks by which the beds would have lost least of their worth over the record's seasons.
 *
 * @returns null where no season can be run
 * @source parameterisation, simulation, optimisation: Koutsoyiannis and Economou 2003 (from memory); marks with hedging:
 *   Shih and ReVelle 1994 (from memory); the search is ours, and finds good marks, not surely the best
 */
export function tunedStick(input: SeasonInput, record: DailyRecord): TunedStick | null {
  return KEPT(record, contentKey(input), () => {
    const whole = prepareSeason(input, record);
    return { stick: "failed" in whole ? null : tunedOn(whole, trialsOf(input, whole)) };
  }).stick;
}

function tunedOn(whole: SeasonState, trials: readonly Trial[]): TunedStick {
  const hard = hardest(trials);
  const { marks, held } = searched(whole, hard);
  const rule = ruleOf(whole, { marks, held });
  const years = trials.map((trial) => ({ year: trial.year, loss: lossOf(trial, rule), plain: trial.plain }));
  return { marks, held, on: hard.length, years };
}

/** Beds that may be held back together: all of them, or those that are not worth most; of beds worth alike the least. */
function heldWays({ beds }: SeasonState): readonly (readonly string[])[] {
  const ranked = byWorth(beds);
  const least = ranked.at(-1);
  const most = ranked[0]?.part.worth;
  const ids = (some: typeof ranked) => some.map(({ part }) => part.id);
  return [ids(ranked), ids(ranked.filter((bed) => bed === least || bed.part.worth !== most))];
}

/** Months of the season in its order, and that of each of its days. */
function monthsOf({ record, seasons }: SeasonState): readonly number[] {
  const longest = seasons.reduce((one, other) =>
    other.last - other.first > one.last - one.first ? other : one,
  );
  const { first, last } = longest;
  return Array.from(
    { length: last - first + 1 },
    (_, day) => calendarDate(record.firstDay + first + day).month,
  );
}

/** The marks as volumes that stay in the tanks. */
export function ruleOf(whole: SeasonState, { marks, held }: StickRule): HoldingRule {
  const shares = monthsOf(whole).map((month) => marks.get(month) ?? 0);
  const { capacity, dead } = whole.tanks;
  const series = (tank: number) => {
    const behind = whole.feeders[tank] ?? [];
    const full = behind.reduce((sum, at) => sum + (capacity[at] as number) - (dead[at] as number), 0);
    return Float64Array.from(shares, (share) => share * full);
  };
  const own = whole.beds.filter(({ part }) => held.includes(part.id));
  return {
    above: null,
    kept: new Map(own.map(({ part, sources }) => [part.id, sources.map(({ tank }) => series(tank))])),
  };
}

type Found = StickRule & { readonly loss: number };

/** The best marks of each way of holding back. */
function searched(whole: SeasonState, hard: readonly Trial[]): StickRule {
  const found = heldWays(whole).map((held) => searchedWith(whole, hard, held));
  return found.reduce((best, one) => (one.loss < best.loss ? one : best));
}

/** Marks that are the same in all months or until one, then the best of them month by month, then in finer steps. */
function searchedWith(whole: SeasonState, hard: readonly Trial[], held: readonly string[]): Found {
  const months = [...new Set(monthsOf(whole))];
  const alike = (share: number, until = months.length) =>
    new Map(months.map((month, at) => [month, at < until ? share : 0]));
  let best: Found = { marks: alike(0), held, loss: Infinity };
  const attempt = (marks: StickRule["marks"]): void => {
    const loss = sumBelow(hard, ruleOf(whole, { marks, held }), best.loss);
    if (loss !== null) best = { marks, held, loss };
  };
  const move = (month: number, to: number): void => {
    if (to >= 0 && to <= MOST) attempt(new Map(best.marks).set(month, to));
  };
  for (const share of ALIKE) attempt(alike(share));
  for (const share of UNTIL) for (let until = 1; until < months.length; until++) attempt(alike(share, until));
  for (const month of months) for (const share of ALONE) move(month, share);
  for (const step of STEPS)
    for (const month of months)
      for (const side of [step, -step]) move(month, (best.marks.get(month) ?? 0) + side);
  return best;
}
