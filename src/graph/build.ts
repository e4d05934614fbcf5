// A worksheet and the card kinds to a graph of quantities. Pure, and never throws: what is wrong becomes problems.

import type { Worksheet } from "../document/worksheet.ts";
import { bindNodes, bindStep } from "./bind-nodes.ts";
import { type CardPlan, type Draft, draftOf, kindNamed, rowNamed } from "./card-plans.ts";
import { isWrong, stepOf, type Wrong } from "./formula-work.ts";
import { resolveName } from "./names.ts";
import { addNodeWork, addPartWork } from "./node-work.ts";
import {
  type CardCaution,
  type EntryPlace,
  type Graph,
  type GraphNode,
  nodeOf,
  readsOf,
  type Step,
  type Whole,
} from "./nodes.ts";
import { once } from "./once.ts";
import { ordered } from "./order.ts";
import { sameShape } from "./shape.ts";
import { addShells } from "./shells.ts";
import type { CardKinds, Caution, Problem, QuantityId } from "./types.ts";
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

function boundCaution(plan: Draft, owner: CardPlan, condition: string): Step | Wrong {
  const step = stepOf(plan, condition, (name) => resolveName(plan, owner, name));
  if (isWrong(step)) return step;
  const bound = bindStep(step);
  return bound.ok ? step : { wrong: bound.text };
}

type Told = { readonly cautions: readonly CardCaution[]; readonly wrong: readonly Problem[] };

/** The cautions of every card; a name in them that is no node of the graph stays without a number. */
function cautionsOf(plan: Draft): Told {
  const cautions: CardCaution[] = [];
  const wrong: Problem[] = [];
  for (const owner of plan.cards) {
    const card = owner.card.id;
    for (const caution of owner.doubled ? [] : owner.kind.cautions) {
      const step = caution.if === undefined ? null : boundCaution(plan, owner, caution.if);
      if (step && isWrong(step)) wrong.push(wrongCaution(card, caution, step.wrong));
      else cautions.push({ card, caution, step });
    }
  }
  return { cautions, wrong };
}

const NONE_TOLD: Told = { cautions: [], wrong: [] };

function graphOf(plan: Draft, whole: Whole | null): Graph {
  const { kinds, worksheet } = plan;
  for (const node of plan.nodes.values()) node.reads = readsOf(node.work);
  const nodes = ordered([...plan.nodes.values()]);
  bindNodes(nodes);
  // Read when somebody first asks: they are a fifth of the building, and most who build a graph never tell a caution.
  const told = once(() => (whole ? NONE_TOLD : cautionsOf(plan)));
  const index = new Map(nodes.map(({ id, position }) => [id, position]));
  const graph: Graph = {
    kinds,
    worksheet,
    cards: worksheet.cards,
    whole,
    nodes,
    index,
    ...plainOf(nodes),
    ...readersOf(nodes),
    ...placesOf(nodes),
    ids: nodes.filter(({ role }) => role === "quantity").map(({ id }) => id),
    cautions: () => told().cautions,
    siUnitOf: (id) => siUnitOfNode(nodeOf(graph, id)),
    problems: plan.problems,
    wrongCautions: () => told().wrong,
  };
  return graph;
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
  return graphOf(plan, null);
}

/**
 * What of a worksheet's graph some quantities are worked out from, in half the time and less: what the page says first need
 * not wait for the rest. Its results are those of the whole; cautions it has none, and problems only its own.
 * @param wanted quantities; those that there are not are left aside
 * @param waits whether whatever else is asked for is still to come, and not worked out at once
 */
export function buildPart(
  worksheet: Worksheet,
  kinds: CardKinds,
  wanted: readonly QuantityId[],
  waits = false,
): Graph {
  const plan = draftOf(worksheet, kinds);
  // Which of two cards of one name is meant shows only in the whole.
  if (plan.cards.some(({ doubled }) => doubled)) return buildGraph(worksheet, kinds);
  addPartWork(plan, wanted);
  const mayHave = (id: QuantityId): boolean => {
    const [card = "", name = ""] = id.split(".");
    const kind = plan.byId.get(card)?.kind ?? kindNamed(kinds, card);
    return kind !== undefined && rowNamed(kind, name.replace("~computed", "")) !== undefined;
  };
  return graphOf(plan, { graph: once(() => buildGraph(worksheet, kinds)), mayHave, waits });
}

/**
 * The graph of a worksheet: the previous one itself where nothing changed but values, and all of it where that was a part.
 * @param previous graph of an earlier state of the worksheet
 */
export function graphFor(worksheet: Worksheet, kinds: CardKinds, previous?: Graph): Graph {
  const fits = previous && previous.kinds === kinds && sameShape(previous.worksheet, worksheet, kinds);
  return fits ? (previous.whole?.graph() ?? previous) : buildGraph(worksheet, kinds);
}

/** The same of a part; the previous one must be of what is wanted. */
export function partFor(
  worksheet: Worksheet,
  kinds: CardKinds,
  wanted: readonly QuantityId[],
  previous?: Graph,
  waits = false,
): Graph {
  const fits = previous && previous.kinds === kinds && sameShape(previous.worksheet, worksheet, kinds);
  return fits ? previous : buildPart(worksheet, kinds, wanted, waits);
}
