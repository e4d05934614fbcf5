// From left to right as water flows: a tank stands right of every tank that feeds it.

import { stepsDown } from "../network/feeds.ts";
import { type Edge, networkOf } from "../network/network.ts";
import type { Place } from "./place.ts";

/** Ids of the tanks and tees in the order in which they stand on paper. */
export function waterOrder(place: Place): readonly string[] {
  const nodes = [
    ...place.tanks.map(({ id, ground, stand }) => ({ id, floor: ground + stand, role: "tank" as const })),
    ...place.tees.map(({ id, height }) => ({ id, floor: height, role: "joint" as const })),
  ];
  const tied = (kind: Edge["kind"], by: string, from: string | null, to: string | null): readonly Edge[] =>
    from === null || to === null ? [] : [{ kind, by, from, to, stopped: null }];
  const edges = [
    ...place.lines.flatMap(({ id, from, to }) => tied("feeds", id, from, to)),
    ...place.tanks.flatMap(({ id, overflowsTo }) => tied("spills", id, id, overflowsTo)),
  ];
  // As they are drawn, whether they run or not.
  const steps = stepsDown(networkOf(nodes, edges));
  const stepOf = (id: string): number => steps.get(id) ?? 0;
  return [...nodes]
    .sort((a, b) => stepOf(a.id) - stepOf(b.id) || b.floor - a.floor || (a.id < b.id ? -1 : 1))
    .map(({ id }) => id);
}
