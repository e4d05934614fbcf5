// Holding water back for the beds that are worth more: a rule of five marks over the season, and waterings that are refused.

import { type Bed, takesFrom } from "./beds.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";

/**
 * How much is kept for the beds that are worth more, before a lesser one gets any: days of their peak need, at marks spread
 * evenly over the season, the first on its first day and the last on its last, straight lines between them [day].
 */
export type HoldingRule = { readonly marks: readonly number[] };

/** The beds of a run from the one that is worth most a square metre to the least; of equals the one watered first. */
export function byWorth(beds: readonly Bed[]): readonly Bed[] {
  return [...beds].sort(
    (a, b) =>
      b.part.worth - a.part.worth ||
      a.part.priority - b.part.priority ||
      (a.part.id < b.part.id ? -1 : a.part.id > b.part.id ? 1 : 0),
  );
}

/**
 * The rule's days on a day of the season.
 *
 * @param share of the season that is over, 0 to 1
 */
export function daysKept({ marks }: HoldingRule, share: number): number {
  const place = Math.min(1, Math.max(0, share)) * (marks.length - 1);
  const before = Math.min(marks.length - 1, Math.floor(place));
  const [from, to] = [marks[before] ?? 0, marks[before + 1] ?? marks[before] ?? 0];
  return from + (to - from) * (place - before);
}

/** Makes every bed of a run stand back for those worth more, whatever the season's own days say. */
export function standBack({ beds, feeders, length }: Pick<SeasonState, "beds" | "feeders" | "length">): void {
  const better: Bed[] = [];
  for (const bed of byWorth(beds)) {
    const ahead = bed.sources.map(({ tank }: Source) => {
      const water = feeders[tank] ?? [];
      return better.filter((other) => takesFrom(other, water, feeders));
    });
    bed.hold = { ahead, days: new Float64Array(length), refused: 0, served: 0 };
    better.push(bed);
  }
}

/**
 * Lays a rule over the days of a run whose beds stand back.
 *
 * @param last day of the season, counted from 1
 */
export function layRule({ beds, dayInSeason }: SeasonState, rule: HoldingRule, last: number): void {
  const days = Float64Array.from(dayInSeason, (day) =>
    day === 0 ? 0 : daysKept(rule, last > 1 ? (day - 1) / (last - 1) : 0),
  );
  for (const { hold } of beds) hold?.days.set(days);
}

/** How often a bed is refused or served at its next waterings, whatever the rule says. */
export type Order = { readonly refused: number } | { readonly served: number };

/** By bed; of one left out the rule decides. */
export type Orders = ReadonlyMap<string, Order>;

/** Gives the beds of a run their orders, those before forgotten. */
export function order(beds: readonly Bed[], orders: Orders): void {
  for (const { part, hold } of beds) {
    if (hold) Object.assign(hold, { refused: 0, served: 0 }, orders.get(part.id));
  }
}

/** Counts orders down, in the evening of a day on which the bed asked. */
export function countOrders(beds: readonly Bed[]): void {
  for (let place = 0; place < beds.length; place++) {
    const { hold, asked } = beds[place] as Bed;
    if (!hold || asked === 0) continue;
    hold.refused = Math.max(0, hold.refused - 1);
    hold.served = Math.max(0, hold.served - 1);
  }
}
