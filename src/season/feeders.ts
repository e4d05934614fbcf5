// Which tanks' water reaches which, through lines and by overflow.

import type { Pipes } from "./pipes.ts";
import type { Tanks } from "./tanks.ts";

/**
 * For each tank those whose water reaches it through lines and tees, itself first.
 *
 * @param tanks the tanks [-]
 * @param pipes the lines [-]
 * @returns places by tank [-]
 * @source definition
 */
export function feedersOf(tanks: Tanks, pipes: Pipes): readonly (readonly number[])[] {
  return tanks.parts.map((_, place) => {
    const reached = upstream(place, (node) =>
      pipes.parts.flatMap((_line, i) => (pipes.to[i] === node ? [pipes.from[i] as number] : [])),
    );
    return reached.filter((node) => node < pipes.firstTee);
  });
}

/**
 * For each tank those that fill it in any way, through lines or by overflow, itself first.
 *
 * @param tanks the tanks [-]
 * @param feeders of feedersOf [-]
 * @returns places by tank [-]
 * @source definition
 */
export function spillersOf(
  tanks: Tanks,
  feeders: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  return tanks.parts.map((_, place) =>
    upstream(place, (node) => [
      ...(feeders[node] ?? []),
      ...[...tanks.overflowsTo].flatMap((target, other) => (target === node ? [other] : [])),
    ]),
  );
}

/** Everything that leads to a node, itself first; a loop ends where it began. */
function upstream(start: number, leadingTo: (node: number) => readonly number[]): readonly number[] {
  const reached = [start];
  for (const node of reached) {
    for (const other of leadingTo(node)) if (!reached.includes(other)) reached.push(other);
  }
  return reached;
}
