// The tanks that a bed's water comes from, by their titles, where a sentence may name them.

import { tankOf, waterersOf } from "../network/beds.ts";
import type { DayBound, Driver } from "../network/bounds.ts";
import { feedersOf, linesInto } from "../network/feeds.ts";
import { idsOf, networkHeld } from "../network/network.ts";
import type { BedTanks } from "../season/bed-tanks.ts";
import { type NamedTanks, whyShort } from "./words/bounds.ts";
import { listed, perhapsListed } from "./words/lists.ts";

/** More tanks than these are not named one by one. */
const MOST = 2;

/** Why a bed does not get its water; one that nothing waters lacks no tank, no time and no pump. */
export function whyNot(bound: DayBound | null, { driver, tanks, titleOf }: Lacking): string {
  if (tanks?.reach.length === 0) return whyShort("unwatered", driver);
  return whyShort(bound, driver, namedTanks(tanks, titleOf));
}

type Lacking = {
  readonly driver: Driver;
  readonly tanks: BedTanks | undefined;
  readonly titleOf: (id: string) => string;
};

/** None is named where all that the place has are not enough, and they are several. */
function namedTanks(tanks: BedTanks | undefined, titleOf: (id: string) => string): NamedTanks {
  if (!tanks) return { reach: "", filled: "" };
  const { reach, others, filled } = tanks;
  const isNamed = reach.length === 1 || (others && reach.length <= MOST);
  return {
    reach: isNamed ? listed(reach.map(titleOf)) : "",
    filled: filled.length <= MOST ? perhapsListed(filled.map(titleOf)) : "",
  };
}

/**
 * The tanks of a bed as a sentence about a day that is past names them.
 *
 * @param held the network of the whole place, as its row holds it
 */
export function tanksNamed(held: unknown, bed: string, titleOf: (id: string) => string): NamedTanks {
  const network = networkHeld(held);
  const own = [...new Set(waterersOf(network, bed).flatMap((waterer) => tankOf(network, waterer) ?? []))];
  const reach = [...new Set(own.flatMap((tank) => feedersOf(network, tank)))];
  const others = reach.length < idsOf(network, "tank").length;
  const filled = own.filter((tank) => linesInto(network, tank).length > 0);
  return namedTanks({ reach, others, filled }, titleOf);
}
