// What stands behind some quantities: everything that they read, directly or through others.

import type { Graph } from "./nodes.ts";
import type { QuantityId } from "./types.ts";

/** Marks by position: 1 for each of the quantities and for all that they read. A name that is not there marks nothing. */
export function ancestorsOf(graph: Graph, ids: readonly QuantityId[]): Uint8Array {
  const marks = new Uint8Array(graph.nodes.length);
  for (const id of ids) {
    const position = graph.index.get(id);
    if (position !== undefined) marks[position] = 1;
  }
  // Every node stands after what it reads.
  for (let position = marks.length - 1; position >= 0; position--) {
    if (marks[position] !== 1) continue;
    for (const read of graph.nodes[position]?.reads ?? []) marks[read.position] = 1;
  }
  return marks;
}
