// Lines that hang together through tanks and tees: each such group runs by itself, in steps of its own.

/** Places of the lines, tanks and tees (counted from the first tee) of one group, rising. */
export type PipeGroup = {
  readonly lines: Int32Array;
  readonly tanks: Int32Array;
  readonly tees: Int32Array;
};

/**
 * The groups of a network, in the order of their first lines; a tank without a line is in none.
 *
 * @param from node at each line's start: tanks, then tees [-]
 * @param to node at its end, -1 for a free end [-]
 * @param firstTee first node that is a tee [-]
 */
export function groupsOf(from: Int32Array, to: Int32Array, firstTee: number): readonly PipeGroup[] {
  const groupOf = new Map<number, Set<number>>();
  for (let i = 0; i < from.length; i++) {
    const [a, b] = [from[i] as number, to[i] as number];
    const merged = new Set([a, ...(b < 0 ? [] : [b])]);
    for (const node of [...merged]) for (const other of groupOf.get(node) ?? []) merged.add(other);
    for (const node of merged) groupOf.set(node, merged);
  }
  const groups = new Map<Set<number>, number[]>();
  for (let i = 0; i < from.length; i++) {
    const nodes = groupOf.get(from[i] as number) as Set<number>;
    groups.set(nodes, [...(groups.get(nodes) ?? []), i]);
  }
  return [...groups].map(([nodes, lines]) => {
    const sorted = [...nodes].sort((a, b) => a - b);
    return {
      lines: Int32Array.from(lines),
      tanks: Int32Array.from(sorted.filter((node) => node < firstTee)),
      tees: Int32Array.from(sorted.filter((node) => node >= firstTee).map((node) => node - firstTee)),
    };
  });
}
