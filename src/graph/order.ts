// The order of evaluation: everything after what it reads, by rank and then by name; and the cycles that have no order.

import type { GraphNode } from "./nodes.ts";
import { failed } from "./problems.ts";
import type { QuantityId } from "./types.ts";

const byId = (a: GraphNode, b: GraphNode) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

function readersAmong(nodes: readonly GraphNode[]): ReadonlyMap<GraphNode, readonly GraphNode[]> {
  const readers = new Map<GraphNode, GraphNode[]>(nodes.map((node) => [node, []]));
  for (const node of nodes) for (const read of node.reads) readers.get(read)?.push(node);
  return readers;
}

/** Gives ranks to all nodes that no cycle keeps from being answered, and returns those left over. */
function rankNodes(nodes: readonly GraphNode[]): readonly GraphNode[] {
  const readers = readersAmong(nodes);
  const waiting = new Map(nodes.map((node) => [node, node.reads.length]));
  for (const node of nodes) node.rank = 0;
  const free = nodes.filter((node) => node.reads.length === 0);
  for (let next = free.pop(); next; next = free.pop()) {
    waiting.delete(next);
    for (const reader of readers.get(next) ?? []) {
      const left = (waiting.get(reader) ?? 0) - 1;
      reader.rank = Math.max(reader.rank, next.rank + 1);
      waiting.set(reader, left);
      if (left === 0) free.push(reader);
    }
  }
  return [...waiting.keys()].sort(byId);
}

/** The quantities that a quantity reads, seen through models, which no reader knows by name. */
function quantitiesRead(node: GraphNode): readonly GraphNode[] {
  const read = new Set<GraphNode>();
  for (const direct of node.reads) {
    if (direct.role === "model") for (const inner of direct.reads) read.add(inner);
    else read.add(direct);
  }
  return [...read].sort(byId);
}

/** The shortest way from a node along what it reads back to itself; the first by name among equals. */
function shortestCycle(start: GraphNode, among: ReadonlySet<GraphNode>): readonly GraphNode[] | null {
  const cameFrom = new Map<GraphNode, GraphNode>();
  let frontier: GraphNode[] = [start];
  while (frontier.length > 0) {
    const next: GraphNode[] = [];
    for (const node of frontier) {
      for (const read of quantitiesRead(node)) {
        if (read === start) return pathTo(node, cameFrom);
        if (!among.has(read) || cameFrom.has(read)) continue;
        cameFrom.set(read, node);
        next.push(read);
      }
    }
    frontier = next;
  }
  return null;
}

function pathTo(end: GraphNode, cameFrom: ReadonlyMap<GraphNode, GraphNode>): readonly GraphNode[] {
  const path = [end];
  for (let node = cameFrom.get(end); node; node = cameFrom.get(node)) path.unshift(node);
  return path;
}

function reached(start: GraphNode, step: (node: GraphNode) => Iterable<GraphNode>): Set<GraphNode> {
  const seen = new Set<GraphNode>();
  const open = [start];
  for (let node = open.pop(); node; node = open.pop()) {
    for (const next of step(node)) {
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(next);
    }
  }
  return seen;
}

function failTogether(members: Iterable<GraphNode>, path: readonly GraphNode[]): void {
  const names: readonly QuantityId[] = [...path, ...path.slice(0, 1)].map(({ id }) =>
    id.replace("~computed", ""),
  );
  const text = `This goes round in a circle: ${names.join(" reads ")}.`;
  for (const member of members) {
    member.work = { kind: "fixed", result: failed("cycle", member.id, text, { path: names }) };
    member.reads = [];
  }
}

/** Fails every member of every cycle with the shortest closed path from its least name. */
function breakCycles(left: readonly GraphNode[]): void {
  const among = new Set(left);
  const readers = readersAmong(left);
  const done = new Set<GraphNode>();
  const broken: (readonly [members: Set<GraphNode>, path: readonly GraphNode[]])[] = [];
  for (const node of left) {
    if (done.has(node) || node.role === "model") continue;
    const below = reached(node, (at) => at.reads.filter((read) => among.has(read)));
    if (!below.has(node)) continue;
    const above = reached(node, (at) => readers.get(at) ?? []);
    const members = new Set([...below].filter((member) => above.has(member)));
    for (const member of members) done.add(member);
    const path = shortestCycle(node, members);
    if (path) broken.push([members, path]);
  }
  for (const [members, path] of broken) failTogether(members, path);
}

/**
 * Nodes by rank, then by name, with their positions set. Members of a cycle come to stand at rank 0, already failed.
 * @param nodes all nodes, with what each reads
 */
export function ordered(nodes: readonly GraphNode[]): readonly GraphNode[] {
  const left = rankNodes(nodes);
  if (left.length > 0) {
    breakCycles(left);
    rankNodes(nodes);
  }
  const sorted = [...nodes].sort((a, b) => a.rank - b.rank || byId(a, b));
  for (const [position, node] of sorted.entries()) node.position = position;
  return sorted;
}
