// How far a quantity has moved from one set of results to another.

import type { Worksheet } from "../document/worksheet.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import { type Graph, type GraphNode, nodeOf } from "./nodes.ts";
import type { Results } from "./results.ts";
import { entryOfNode, shownOf } from "./shown.ts";
import type { QuantityId, Result, Value } from "./types.ts";
import { shownMeasure } from "./unit-of.ts";

/** Up or down by `text`; or it was `text`, where a difference means nothing; `was` is what was shown before, either way. */
export type Movement = {
  readonly sign: "up" | "down" | "was";
  readonly text: string;
  readonly was: string;
};

const valueIn = (result: Result | undefined): Value => (result?.state === "ready" ? result.value : null);

/** What the reader saw before: of an answer that was still waited for, the last one. */
function seenIn(result: Result | undefined): Value {
  return result?.state === "pending" ? result.last : valueIn(result);
}

function numberMoved(
  worksheet: Worksheet,
  node: GraphNode,
  from: number,
  to: number,
  options: ShowOptions,
): Movement | null {
  const measure = shownMeasure(node);
  const was = shownOf(worksheet, node, from, options);
  if (was === shownOf(worksheet, node, to, options)) return null;
  if (!measure || node.dimension?.point || measure === "year") return { sign: "was", text: was, was };
  const unit = entryOfNode(worksheet, node)?.unit;
  const text = showQuantity(Math.abs(to - from), measure, unit ? { ...options, unit } : options);
  return { sign: to > from ? "up" : "down", text, was };
}

/**
 * How far a quantity has moved; null where it has not, where a reader would see no difference, or where it had or has
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
  if (!node || old === now) return null;
  const [from, to] = [seenIn(old), valueIn(now)];
  if (typeof from === "number" && typeof to === "number")
    return numberMoved(worksheet, node, from, to, options);
  if (typeof from !== "string" || typeof to !== "string" || from === to) return null;
  const was = shownOf(worksheet, node, from, options);
  return { sign: "was", text: was, was };
}
