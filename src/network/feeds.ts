// Where water comes from and goes to: through lines that run and their joints, and by overflow.

import { type Edge, edgesFrom, edgesTo, idsOf, type Network, roleOf, runs } from "./network.ts";

/** Everything reached from a part step by step, itself first; a ring ends where it began. */
function followed(start: string, next: (id: string) => readonly string[]): readonly string[] {
  const reached = [start];
  for (const id of reached) for (const other of next(id)) if (!reached.includes(other)) reached.push(other);
  return reached;
}

const origins = (edges: readonly Edge[]): readonly string[] => edges.filter(runs).map(({ from }) => from);
const ends = (edges: readonly Edge[]): readonly string[] =>
  edges.flatMap(({ to }) => (to === null ? [] : [to]));

const tanksAmong = (network: Network, ids: readonly string[]): readonly string[] =>
  ids.filter((id) => roleOf(network, id) === "tank");

/** Tanks whose water comes to a tank through lines that run and their joints, itself first. */
export function feedersOf(network: Network, tank: string): readonly string[] {
  return tanksAmong(
    network,
    followed(tank, (id) => origins(edgesTo(network, "feeds", id))),
  );
}

/** Tanks whose water comes to a tank in any way, through lines or by overflow, itself first. */
export function fillersOf(network: Network, tank: string): readonly string[] {
  return tanksAmong(
    network,
    followed(tank, (id) => [
      ...origins(edgesTo(network, "feeds", id)),
      ...origins(edgesTo(network, "spills", id)),
    ]),
  );
}

/** Whether rain of any roof is to come to a tank, by lines and overflow too, whether they run or not. */
export const isRoofed = (network: Network, tank: string): boolean =>
  followed(tank, (id) =>
    [...edgesTo(network, "feeds", id), ...edgesTo(network, "spills", id)].map(({ from }) => from),
  ).some((id) => edgesTo(network, "catches", id).length > 0);

/** Tanks that a tank's water comes to through lines that run and their joints, itself first. */
export function fedBy(network: Network, tank: string): readonly string[] {
  return tanksAmong(
    network,
    followed(tank, (id) => ends(edgesFrom(network, "feeds", id).filter(runs))),
  );
}

/** The same as if every line ran. */
export function meantToFeed(network: Network, tank: string): readonly string[] {
  return tanksAmong(
    network,
    followed(tank, (id) => ends(edgesFrom(network, "feeds", id))),
  );
}

/** A part above another by lines, and what was gathered on the way up to it. */
export type WayUp<Gathered> = { readonly node: string; readonly gathered: Gathered };

/**
 * Parts above another by lines, each once, the nearest first.
 *
 * @param gathered at the start
 * @param along what is gathered past a line, from what was below it; null: that way is not gone
 */
export function waysUp<Gathered>(
  network: Network,
  start: string,
  gathered: Gathered,
  along: (line: Edge, below: Gathered) => Gathered | null,
): readonly WayUp<Gathered>[] {
  const seen = new Set([start]);
  const ways: WayUp<Gathered>[] = [{ node: start, gathered }];
  for (const way of ways) {
    for (const line of edgesTo(network, "feeds", way.node)) {
      const above = seen.has(line.from) ? null : along(line, way.gathered);
      if (above === null) continue;
      seen.add(line.from);
      ways.push({ node: line.from, gathered: above });
    }
  }
  return ways.slice(1);
}

/** Lines that run from a tank or joint, and those from there that never carry anything. */
export const linesOutOf = (network: Network, id: string): readonly Edge[] =>
  edgesFrom(network, "feeds", id).filter(runs);

export const stoppedOutOf = (network: Network, id: string): readonly Edge[] =>
  edgesFrom(network, "feeds", id).filter((edge) => !runs(edge));

/** Lines that run into a tank or joint. */
export const linesInto = (network: Network, id: string): readonly Edge[] =>
  edgesTo(network, "feeds", id).filter(runs);

/** Lines with both ends linked that start or end at a tank or joint, whether they run or not. */
export const linesMeetingAt = (network: Network, id: string): readonly Edge[] =>
  [...edgesTo(network, "feeds", id), ...edgesFrom(network, "feeds", id)].filter(({ to }) => to !== null);

/** The tank or joint that a line ends in, if it runs. */
export const feedsTank = (network: Network, line: string): string | null =>
  network.edges.find((edge) => edge.kind === "feeds" && edge.by === line && runs(edge))?.to ?? null;

/** Whether any roof, line or overflow of the place is to bring water to a tank, whether it runs or not. */
export const isFilled = (network: Network, tank: string): boolean =>
  (["catches", "feeds", "spills"] as const).some((kind) => edgesTo(network, kind, tank).length > 0);

/** Where a tank's overflow ends: on the ground, in another tank, or round in a circle to itself. */
export function overflowEnd(network: Network, tank: string): "ground" | "tank" | "loop" {
  let at = edgesFrom(network, "spills", tank)[0]?.to ?? null;
  if (at === null) return "ground";
  const seen = new Set<string>();
  while (at !== null && !seen.has(at)) {
    if (at === tank) return "loop";
    seen.add(at);
    at = edgesFrom(network, "spills", at)[0]?.to ?? null;
  }
  return "tank";
}

/** How many steps by line or overflow each tank and joint stands behind the first, by its id: the order of the water. */
export function stepsDown(network: Network): ReadonlyMap<string, number> {
  const steps = new Map([...idsOf(network, "tank"), ...idsOf(network, "joint")].map((id) => [id, 0]));
  const flows = network.edges.filter(
    ({ kind, from, to }) => (kind === "feeds" || kind === "spills") && from !== to,
  );
  // As many rounds as there are nodes settle every chain; a ring of tanks simply stops rising then.
  for (let round = 1; round < steps.size; round++) {
    for (const { from, to } of flows) {
      if (to === null) continue;
      const least = Math.min(steps.size, (steps.get(from) ?? 0) + 1);
      if ((steps.get(to) ?? 0) < least) steps.set(to, least);
    }
  }
  return steps;
}
