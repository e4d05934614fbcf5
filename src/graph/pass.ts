// The state of one evaluation: numbers and states by position, so that formulas run over plain arrays.

import type { Card } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { ShowOptions } from "../units/show.ts";
import type { Graph, GraphNode } from "./network.ts";
import { failed, upstreamText } from "./problems.ts";
import { sameResult } from "./same.ts";
import type { Outputs, Request, Result, Settled } from "./types.ts";

export const READY = 0;
export const NONE = 1;
export const PENDING = 2;
export const FAILED = 3;

/** What a model asked for the last time it was looked at. */
export type Asked = {
  readonly request: Request | null;
  readonly answer: Outputs | undefined;
  readonly recordKey: string | null;
  readonly record: DailyRecord | null;
};

export type Pass = {
  readonly graph: Graph;
  readonly cards: readonly Card[];
  readonly show: ShowOptions;
  readonly settled: Settled;
  /** Numbers by position; NaN where there is none. */
  readonly values: Float64Array;
  readonly states: Uint8Array;
  /** By position; until a node is settled in this pass, what it was before. */
  readonly results: (Result | undefined)[];
  readonly asked: Map<number, Asked>;
};

const CODES = { ready: READY, none: NONE, pending: PENDING, failed: FAILED } as const;

/** Takes a result in; the old object stays where it says the same. Returns whether anything changed. */
export function settle(pass: Pass, position: number, result: Result): boolean {
  const old = pass.results[position];
  const same = old !== undefined && sameResult(old, result);
  const kept = same ? old : result;
  pass.results[position] = kept;
  pass.states[position] = CODES[kept.state];
  pass.values[position] = kept.state === "ready" && typeof kept.value === "number" ? kept.value : Number.NaN;
  return !same;
}

/** The result at a position. */
export function resultAt(pass: Pass, position: number): Result {
  return pass.results[position] ?? failed("missing", "", "There is no value.");
}

/** The value last shown for a node: G8 keeps it in sight while the new one is pending. */
export function pendingAt(pass: Pass, node: GraphNode): Result {
  const old = pass.results[node.position];
  if (old?.state === "pending") return old;
  return { state: "pending", last: old?.state === "ready" ? old.value : null };
}

/** The quantity at which the trouble of a failed node began. */
function causeOf(node: GraphNode, result: Result): string {
  if (result.state !== "failed") return node.id;
  if (result.problem.code === "upstream") return result.problem.cause ?? node.id;
  return node.role === "model" ? (result.problem.path?.[0] ?? node.id) : node.id;
}

/** The upstream failure of a node, from the first cause among those of the failed nodes it reads. */
export function upstreamAt(pass: Pass, node: GraphNode, read: Iterable<number>): Result {
  const { index, nodes } = pass.graph;
  let first = nodes.length;
  for (const position of read) {
    const source = nodes[position];
    if (!source || pass.states[position] !== FAILED) continue;
    first = Math.min(first, index.get(causeOf(source, resultAt(pass, position))) ?? position);
  }
  const cause = nodes[first];
  const result = resultAt(pass, first);
  if (!cause || result.state !== "failed")
    return failed("upstream", node.id, "What it reads could not be worked out.");
  const text = upstreamText(cause.row?.label ?? null, result.problem);
  return failed("upstream", node.id, text, { cause: cause.id });
}

/**
 * Why a node cannot run on what it reads: failed before pending before none, each the first by position.
 * @param read positions, rising
 * @returns null where all are ready
 */
export function blockedBy(pass: Pass, node: GraphNode, read: ArrayLike<number>): Result | null {
  let worst = READY;
  let worstAt = -1;
  for (let at = 0; at < read.length; at++) {
    const position = read[at] ?? 0;
    const state = pass.states[position] ?? READY;
    if (state <= worst) continue;
    worst = state;
    worstAt = position;
  }
  if (worst === READY) return null;
  if (worst === FAILED) return upstreamAt(pass, node, Array.from(read));
  return worst === PENDING ? pendingAt(pass, node) : resultAt(pass, worstAt);
}
