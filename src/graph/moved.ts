// What a quantity was before it moved, from one set of results to another.

import type { Worksheet } from "../document/worksheet.ts";
import type { ShowOptions } from "../units/show.ts";
import { type Graph, type GraphNode, nodeOf } from "./nodes.ts";
import type { Results } from "./results.ts";
import { shownOf } from "./shown.ts";
import type { QuantityId, Result, Value } from "./types.ts";

/** What was shown before, where a reader sees a difference. */
export type Movement = { readonly was: string };

const valueIn = (result: Result | undefined): Value => (result?.state === "ready" ? result.value : null);

/** What the reader saw before: of an answer that was still waited for, the last one. */
function seenIn(result: Result | undefined): Value {
  return result?.state === "pending" ? result.last : valueIn(result);
}

/** Whether the row that it names the most of is nought: then the first of many noughts stands there. */
export function namesNothing(of: Pick<Results, "get">, { card, row }: GraphNode): boolean {
  const counted = row?.mostOf;
  return counted !== undefined && seenIn(of.get(`${card}.${counted}`)) === 0;
}

/**
 * What a quantity was before it moved; null where it has not, where a reader would see no difference, or where it had or has
 * no value.
 * @param before results of an earlier state, also of another graph
 */
export function movement(
  graph: Graph,
  worksheet: Worksheet,
  before: Pick<Results, "get">,
  after: Results,
  id: QuantityId,
  options: ShowOptions,
): Movement | null {
  const node = nodeOf(graph, id);
  const old = before.get(id);
  const now = after.get(id);
  if (!node || old === now || namesNothing(before, node) || namesNothing(after, node)) return null;
  // While a new one is waited for the last one stands there, and goes on saying what it was before.
  const [from, to] = [seenIn(old), seenIn(now)];
  if (from === null || typeof from === "object" || typeof from !== typeof to) return null;
  const was = shownOf(worksheet, node, from, options);
  return was === shownOf(worksheet, node, to, options) ? null : { was };
}
