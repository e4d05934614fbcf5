// Which bed is watered by what and from which tank, and which tanks stand behind it.

import { fedBy, fillersOf, meantToFeed } from "./feeds.ts";
import { goesTo } from "./gone.ts";
import { edgesFrom, edgesTo, type Network, runs } from "./network.ts";

/** What waters a bed, in the order in which it is tried. */
export const waterersOf = (network: Network, bed: string): readonly string[] =>
  edgesTo(network, "waters", bed)
    .filter(runs)
    .map(({ from }) => from);

/** Beds that a hose or can waters. */
export const bedsOf = (network: Network, waterer: string): readonly string[] =>
  edgesFrom(network, "waters", waterer)
    .filter(runs)
    .flatMap(({ to }) => to ?? []);

/** The tank that a hose, can or other draw takes from; null where it has none. */
export const tankOf = (network: Network, taker: string): string | null =>
  edgesTo(network, "draws", taker).find(runs)?.from ?? null;

/** Hoses, cans and other draws that take from a tank. */
export const takersOf = (network: Network, tank: string): readonly string[] =>
  edgesFrom(network, "draws", tank)
    .filter(runs)
    .flatMap(({ to }) => to ?? []);

/** The tank that a bed is watered from before any other; null where it has none. */
export function firstTankOf(network: Network, bed: string): string | null {
  for (const waterer of waterersOf(network, bed)) {
    const tank = tankOf(network, waterer);
    if (tank !== null) return tank;
  }
  return null;
}

/** Beds watered straight from a tank, by any of their waterers, sorted by id. */
export function bedsStraightFrom(network: Network, tank: string): readonly string[] {
  const beds = takersOf(network, tank).flatMap((taker) => bedsOf(network, taker));
  return [...new Set(beds)].sort();
}

const bedsOfTanks = (network: Network, tanks: readonly string[]): readonly string[] =>
  [...new Set(tanks.flatMap((id) => bedsStraightFrom(network, id)))].sort();

/** Beds that a tank's water comes to, straight or through lines that run, sorted by id. */
export const bedsServed = (network: Network, tank: string): readonly string[] =>
  bedsOfTanks(network, fedBy(network, tank));

/** Beds that it would come to if every line ran, sorted by id. */
export const bedsMeant = (network: Network, tank: string): readonly string[] =>
  bedsOfTanks(network, meantToFeed(network, tank));

/**
 * Tanks whose overflow takes water away from whoever draws from a tank: of those that fill it, the ones that run over into a
 * tank which neither fills it nor serves, in any way, a bed that it serves.
 */
export function passingBy(network: Network, tank: string): readonly string[] {
  const fillers = fillersOf(network, tank);
  const served = bedsStraightFrom(network, tank).flatMap((bed) =>
    waterersOf(network, bed).flatMap((waterer) => tankOf(network, waterer) ?? []),
  );
  const ofUse = new Set([...fillers, ...served.flatMap((other) => fillersOf(network, other))]);
  return fillers.filter((id) => {
    const into = goesTo(network, "spills", id);
    return into !== null && !ofUse.has(into);
  });
}
