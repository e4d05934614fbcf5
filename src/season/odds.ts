// What runs from today on come to: the first short day of each, and odds by their ranks. The page joins them too, which runs none.

import type { Assumed } from "./moment-today.ts";
import type { SeasonDates } from "./spans.ts";

/** One run from today to the season's end; days null where they do not come before it [days since 1970-01-01]. */
export type Ahead = {
  /** The year whose weather it has, and by how many days that is shifted; null: dry days, or usual ones. */
  readonly year: number | null;
  readonly shift: number;
  /** First day on which a bed is short. */
  readonly short: number | null;
  /** The same of each bed, by id. */
  readonly beds: Readonly<Record<string, number | null>>;
  /** First short day after one on which none is: of a run that is short at once how long it lasts when all are watered; today: none comes within a week. */
  readonly again: number | null;
  /** First evening on which next to nothing is left in reach of any bed. */
  readonly empty: number | null;
  /** Water in reach of the beds each evening from today on [m3]. */
  readonly water: Float64Array;
};

/** Days by rank: of a day it is said that the truth comes sooner in at most that share of cases. */
export type Ranks = {
  readonly oneInTen: number | null;
  readonly half: number | null;
  readonly nineInTen: number | null;
};

export type Odds = {
  readonly kind: "odds";
  /** Years of the record that reach so far, and runs: more where each counts shifted too. */
  readonly years: number;
  readonly members: number;
  /** Runs that are still to come, where only a part of them was asked. */
  readonly awaited: number;
  readonly short: Ranks;
  readonly empty: Ranks;
  /** Chance that no bed goes short before the season's end: at least so much. */
  readonly reachesEnd: number;
  readonly ahead: readonly Ahead[];
};

/** Without odds: a usual run and a dry one, as the weather is made up, or as no year of the record reaches so far. */
export type UsualAndDry = {
  readonly kind: "usual_and_dry";
  readonly because: "made_up" | "too_short";
  readonly usual: Ahead;
  readonly dry: Ahead;
};

export type FromToday = {
  readonly today: number;
  /** The season's last day. */
  readonly last: number;
  /** Water in reach of the beds this morning, as it was noted or usually is [m3]. */
  readonly now: number;
  readonly assumed: Assumed;
  /** Beds that are held back today, by a note. */
  readonly heldBack: readonly string[];
  /** Of the beds that are short today since when, day by day, as far as the notes reach; left out: since today, or nobody knows. */
  readonly since: Readonly<Record<string, number>>;
} & (Odds | UsualAndDry | { readonly kind: "out_of_season"; readonly dates: SeasonDates });

/**
 * Rank of the latest day such that the truth comes sooner in at most a share of cases.
 *
 * @param days in any order, null: not before the season's end
 * @param share 0..1
 * @returns that day, the soonest of all where there are too few to say; null where it is not before the season's end
 * @source ranks k / (n + 1), Weibull 1939; Day 1985
 */
export function dayAtRank(days: readonly (number | null)[], share: number): number | null {
  const sorted = days.map((day) => day ?? Infinity).sort((a, b) => a - b);
  const rank = Math.max(1, Math.floor(share * (sorted.length + 1) + 1e-9));
  const day = sorted[rank - 1] ?? Infinity;
  return day === Infinity ? null : day;
}

const ranksOf = (days: readonly (number | null)[]): Ranks => ({
  oneInTen: dayAtRank(days, 0.1),
  half: dayAtRank(days, 0.5),
  nineInTen: dayAtRank(days, 0.9),
});

/** Odds of runs, by ranks. */
export function oddsOf(runs: readonly Ahead[], years: number, awaited: number): Odds {
  const neverShort = runs.filter(({ short }) => short === null).length;
  return {
    kind: "odds",
    years,
    members: runs.length,
    awaited,
    short: ranksOf(runs.map(({ short }) => short)),
    empty: ranksOf(runs.map(({ empty }) => empty)),
    reachesEnd: neverShort / (runs.length + 1),
    ahead: runs,
  };
}

/** Odds of some members and of others as one; whatever gives no odds is whole as it is. */
export function joinedOdds(one: FromToday, other: FromToday): FromToday {
  if (one.kind !== "odds" || other.kind !== "odds") return other;
  const inOrder = (a: Ahead, b: Ahead) => (a.year ?? 0) - (b.year ?? 0) || a.shift - b.shift;
  const runs = [...one.ahead, ...other.ahead].sort(inOrder);
  return { ...one, ...oddsOf(runs, one.years, one.awaited - other.members) };
}
