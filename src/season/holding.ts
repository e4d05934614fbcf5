// Holding water back for the beds that are worth more: a rule of five marks over the season, and waterings that are refused.

import { type Bed, takesFrom } from "./beds.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";

/** Days at marks spread evenly over the season, the first on its first day, the last on its last, straight between [day]. */
type Marks = readonly number[];

/**
 * What is left in the tanks before a bed gets any: days of the peak need of the beds that are worth more, and days of that
 * of all, saved for later in the season, when thirst may cost more.
 */
export type HoldingRule = { readonly marks: Marks; readonly saved: Marks };

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
 * Days of a rule's marks on a day of the season.
 *
 * @param share of the season that is over, 0 to 1
 */
export function daysAt(marks: Marks, share: number): number {
  const place = Math.min(1, Math.max(0, share)) * (marks.length - 1);
  const before = Math.min(marks.length - 1, Math.floor(place));
  const [from, to] = [marks[before] ?? 0, marks[before + 1] ?? marks[before] ?? 0];
  return from + (to - from) * (place - before);
}

/** Makes every bed of a run stand back for those worth more, whatever the season's own days say. */
export function standBack({ beds, feeders, length }: Pick<SeasonState, "beds" | "feeders" | "length">): void {
  const better: Bed[] = [];
  const series = () => new Float64Array(length);
  for (const bed of byWorth(beds)) {
    const among = (others: readonly Bed[]) =>
      bed.sources.map(({ tank }: Source) => {
        const water = feeders[tank] ?? [];
        return others.filter((other) => takesFrom(other, water, feeders));
      });
    bed.hold = {
      ahead: among(better),
      all: among(beds),
      days: series(),
      saved: series(),
      refused: 0,
      served: 0,
    };
    better.push(bed);
  }
}

/**
 * Lays a rule over the days of a run whose beds stand back.
 *
 * @param last day of the season, counted from 1
 */
export function layRule(
  { beds, dayInSeason }: SeasonState,
  { marks, saved }: HoldingRule,
  last: number,
): void {
  const over = (of: Marks) =>
    Float64Array.from(dayInSeason, (day) =>
      day === 0 ? 0 : daysAt(of, last > 1 ? (day - 1) / (last - 1) : 0),
    );
  const [kept, all] = [over(marks), over(saved)];
  for (const { hold } of beds) {
    hold?.days.set(kept);
    hold?.saved.set(all);
  }
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
