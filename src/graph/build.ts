// A worksheet and the card kinds to a graph of quantities. Pure, and never throws: what is wrong becomes problems.

import type { Worksheet } from "../document/worksheet.ts";
import { bindNodes, bindStep } from "./bind-nodes.ts";
import { type CardPlan, type Draft, draftOf } from "./card-plans.ts";
import { isWrong, stepOf } from "./formula-work.ts";
import { resolveName } from "./names.ts";
import { addNodeWork, addShells } from "./node-work.ts";
import { type CardCaution, type EntryPlace, type Graph, type GraphNode, readsOf } from "./nodes.ts";
import { ordered } from "./order.ts";
import { sameShape } from "./shape.ts";
import type { CardKinds, Caution, Problem } from "./types.ts";
import { siUnitOfNode } from "./unit-of.ts";

export type { Graph } from "./nodes.ts";

function readersOf(nodes: readonly GraphNode[]): Pick<Graph, "starts" | "readers"> {
  const starts = new Int32Array(nodes.length + 1);
  for (const node of nodes)
    for (const { position } of node.reads) starts[position + 1] = (starts[position + 1] ?? 0) + 1;
  for (let at = 1; at <= nodes.length; at++) starts[at] = (starts[at] ?? 0) + (starts[at - 1] ?? 0);
  const filled = starts.slice();
  const readers = new Int32Array(starts[nodes.length] ?? 0);
  for (const node of nodes) {
    for (const { position } of node.reads) {
      const slot = filled[position] ?? 0;
      readers[slot] = node.position;
      filled[position] = slot + 1;
    }
  }
  return { starts, readers };
}

function placeOf({ work, position, row }: GraphNode): EntryPlace | null {
  if (work.kind === "measured") return { position, place: "measured", row: work.row.name };
  return work.kind === "entry" && row ? { position, place: work.place, row: row.name } : null;
}

function placesOf(nodes: readonly GraphNode[]): Pick<Graph, "places" | "titleReaders"> {
  const places = new Map<number, EntryPlace[]>();
  const titleReaders = new Map<number, number[]>();
  const push = <T>(map: Map<number, T[]>, at: number, item: T) => {
    const list = map.get(at);
    if (list) list.push(item);
    else map.set(at, [item]);
  };
  for (const node of nodes) {
    const place = placeOf(node);
    if (place) push(places, node.cardAt, place);
    if (node.work.kind !== "model") continue;
    for (const { cardAt } of node.work.surveyed) push(titleReaders, cardAt, node.position);
  }
  return { places, titleReaders };
}

/** Formulas without conditions, with what they need packed side by side: they are most of every pass. */
function plainOf(nodes: readonly GraphNode[]): Pick<Graph, "plain" | "needStarts" | "needs"> {
  const steps = nodes.map(({ work }) =>
    work.kind === "formula" && work.conditions.length === 0 ? work.step : null,
  );
  const needs: number[] = [];
  const needStarts = Int32Array.from([0, ...steps.map((step) => needs.push(...(step?.needs ?? [])))]);
  return { plain: steps.map((step) => step?.run ?? null), needStarts, needs: Int32Array.from(needs) };
}

function wrongCaution(card: string, caution: Caution, text: string): Problem {
  return {
    code: "formula",
    at: `${card}.${caution.beside}`,
    text: `The caution ${caution.id} cannot be told: ${text}`,
  };
}

function cautionsFor(plan: Draft, owner: CardPlan): readonly CardCaution[] {
  const card = owner.card.id;
  if (owner.doubled) return [];
  return owner.kind.cautions.flatMap((caution): readonly CardCaution[] => {
    if (caution.if === undefined) return [{ card, caution, step: null }];
    const step = stepOf(plan, caution.if, (name) => resolveName(plan, owner, name));
    if (!isWrong(step)) return [{ card, caution, step }];
    plan.problems.push(wrongCaution(card, caution, step.wrong));
    return [];
  });
}

/**
 * The graph of a worksheet.
 * @param worksheet with its active options already applied
 * @param kinds every card kind by its name
 * @returns nodes in topological order, with the problems of cards and links
 */
export function buildGraph(worksheet: Worksheet, kinds: CardKinds): Graph {
  const plan = draftOf(worksheet, kinds);
  for (const owner of plan.cards) addShells(plan, owner);
  for (const owner of plan.cards) addNodeWork(plan, owner);
  for (const node of plan.nodes.values()) node.reads = readsOf(node.work);
  const cautions = plan.cards.flatMap((owner) => cautionsFor(plan, owner));
  const nodes = ordered([...plan.nodes.values()]);
  bindNodes(nodes);
  for (const { step, card, caution } of cautions) {
    const bound = step ? bindStep(step) : null;
    if (bound && !bound.ok) plan.problems.push(wrongCaution(card, caution, bound.text));
  }
  const index = new Map(nodes.map(({ id, position }) => [id, position]));
  return {
    kinds,
    worksheet,
    cards: worksheet.cards,
    nodes,
    index,
    ...plainOf(nodes),
    ...readersOf(nodes),
    ...placesOf(nodes),
    ids: nodes.filter(({ role }) => role === "quantity").map(({ id }) => id),
    cautions,
    siUnitOf: (id) => siUnitOfNode(nodes[index.get(id) ?? -1]),
    problems: plan.problems,
  };
}

/**
 * The graph of a worksheet: the previous one itself where nothing changed but values.
 * @param previous graph of an earlier state of the worksheet
 */
export function graphFor(worksheet: Worksheet, kinds: CardKinds, previous?: Graph): Graph {
  const fits = previous && previous.kinds === kinds && sameShape(previous.worksheet, worksheet, kinds);
  return fits ? previous : buildGraph(worksheet, kinds);
}
