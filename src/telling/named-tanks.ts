// The tanks that a bed's water comes from, by their titles, where a sentence may name them.

import type { BedTanks } from "../season/bed-tanks.ts";
import type { NamedTanks } from "./words/bounds.ts";
import { listed, perhapsListed } from "./words/lists.ts";

/** More tanks than these are not named one by one. */
const MOST = 2;

/** None is named where all that the place has are not enough, and they are several. */
export function namedTanks(tanks: BedTanks | undefined, titleOf: (id: string) => string): NamedTanks {
  if (!tanks) return { reach: "", filled: "" };
  const { reach, others, filled } = tanks;
  const isNamed = reach.length === 1 || (others && reach.length <= MOST);
  return {
    reach: isNamed ? listed(reach.map(titleOf)) : "",
    filled: filled.length <= MOST ? perhapsListed(filled.map(titleOf)) : "",
  };
}
