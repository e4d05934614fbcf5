// The water behind a tank: which tanks give on to it through lines, down to where, and whether those lines can run.

import { waysUp } from "../network/feeds.ts";
import { type Edge, edgesTo, type Network, runs } from "../network/network.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { LinePart, SeasonInput, TankPart } from "./input.ts";
import type { Tanks } from "./tanks.ts";

/** A tank whose water would come through lines, what of it lies too low [m3], and whether the lines can run. */
export type Behind = { readonly tank: number; readonly under: number; readonly runs: boolean };

export type Supply = {
  readonly behind: readonly Behind[];
  /** Whether a line that can run ends in it; and whether one that cannot does, here or further up. */
  readonly fed: boolean;
  readonly stuck: boolean;
  /** Water in it when it is as full as what fills it makes it [m3]. */
  readonly full: number;
};

/** A line of the network, none where it was left out of the season, and whether it can run. */
type Feed = { readonly line: LinePart | null; readonly runs: boolean };

type Feeds = (edge: Edge) => Feed;

/**
 * What lies behind each tank.
 *
 * @returns by tank, volumes [m3]
 */
export function supplyOf(input: SeasonInput, tanks: Tanks): readonly Supply[] {
  const lines = new Map(input.lines.map((line) => [line.id, line]));
  const feedOf: Feeds = (edge) => {
    const line = lines.get(edge.by) ?? null;
    return { line, runs: runs(edge) && line !== null && canRun(line, tanks) };
  };
  return tanks.parts.map((part, place) => {
    const behind = behindOf(part.id, input.network, feedOf, tanks);
    const ending = edgesTo(input.network, "feeds", part.id).map(feedOf);
    return {
      behind: behind.filter(({ tank }) => tank !== place),
      fed: ending.some((feed) => feed.runs),
      stuck: behind.some((way) => !way.runs),
      full: fullOf(part, ending, input),
    };
  });
}

/** A line runs unless something stops it, or it starts or ends above all the water that its tank can hold. */
function canRun(line: LinePart, tanks: Tanks): boolean {
  if (line.blocked !== null) return false;
  const place = tanks.placeOf.get(line.from);
  if (place === undefined) return true;
  const { floor, vessel } = tanks.parts[place] as TankPart;
  return floor + vessel.height > Math.max(line.startHeight, line.endHeight + (line.lift ?? 0));
}

/** A way down to the tank: the height it has to come over since the last tank [m], and whether it runs. */
type Way = { readonly over: number; readonly runs: boolean };

/** Everything upstream of a tank; one that is reached both ways counts as reached by lines that run. */
function behindOf(id: string, network: Network, feedOf: Feeds, tanks: Tanks): readonly Behind[] {
  const upstream = (onlyRunning: boolean): readonly Behind[] => {
    const along = (edge: Edge, below: Way): Way | null => {
      const way = wayUp(below, edge, feedOf(edge), tanks);
      return onlyRunning && !way.runs ? null : way;
    };
    return waysUp(network, id, { over: -Infinity, runs: true }, along).flatMap(({ node, gathered }) => {
      const tank = tanks.placeOf.get(node);
      const { over, runs: isRunning } = gathered;
      return tank === undefined ? [] : [{ tank, under: underOf(tanks, tank, over), runs: isRunning }];
    });
  };
  const running = upstream(true);
  const known = new Set(running.map(({ tank }) => tank));
  return [...running, ...upstream(false).filter(({ tank }) => !known.has(tank))];
}

/** One line further up; behind a tank the heights begin anew. */
function wayUp(below: Way, { to }: Edge, { line, runs: isRunning }: Feed, tanks: Tanks): Way {
  const before = tanks.placeOf.has(to ?? "") ? -Infinity : below.over;
  // A line that cannot run is asked what it would bring if it did: all that its tank can give.
  const over =
    line && isRunning ? Math.max(before, line.startHeight, line.endHeight + (line.lift ?? 0)) : before;
  return { over, runs: below.runs && isRunning };
}

/** Water of a tank under its outlet, or too low for the way that it would have to take [m3]. */
function underOf(tanks: Tanks, place: number, over: number): number {
  const { vessel, floor, outlet } = tanks.parts[place] as TankPart;
  return volumeAt(vessel, Math.min(Math.max(0, outlet, over - floor), vessel.height));
}

/** A tank that lines alone fill is full where the last float shuts; any other at its brim. */
function fullOf({ id, vessel }: TankPart, ending: readonly Feed[], input: SeasonInput): number {
  const otherwise =
    input.roofs.some(({ drainsTo }) => drainsTo === id) ||
    input.tanks.some(({ overflowsTo }) => overflowsTo === id);
  if (otherwise || ending.length === 0) return vessel.volume;
  const level = ending.reduce((most, { line }) => Math.max(most, line?.shutLevel ?? vessel.height), 0);
  return volumeAt(vessel, Math.min(level, vessel.height));
}
