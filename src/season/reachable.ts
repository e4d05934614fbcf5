// What of a tank's water can ever leave it: the one place where that is worked out, for its card and for the season.

import { stoppedTakersOf, takersOf } from "../network/beds.ts";
import { linesOutOf, stoppedOutOf } from "../network/feeds.ts";
import type { Edge, Network } from "../network/network.ts";
import { type Vessel, volumeAt } from "../physics/vessel.ts";

type ReachTank = {
  readonly id: string;
  readonly vessel: Vessel;
  /** Height of its floor above the datum, and depth of its outlet above that [m]. */
  readonly floor: number;
  readonly outlet: number;
};

export type ReachAsked = {
  readonly network: Network;
  readonly tanks: readonly ReachTank[];
  /** Heights over which each line takes water, and at which it ends [m]. */
  readonly lines: readonly {
    readonly id: string;
    readonly startHeight: number;
    readonly endHeight: number;
    /** By how much less drop there is than the heights say; left out: 0. */
    readonly lift?: number;
  }[];
  /** Depth under which each pump's hose draws nothing [m]. */
  readonly pumps: readonly { readonly id: string; readonly lowestWater: number }[];
};

export type Reach = {
  /** Depth under which nothing leaves it [m]. */
  readonly lowest: number;
  /** From full down to there [m3]. */
  readonly reachable: number;
};

/**
 * What of each tank's water can be reached, by id: that above the highest of its outlet, its pumps' lowest water and, where
 * it leaves only by lines, the lowest at which one that runs still takes it on.
 *
 * @returns depths [m] and volumes [m3]; no water where none of the lines and pumps by which alone it could leave ever runs
 */
export function reachOf(asked: ReachAsked): ReadonlyMap<string, Reach> {
  return new Map(
    asked.tanks.map((tank) => {
      const lowest = lowestOf(asked, tank, new Set([tank.id]));
      return [tank.id, { lowest, reachable: tank.vessel.volume - volumeAt(tank.vessel, lowest) }];
    }),
  );
}

function lowestOf(asked: ReachAsked, tank: ReachTank, seen: ReadonlySet<string>): number {
  const { network } = asked;
  const takers = takersOf(network, tank.id);
  const pumps = asked.pumps.filter(({ id }) => takers.includes(id)).map(({ lowestWater }) => lowestWater);
  const lines = linesOutOf(network, tank.id);
  const stopped = stoppedOutOf(network, tank.id).length + stoppedTakersOf(network, tank.id).length;
  const onlyStopped = takers.length === 0 && lines.length === 0 && stopped > 0;
  if (onlyStopped) return tank.vessel.height;
  const stops = takers.length > 0 ? [] : lines.map((line) => stopOf(asked, line, seen) - tank.floor);
  const lows = pumps.length > 0 ? pumps : stops;
  const lowest = lows.length > 0 ? Math.min(...lows) : 0;
  return Math.min(Math.max(0, tank.outlet, lowest), tank.vessel.height);
}

/** Height at which a line stops taking water on [m]. */
function stopOf(asked: ReachAsked, edge: Edge, seen: ReadonlySet<string>): number {
  const line = asked.lines.find(({ id }) => id === edge.by);
  if (!line) return Infinity;
  return Math.max(line.startHeight, beyond(asked, edge, line.endHeight, seen) + (line.lift ?? 0));
}

/** Height under which water no longer runs out at the far end of a line, or behind the joint there [m]. */
function beyond(asked: ReachAsked, { to }: Edge, end: number, seen: ReadonlySet<string>): number {
  if (to === null || seen.has(to)) return end;
  const further = new Set([...seen, to]);
  const tank = asked.tanks.find(({ id }) => id === to);
  if (tank) return Math.max(end, tank.floor + lowestOf(asked, tank, further));
  const ends = linesOutOf(asked.network, to).map((edge) => {
    const line = asked.lines.find(({ id }) => id === edge.by);
    return line ? Math.max(line.startHeight, beyond(asked, edge, line.endHeight, further)) : Infinity;
  });
  return ends.length > 0 ? Math.min(...ends) : Infinity;
}
