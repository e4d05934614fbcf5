// What can be bought for a gravity line: sizes that the trade has, common practice, no source.

import type { Offer } from "../kind.ts";

/** What was timed through the old hose or valve says nothing of the new one. */
const TIMED = ["flow", "refill_time"];

export const LINE_OFFERS: readonly Offer[] = [
  {
    name: "hose",
    says: "the next size of hose for {}",
    row: "bore",
    buys: { larger: [0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2], unit: "in" },
    forgets: TIMED,
  },
  {
    name: "valve",
    says: "a wider float valve for {}",
    row: "valve_bore",
    buys: { larger: [2.5, 3.2, 4.8, 6.4, 8, 10, 12.7, 19, 25], unit: "mm" },
    forgets: [...TIMED, "opening"],
  },
];
