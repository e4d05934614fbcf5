// From left to right as water flows: a tank stands right of every tank that feeds it.

import type { Place } from "./place.ts";

type Node = { readonly id: string; readonly floor: number };

/** Ids of the tanks and tees in the order in which they stand on paper. */
export function waterOrder(place: Place): readonly string[] {
  const nodes: readonly Node[] = [
    ...place.tanks.map((tank) => ({ id: tank.id, floor: tank.ground + tank.stand })),
    ...place.tees.map((tee) => ({ id: tee.id, floor: tee.height })),
  ];
  const known = new Set(nodes.map((node) => node.id));
  const feeds = [
    ...place.lines.map((line) => [line.from, line.to] as const),
    ...place.tanks.map((tank) => [tank.id, tank.overflowsTo] as const),
  ].flatMap(([from, to]) =>
    from !== null && to !== null && from !== to && known.has(from) && known.has(to)
      ? [[from, to] as const]
      : [],
  );
  const rank = new Map(nodes.map((node) => [node.id, 0]));
  // As many rounds as there are nodes settle every chain; a loop of tanks simply stops rising then.
  for (let round = 1; round < nodes.length; round++) {
    for (const [from, to] of feeds) {
      const least = Math.min(nodes.length, (rank.get(from) ?? 0) + 1);
      if ((rank.get(to) ?? 0) < least) rank.set(to, least);
    }
  }
  return [...nodes]
    .sort(
      (a, b) => (rank.get(a.id) ?? 0) - (rank.get(b.id) ?? 0) || b.floor - a.floor || (a.id < b.id ? -1 : 1),
    )
    .map((node) => node.id);
}
