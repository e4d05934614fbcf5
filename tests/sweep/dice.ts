// Throws of the dice that a seed repeats, bit for bit.

import { seededRandom } from "../../src/rainfall/seeded-random.ts";

export type Dice = {
  readonly chance: (share: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
  /** A whole number, both ends allowed. */
  readonly whole: (low: number, high: number) => number;
  /** A number as a person would type it, to two figures after the point. */
  readonly between: (low: number, high: number) => number;
  readonly shuffled: <T>(list: readonly T[]) => readonly T[];
};

export function dice(seed: number): Dice {
  const next = seededRandom(seed);
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    chance: (share) => next() < share,
    pick: (from) => from[whole(0, from.length - 1)] as (typeof from)[number],
    whole,
    between: (low, high) => Math.round((low + next() * (high - low)) * 100) / 100,
    shuffled: (list) => {
      const left = [...list];
      return list.map(() => left.splice(whole(0, left.length - 1), 1)[0] as (typeof list)[number]);
    },
  };
}
