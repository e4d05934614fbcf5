// Which tanks a bed's water comes from: what a sentence names where they are not enough.

import type { Bed } from "./beds.ts";
import type { SeasonState } from "./state.ts";

export type BedTanks = {
  /** Ids of all whose water comes to it, straight or through lines, and whether the place has others besides. */
  readonly reach: readonly string[];
  readonly others: boolean;
  /** Of those that it is watered from straight, the ones that a line fills. */
  readonly filled: readonly string[];
};

export function tanksOf({ tanks, supply }: SeasonState, { sources }: Bed): BedTanks {
  const own = [...new Set(sources.map(({ tank }) => tank))];
  const behind = own.flatMap((place) => supply[place]?.behind.map(({ tank }) => tank) ?? []);
  const reach = [...new Set([...own, ...behind])];
  const idOf = (place: number): string => tanks.parts[place]?.id ?? "";
  return {
    reach: reach.map(idOf),
    others: reach.length < tanks.parts.length,
    filled: own.filter((place) => supply[place]?.fed).map(idOf),
  };
}
