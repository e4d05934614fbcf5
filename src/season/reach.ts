// The water behind a tank: which tanks give on to it through lines, down to where, and whether those lines can run.

import { volumeAt } from "../physics/vessel.ts";
import type { LinePart, SeasonInput, TankPart } from "./input.ts";
import type { Tanks } from "./tanks.ts";

/** A tank whose water would come through lines, what of it lies too low [m3], and whether the lines can run. */
export type Behind = { readonly tank: number; readonly under: number; readonly runs: boolean };

export type Reach = {
  readonly behind: readonly Behind[];
  /** Whether a line that can run ends in it; and whether one that cannot does, here or further up. */
  readonly fed: boolean;
  readonly stuck: boolean;
  /** Water in it when it is as full as what fills it makes it [m3]. */
  readonly full: number;
};

type Lines = readonly LinePart[];

/**
 * What lies behind each tank.
 *
 * @param input its lines and tees, units at the type's fields
 * @param tanks the tanks [-]
 * @returns by tank, volumes [m3]
 * @source definition
 */
export function reachOf(input: SeasonInput, tanks: Tanks): readonly Reach[] {
  const lines = [...input.lines].sort((a, b) => (a.id < b.id ? -1 : 1));
  return tanks.parts.map((part, place) => {
    const behind = behindOf(part.id, lines, tanks);
    const ending = lines.filter(({ to }) => to === part.id);
    return {
      behind: behind.filter(({ tank }) => tank !== place),
      fed: ending.some((line) => canRun(line, tanks)),
      stuck: behind.some(({ runs }) => !runs),
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
  return floor + vessel.height > Math.max(line.startHeight, line.endHeight);
}

/** A way down to the tank: the node it starts from, the height it has to come over since the last tank [m], and whether it runs. */
type Way = { readonly node: string; readonly over: number; readonly runs: boolean };

/** Everything upstream of a tank; one that is reached both ways counts as reached by lines that run. */
function behindOf(id: string, lines: Lines, tanks: Tanks): readonly Behind[] {
  const running = upstream(id, lines, tanks, true);
  const known = new Set(running.map(({ tank }) => tank));
  return [...running, ...upstream(id, lines, tanks, false).filter(({ tank }) => !known.has(tank))];
}

/** The same through lines that run alone, or through all. */
function upstream(id: string, lines: Lines, tanks: Tanks, onlyRunning: boolean): readonly Behind[] {
  const seen = new Set([id]);
  const ways: Way[] = [{ node: id, over: -Infinity, runs: true }];
  for (const way of ways) {
    for (const line of lines) {
      const next = line.to === way.node && !seen.has(line.from) ? wayUp(way, line, tanks) : null;
      if (!next || (onlyRunning && !next.runs)) continue;
      seen.add(next.node);
      ways.push(next);
    }
  }
  return ways.slice(1).flatMap(({ node, over, runs }) => {
    const place = tanks.placeOf.get(node);
    return place === undefined ? [] : [{ tank: place, under: underOf(tanks, place, over), runs }];
  });
}

/** One line further up; behind a tank the heights begin anew. */
function wayUp(way: Way, line: LinePart, tanks: Tanks): Way {
  const runs = canRun(line, tanks);
  const before = tanks.placeOf.has(way.node) ? -Infinity : way.over;
  const over = Math.max(before, line.startHeight, runs ? line.endHeight : -Infinity);
  return { node: line.from, over, runs: way.runs && runs };
}

/** Water of a tank under its outlet, or too low for the way that it would have to take [m3]. */
function underOf(tanks: Tanks, place: number, over: number): number {
  const { vessel, floor, outlet } = tanks.parts[place] as TankPart;
  return volumeAt(vessel, Math.min(Math.max(0, outlet, over - floor), vessel.height));
}

/** A tank that lines alone fill is full where the last float shuts; any other at its brim. */
function fullOf({ id, vessel }: TankPart, ending: Lines, input: SeasonInput): number {
  const otherwise =
    input.roofs.some(({ drainsTo }) => drainsTo === id) ||
    input.tanks.some(({ overflowsTo }) => overflowsTo === id);
  if (otherwise || ending.length === 0) return vessel.volume;
  const level = ending.reduce((most, { shutLevel }) => Math.max(most, shutLevel ?? vessel.height), 0);
  return volumeAt(vessel, Math.min(level, vessel.height));
}
