// The state of one evaluation: numbers and states by position, so that formulas run over plain arrays.

import type { Card } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { ShowOptions } from "../units/show.ts";
import type { Graph, GraphNode } from "./nodes.ts";
import { failed, upstreamText } from "./problems.ts";
import { sameResult } from "./same.ts";
import type { Outputs, Request, Result, Settled } from "./types.ts";

export const READY = 0;
const NONE = 1;
export const PENDING = 2;
export const FAILED = 3;

/** What a model asked for the last time it was looked at. */
export type AskedAnswer = {
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
  /** Whether numbers and states are those of the pass before until a node is settled. */
  readonly continues: boolean;
  /** Numbers by position; NaN where there is none. */
  readonly values: Float64Array;
  readonly states: Uint8Array;
  /** By position; until a node is settled in this pass, what it was before. */
  readonly results: (Result | undefined)[];
  readonly asked: Map<number, AskedAnswer>;
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

/**
 * A ready result, made by a constructor because there are thousands in a pass: the engine moves an object literal that
 * outlives a few passes to its old heap for good, which makes every later pass several times slower.
 */
class ComputedNumber {
  declare readonly value: number;
  readonly state = "ready";
  readonly origin = "computed";
  constructor(value: number) {
    this.value = value;
  }
}

/** Whether a node was this computed number before. */
function isUnchanged(pass: Pass, position: number, value: number): boolean {
  if (pass.continues) return pass.states[position] === READY && Object.is(pass.values[position], value);
  const old = pass.results[position];
  return old?.state === "ready" && old.origin === "computed" && Object.is(old.value, value);
}

/** Takes a plain formula's number in; the old object stays where the number is the same to the last bit. */
export function settleNumber(pass: Pass, position: number, value: number): boolean {
  const isSame = isUnchanged(pass, position, value);
  pass.states[position] = READY;
  pass.values[position] = value;
  if (isSame) return false;
  if (!Number.isFinite(value)) return settle(pass, position, notFiniteAt(pass, position));
  pass.results[position] = new ComputedNumber(value);
  return true;
}

/** A number that came to no finite one. */
export function notFiniteAt(pass: Pass, position: number): Result {
  return failed("not_finite", pass.graph.nodes[position]?.id ?? "", "This comes to no finite number.");
}

/** Whether all that the plain formula at a position needs is ready. */
export function hasAll({ graph, states }: Pass, position: number): boolean {
  const end = graph.needStarts[position + 1] ?? 0;
  for (let at = graph.needStarts[position] ?? 0; at < end; at++) {
    if (states[graph.needs[at] ?? 0] !== READY) return false;
  }
  return true;
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
