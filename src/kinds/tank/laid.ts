// The tanks of a place that is laid out from a few counts: big ones by the roofs, small ones at the beds.

import { type LaidPart, type LaidUnits, numbered, times, type Wish, word } from "../lay-out.ts";

/** How much higher than the small tanks the others stand until the user says: chest height, a usual slope. */
const STEP = {
  us: { value: 3, unit: "ft", from: "default" },
  metric: { value: 1, unit: "m", from: "default" },
} as const;

/** The small tanks stand on the ground that all heights are measured from. */
const ZERO = { us: { value: 0, unit: "ft" }, metric: { value: 0, unit: "m" } } as const;

export function laidTanks(wish: Wish, system: LaidUnits): readonly LaidPart[] {
  const height = wish.small > 0 ? { ground_height: STEP[system] } : {};
  const big = times(wish.tanks, (at) => ({
    key: `tank${at}`,
    title: numbered(wish.small > 0 ? "Big tank" : "Tank", at),
    givens: { start_from: word("tote_275"), shape: word("box"), ...height },
    links: {},
  }));
  const small = times(wish.small, (at) => ({
    key: `small${at}`,
    title: numbered("Small tank", at),
    givens: {
      start_from: word("drum_55"),
      ground_height: ZERO[system],
      outlet_height: { value: 0, unit: system === "us" ? "in" : "cm" },
    },
    links: {},
  }));
  return [...big, ...small];
}
