// The tanks of a place that is laid out from a few counts: big ones by the roofs, small ones at the beds.

import { bigTanks, type LaidPart, type LaidUnits, numbered, times, type Wish, word } from "../lay-out.ts";

/** How much higher than the small tanks the others stand until the user says: chest height, a usual slope. */
const STEP = {
  us: { value: 3, unit: "ft", from: "default" },
  metric: { value: 1, unit: "m", from: "default" },
} as const;

/** The small tanks stand on the ground that all heights are measured from. */
const ZERO = { us: { value: 0, unit: "ft" }, metric: { value: 0, unit: "m" } } as const;

function titleOf({ tanks, joined, small }: Wish, at: number): string {
  if (joined && tanks > 1) return small > 0 ? "Big tanks" : "Tanks";
  return numbered(small > 0 ? "Big tank" : "Tank", at);
}

export function laidTanks(wish: Wish, system: LaidUnits): readonly LaidPart[] {
  const height = wish.small > 0 ? { ground_height: STEP[system] } : {};
  const as = wish.joined ? { count: { value: wish.tanks, unit: "1" } } : {};
  const big = times(bigTanks(wish), (at) => ({
    key: `tank${at}`,
    title: titleOf(wish, at),
    givens: { start_from: word("tote_275"), shape: word("box"), ...as, ...height },
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
