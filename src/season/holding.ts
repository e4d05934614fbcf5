// Holding water back for later and for the beds that are worth more: volumes that stay in the tanks, and waterings that are refused.

import type { Bed } from "./beds.ts";
import type { SeasonState } from "./state.ts";

/** Volumes that stay in the tanks, by bed and by its sources, on each day of the season [m3]; of a bed left out none. */
export type HoldingRule = {
  readonly kept: ReadonlyMap<string, readonly Float64Array[]>;
  /** A bed gets all that it asks for where so much of it lies above what stays, else nothing [-]; null: it gets what does. */
  readonly above: number | null;
};

/** The beds of a run from the one that is worth most a square metre to the least; of equals the one watered first. */
export function byWorth(beds: readonly Bed[]): readonly Bed[] {
  return [...beds].sort(
    (a, b) =>
      b.part.worth - a.part.worth ||
      a.part.priority - b.part.priority ||
      (a.part.id < b.part.id ? -1 : a.part.id > b.part.id ? 1 : 0),
  );
}

/** Makes every bed of a run stand back by a rule, whatever the season's own days say. */
export function standBack({ beds, length }: Pick<SeasonState, "beds" | "length">): void {
  for (const bed of beds) {
    const kept = bed.sources.map(() => new Float64Array(length));
    bed.hold = { kept, above: 0, refused: 0, served: 0 };
  }
}

/** Lays a rule over the days of a run whose beds stand back. */
export function layRule({ beds, dayInSeason }: SeasonState, { kept, above }: HoldingRule): void {
  for (const { part, hold } of beds) {
    if (!hold) continue;
    hold.above = above;
    hold.kept.forEach((series, rank) => {
      const volumes = kept.get(part.id)?.[rank];
      for (let day = 0; day < series.length; day++)
        series[day] = volumes?.[(dayInSeason[day] as number) - 1] ?? 0;
    });
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
