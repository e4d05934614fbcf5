// Which answers a turned number can move, out of those that matter: what its curve may show; and which numbers that matter
// can move an answer: what may be worked back from it.

import { ancestorsOf } from "../graph/ancestors.ts";
import type { Graph } from "../graph/nodes.ts";
import { isMet } from "../graph/row-when.ts";
import type { NumberGiven, QuantityId, Result, Row } from "../graph/types.ts";
import { OF_THE_PLACE } from "../telling/answer-names.ts";

/** Of the part itself. */
const MOST_OWN = 8;

type Results = { readonly get: (id: QuantityId) => Result | undefined };

const isAnswer = (row: Row): boolean =>
  (row.row === "output" || row.row === "formula" || row.row === "gather") &&
  row.hidden !== true &&
  row.minor !== true &&
  row.measure !== "text" &&
  row.measure !== "series" &&
  row.measure !== "year";

/**
 * The answers that the number behind `id` can move: of the place, then of its own part.
 *
 * @param rows of its own part
 * @param first an answer that is offered too where it can be moved, before all others
 */
export function movedBy(
  graph: Graph,
  id: QuantityId,
  rows: readonly Row[],
  first: QuantityId,
): readonly QuantityId[] {
  const card = id.split(".")[0] ?? "";
  const own = rows.filter(isAnswer).map(({ name }) => `${card}.${name}`);
  const at = graph.index.get(id);
  const isMoved = (answer: QuantityId): boolean =>
    at !== undefined && answer !== id && ancestorsOf(graph, [answer])[at] === 1;
  const place = [...new Set([first, ...OF_THE_PLACE])].filter(isMoved);
  const rest = own.filter((answer) => !place.includes(answer) && isMoved(answer));
  return [...place, ...rest.slice(0, MOST_OWN)];
}

const isTurnedOften = (row: Row): row is NumberGiven =>
  row.row === "given" && row.usual !== undefined && row.minor !== true && row.hidden !== true;

/** The numbers that are turned often and can move an answer, in the order of the cards; not those of sky and season. */
export function moversOf(
  { graph, results }: { readonly graph: Graph; readonly results: Results },
  cards: readonly { readonly id: string; readonly kind: string }[],
  answer: QuantityId,
): readonly QuantityId[] {
  const behind = ancestorsOf(graph, [answer]);
  return cards.flatMap(({ id, kind }) => {
    const of = graph.kinds[kind];
    const rows = of && !of.single ? of.rows.filter(isTurnedOften) : [];
    return rows
      .filter(({ when }) => isMet(when, when && results.get(`${id}.${when.row}`)))
      .map(({ name }) => `${id}.${name}`)
      .filter((number) => behind[graph.index.get(number) ?? -1] === 1);
  });
}
