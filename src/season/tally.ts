// Amounts a part adds up as the days pass: by whole season, by whole calendar year, and over the whole record.

/** Sums by span; the last element of each takes the days outside any whole span. */
export type Tally = { readonly seasons: Float64Array; readonly years: Float64Array };

/** Where today's amounts go. */
export type Slots = { season: number; year: number };

/**
 * A tally of nothing yet.
 *
 * @param seasons whole seasons of the record
 * @param years whole calendar years of the record
 */
export function newTally(seasons: number, years: number): Tally {
  return { seasons: new Float64Array(seasons + 1), years: new Float64Array(years + 1) };
}

/**
 * Adds today's amount.
 *
 * @param tally the sums [any]
 * @param amount of today [any]
 */
export function count(tally: Tally, slots: Slots, amount: number): void {
  tally.seasons[slots.season] = (tally.seasons[slots.season] as number) + amount;
  tally.years[slots.year] = (tally.years[slots.year] as number) + amount;
}

/**
 * Mean over the whole spans.
 *
 * @param sums by span, the last for days outside [any]
 * @returns mean; null without a whole span [any]
 */
export function meanOf(sums: Float64Array): number | null {
  return sums.length < 2 ? null : sumOfWhole(sums) / (sums.length - 1);
}

/**
 * Sum over the whole spans.
 *
 * @param sums by span, the last for days outside [any]
 * @returns sum [any]
 */
export function sumOfWhole(sums: Float64Array): number {
  let sum = 0;
  for (let place = 0; place < sums.length - 1; place++) sum += sums[place] as number;
  return sum;
}

/**
 * Sum over the record.
 *
 * @param tally the sums [any]
 * @returns sum, days outside whole spans included [any]
 */
export function sumOfAll(tally: Tally): number {
  return tally.years.reduce((sum, amount) => sum + amount, 0);
}
