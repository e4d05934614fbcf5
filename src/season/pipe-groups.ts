// Lines that hang together through tanks and tees: each such group runs by itself, in steps of its own.

import type { PipeLine, PipeNode } from "./pipe-line.ts";

/** The lines, tanks and tees of one group, in their order. */
export type PipeGroup = {
  readonly lines: readonly PipeLine[];
  readonly tanks: readonly PipeNode[];
  readonly tees: readonly PipeNode[];
};

/** The groups of a network, in the order of their first lines; a tank without a line is in none. */
export function groupsOf(lines: readonly PipeLine[]): readonly PipeGroup[] {
  const groupOf = new Map<PipeNode, Set<PipeNode>>();
  for (const { from, to } of lines) {
    const merged = new Set(to ? [from, to] : [from]);
    for (const node of [...merged]) for (const other of groupOf.get(node) ?? []) merged.add(other);
    for (const node of merged) groupOf.set(node, merged);
  }
  const groups = new Map<Set<PipeNode>, PipeLine[]>();
  for (const line of lines) {
    const nodes = groupOf.get(line.from) as Set<PipeNode>;
    groups.set(nodes, [...(groups.get(nodes) ?? []), line]);
  }
  return [...groups].map(([nodes, its]) => {
    const sorted = [...nodes].sort((a, b) => a.place - b.place);
    return {
      lines: its,
      tanks: sorted.filter(({ isTee }) => !isTee),
      tees: sorted.filter(({ isTee }) => isTee),
    };
  });
}
