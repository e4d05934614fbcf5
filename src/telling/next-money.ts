// What the next money buys: one sentence with whole days of all seasons in it, as what gives out first is said.

import { type ShowOptions, showQuantity } from "../units/show.ts";
import { inSeasons, listed, shortDays } from "./words/lists.ts";

/** What was bought and what it takes away. */
export type BoughtSaid = {
  readonly titles: readonly string[];
  /** [money] */
  readonly cost: number;
  /** Short days fewer a season, on the mean. */
  readonly saved: number;
};

/** Short days of all seasons together: a mean over whole seasons times their number. */
export const inAll = (aSeason: number, seasons: number): number => Math.round(aSeason * seasons);

/** "24 of 30 short days fewer in 4 seasons". */
export function fewerSaid(saved: number, base: number, seasons: number): string {
  const [fewer, all] = [inAll(saved, seasons), inAll(base, seasons)];
  const span = inSeasons(seasons);
  if (fewer === all)
    return all === 1 ? `the only short day gone ${span}` : `all ${shortDays(all)} gone ${span}`;
  return `${fewer} of ${shortDays(all)} fewer ${span}`;
}

/** What one thing takes away by itself: "24 fewer". */
export function aloneSaid(saved: number, seasons: number): string {
  const fewer = inAll(saved, seasons);
  return fewer === 0 ? "none fewer" : fewer < 0 ? `${-fewer} more` : `${fewer} fewer`;
}

/** "Next $40: a gutter on Porch roof, 24 of 30 short days fewer in 4 seasons". */
export function nextMoneySaid(
  { titles, cost, saved }: BoughtSaid,
  base: number,
  seasons: number,
  options: ShowOptions,
): string {
  return `Next ${showQuantity(cost, "money", options)}: ${listed(titles)}, ${fewerSaid(saved, base, seasons)}`;
}

/** Why nothing is suggested; "" where there is something. */
export function noneSaid(
  found: number,
  base: number | null,
  { priced, affordable }: { readonly priced: number; readonly affordable: number },
): string {
  if (base === null) return "The season cannot be run yet, so that nothing can be said of what to buy.";
  if (base === 0) return "No day is short: there is nothing to buy against it.";
  if (found > 0) return "";
  if (priced === 0) return "Nothing that could be bought has a price yet.";
  if (affordable === 0) return "Everything with a price costs more than that.";
  return "Nothing with a price takes away a short day for that, not even two things together.";
}
