// The built graph: one node a quantity, model or twin, in an order in which everything stands after what it reads.
// Results, values and states of a pass are arrays by a node's position in that order.

import type { Card, Worksheet } from "../document/worksheet.ts";
import type { Formula } from "../formula/read.ts";
import type { Dimension } from "../units/dimension.ts";
import type {
  CardKind,
  CardKinds,
  Caution,
  Given,
  Model,
  NumberGiven,
  Problem,
  QuantityId,
  Result,
  Row,
} from "./types.ts";

/** A name as it is read: through which link, if any, and from which node; no node where the link leads nowhere. */
export type Source = {
  readonly name: string;
  readonly link: GraphNode | null;
  readonly node: GraphNode | null;
};

export type Step = {
  readonly formula: Formula;
  readonly sources: readonly Source[];
  /** Set once the order is known: what must be ready, and the formula over the values of a pass. */
  needs: Int32Array;
  run: (values: Float64Array) => number;
};

export type FormulaWork = {
  readonly kind: "formula";
  readonly conditions: readonly { readonly step: Step; readonly reason: string }[];
  readonly step: Step;
  /** The unit that the user wants the answer in; "" lets the formula decide, null where a measure decides. */
  readonly userUnit: string | null;
};

export type OutputWork = {
  readonly kind: "output";
  readonly model: GraphNode;
  readonly key: string;
  /** What the answer satisfies, for its working; not among what the node reads, and read when it is first asked for. */
  readonly relations: () => readonly Step[];
};

export type SurveyedCard = {
  readonly id: string;
  readonly kind: string;
  readonly cardAt: number;
  readonly sources: readonly Source[];
};

export type ModelWork = {
  readonly kind: "model";
  /** `card.model` */
  readonly name: string;
  /** Kind of the card whose model it is. */
  readonly cardKind: string;
  readonly model: Model;
  readonly takes: readonly Source[];
  readonly record: Source | null;
  readonly surveyed: readonly SurveyedCard[];
};

export type GatherPart = { readonly card: string; readonly cardAt: number; readonly node: GraphNode | null };

/** What was typed; `behind` is the given of the same card that decides whether it is shown at all. */
export type EntryWork = {
  readonly kind: "entry";
  readonly row: Given;
  readonly place: "givens" | "card";
  readonly behind: GraphNode | null;
};

export type Work =
  | { readonly kind: "fixed"; readonly result: Result }
  | EntryWork
  | { readonly kind: "measured"; readonly row: Row }
  | { readonly kind: "pick"; readonly row: NumberGiven; readonly choice: GraphNode }
  | FormulaWork
  | ModelWork
  | OutputWork
  | { readonly kind: "gather"; readonly how: "sum" | "max" | "list"; readonly parts: readonly GatherPart[] };

export type GraphNode = {
  readonly id: QuantityId;
  readonly card: string;
  /** Place of the card among the worksheet's cards; -1 where no card stands behind it. */
  readonly cardAt: number;
  readonly kind: CardKind | null;
  readonly row: Row | null;
  /** `twin`: what a measured quantity would be by computing; `stand_in`: read, but not there. */
  readonly role: "quantity" | "twin" | "model" | "stand_in";
  work: Work;
  reads: readonly GraphNode[];
  rank: number;
  position: number;
  /** Dimension of its number; null where it is none, or where it could not be worked out. */
  dimension: Dimension | null;
};

/** A row of a card that is read from the document in every pass, and the node that reads it. */
export type EntryPlace = {
  readonly position: number;
  readonly place: "givens" | "measured" | "card";
  readonly row: string;
};

/** A caution of one card, with its condition where it has one. */
export type CardCaution = {
  readonly card: string;
  readonly caution: Caution;
  readonly step: Step | null;
};

/** Of a graph that is only a part of its worksheet's. */
export type Whole = {
  /** All of it, built when somebody first asks. */
  readonly graph: () => Graph;
  /** Whether a quantity may stand in the whole that is not in the part. */
  readonly mayHave: (id: QuantityId) => boolean;
  /** Whether what is not in the part waits until it is worked out; else it is worked out as somebody asks. */
  readonly waits: boolean;
};

export type Graph = {
  readonly kinds: CardKinds;
  /** The worksheet it was built for; numbers in it may be old by now, its shape is not. */
  readonly worksheet: Worksheet;
  readonly cards: readonly Card[];
  /** Where this is a part of it: what the first answers are worked out from. */
  readonly whole: Whole | null;
  /** By rank, then by name. */
  readonly nodes: readonly GraphNode[];
  readonly index: ReadonlyMap<QuantityId, number>;
  /** By position: a formula without conditions, which can be run without looking further. */
  readonly plain: readonly (((values: Float64Array) => number) | null)[];
  /** What the plain formula at p needs: `needs[needStarts[p]]` up to `needs[needStarts[p + 1]]`. */
  readonly needStarts: Int32Array;
  readonly needs: Int32Array;
  /** Readers of the node at p: `readers[starts[p]]` up to `readers[starts[p + 1]]`. */
  readonly starts: Int32Array;
  readonly readers: Int32Array;
  readonly places: ReadonlyMap<number, readonly EntryPlace[]>;
  /** Positions of the models that look at the titles of the card at a place. */
  readonly titleReaders: ReadonlyMap<number, readonly number[]>;
  /** Quantities in the order of the nodes: neither twins nor models nor stand-ins. */
  readonly ids: readonly QuantityId[];
  readonly cautions: () => readonly CardCaution[];
  /** Coherent SI unit of a quantity's number, "" where it has none. */
  readonly siUnitOf: (id: QuantityId) => string;
  /** Of the cards and their links. */
  readonly problems: readonly Problem[];
  /** Of cautions whose condition cannot be told. */
  readonly wrongCautions: () => readonly Problem[];
};

/** The node of a quantity, or null; of one that is not in a part the whole's, unless the part lets it wait. */
export function nodeOf(graph: Graph, id: QuantityId): GraphNode | null {
  const position = graph.index.get(id);
  if (position !== undefined) return graph.nodes[position] ?? null;
  return graph.whole?.mayHave(id) && !graph.whole.waits ? nodeOf(graph.whole.graph(), id) : null;
}

/** The name of a measured quantity's computed twin. */
export function twinId(id: QuantityId): QuantityId {
  return `${id}~computed`;
}

function singleRead(work: Work): GraphNode | null {
  if (work.kind === "pick") return work.choice;
  if (work.kind === "entry") return work.behind;
  return work.kind === "output" ? work.model : null;
}

/** What the graph reads of a node's work, each node once. */
export function readsOf(work: Work): readonly GraphNode[] {
  const reads = new Set<GraphNode>();
  const take = (source: Source | null) => {
    if (source?.link) reads.add(source.link);
    if (source?.node) reads.add(source.node);
  };
  const single = singleRead(work);
  if (single) reads.add(single);
  if (work.kind === "gather") for (const part of work.parts) if (part.node) reads.add(part.node);
  if (work.kind === "formula") {
    for (const step of [...work.conditions.map((condition) => condition.step), work.step])
      step.sources.forEach(take);
  }
  if (work.kind === "model") {
    work.takes.forEach(take);
    take(work.record);
    for (const card of work.surveyed) card.sources.forEach(take);
  }
  return [...reads];
}
