// How a quantity was worked out: the relation in words, the same with the numbers put in, and where it comes from.

import type { Worksheet } from "../document/worksheet.ts";
import { showFormula } from "../formula/show.ts";
import type { ShowOptions } from "../units/show.ts";
import {
  type GatherPart,
  type Graph,
  type GraphNode,
  nodeOf,
  type Source,
  type Step,
  type SurveyedCard,
  twinId,
} from "./nodes.ts";
import type { Results } from "./results.ts";
import { entryOfNode, labelOf, shownResult, shownValue, titleOf } from "./shown.ts";
import type { QuantityId, Result, Row } from "./types.ts";
import { rowWords, type Words } from "./words.ts";

type Input = { readonly id: QuantityId; readonly label: string; readonly shown: string };

export type Explanation = {
  readonly id: QuantityId;
  readonly label: string;
  readonly cardTitle: string;
  readonly help: string;
  readonly origin: "given" | "computed" | "measured";
  /** "default", "guessed", "borrowed", "label", "measured"; null where it is computed or nothing is said. */
  readonly from: string | null;
  readonly words: string;
  /** The formula with labels for names; "" where there is no formula. */
  readonly formula: string;
  /** The formula with values and units put in, or the parts of a sum; "" where there is none. */
  readonly numbers: string;
  readonly shown: string;
  readonly source: string;
  /** Why it is none or failed; "" where it is neither. */
  readonly reason: string;
  /** What a measured quantity would be by computing. */
  readonly computedTwin: { readonly id: QuantityId; readonly shown: string } | null;
  /** What a model was given, with values. */
  readonly inputs: readonly Input[];
  readonly reads: readonly QuantityId[];
  readonly feeds: readonly QuantityId[];
  /** Where the trouble began, if it failed or is none because of something else. */
  readonly cause: QuantityId | null;
};

type View = {
  readonly graph: Graph;
  readonly worksheet: Worksheet;
  readonly results: Results;
  readonly options: ShowOptions;
};

const isSeen = (node: GraphNode) =>
  node.role === "quantity" && node.row !== null && !node.row.hidden && node.row.row !== "link";

/** More than so many are told by what matters first. */
const FEW = 6;

/** Whether it is a number that is turned, and not seldom. */
const isTurned = (row: Row | null): boolean => row?.row === "given" && row.usual !== undefined && !row.minor;

/** The first of many are those that are turned, then those of the same part, what stands first on its card, and so down the page. */
function byWeight(start: GraphNode, found: Iterable<GraphNode>): (a: GraphNode, b: GraphNode) => number {
  const part = start.kind?.single ? null : start.card;
  const rank = ({ row, card, cardAt, kind, position }: GraphNode): readonly number[] => [
    isTurned(row) ? 0 : 1,
    card === part ? 0 : 1,
    row ? (kind?.rows.filter(isTurned).indexOf(row) ?? 0) : 0,
    cardAt,
    position,
  ];
  // Each once: they are compared many times over.
  const ranks = new Map([...found].map((node) => [node, rank(node)]));
  return (a, b) => {
    const [first = [], second = []] = [ranks.get(a), ranks.get(b)];
    const at = first.findIndex((value, place) => value !== second[place]);
    return (first[at] ?? 0) - (second[at] ?? 0);
  };
}

/**
 * The nearest quantities that a reader can open, along reads or readers; models, hidden rows and twins are seen through.
 * Few stand in the order in which they are worked out; of many those that matter most to whoever turns numbers come first.
 */
function nearestSeen(
  start: GraphNode,
  step: (node: GraphNode) => readonly GraphNode[],
): readonly QuantityId[] {
  const seen = new Set<GraphNode>();
  const found = new Set<GraphNode>();
  const open = [...step(start)];
  for (let node = open.pop(); node; node = open.pop()) {
    if (seen.has(node) || node === start) continue;
    seen.add(node);
    if (isSeen(node)) found.add(node);
    else open.push(...step(node));
  }
  const order =
    found.size > FEW ? byWeight(start, found) : (a: GraphNode, b: GraphNode) => a.position - b.position;
  return [...found].sort(order).map(({ id }) => id);
}

function readersOf(graph: Graph, node: GraphNode): readonly GraphNode[] {
  const positions = graph.readers.subarray(graph.starts[node.position], graph.starts[node.position + 1]);
  return Array.from(positions, (position) => graph.nodes[position]).filter((reader) => reader !== undefined);
}

function shownNode(view: View, node: GraphNode): string {
  return shownValue(view.graph, view.worksheet, view.results, node.id, view.options);
}

function nameIn(view: View, owner: GraphNode, node: GraphNode): string {
  const label = labelOf(view.graph, view.worksheet, node.id);
  return node.card === owner.card ? label : `${label} (${titleOf(view.worksheet, node.card)})`;
}

function formulaTexts(view: View, owner: GraphNode, step: Step): { formula: string; numbers: string } {
  const sources = new Map<string, Source>(step.sources.map((source) => [source.name, source]));
  const put = (show: (node: GraphNode) => string) =>
    showFormula(step.formula, (name) => {
      const node = sources.get(name)?.node;
      return node ? show(node) : name;
    });
  return { formula: put((node) => nameIn(view, owner, node)), numbers: put((node) => shownNode(view, node)) };
}

const JOINTS = { sum: " + ", max: ", ", list: ", " } as const;

function partText(view: View, { card, node }: GatherPart): string {
  const title = titleOf(view.worksheet, card);
  const result = node ? view.results.get(node.id) : undefined;
  if (!node || !result) return title;
  const shown = shownResult(view.worksheet, node, result, view.options);
  return result.state === "none" ? `${title} left out (${shown})` : `${title} ${shown}`;
}

function gatherText(view: View, how: "sum" | "max" | "list", parts: readonly GatherPart[]): string {
  const leftOut = parts.filter(({ node }) => node && view.results.get(node.id)?.state === "none");
  const counted = parts.filter((part) => !leftOut.includes(part));
  const listed = counted.map((part) => partText(view, part)).join(JOINTS[how]);
  const text = how === "max" && counted.length > 1 ? `the largest of ${listed}` : listed;
  return [text, ...leftOut.map((part) => partText(view, part))].filter((part) => part !== "").join("; ");
}

/** The sum over the surveyed cards that have every row it adds. */
function surveyText(view: View, rows: readonly string[], surveyed: readonly SurveyedCard[]): string {
  const parts = surveyed.flatMap(({ id, sources }) => {
    const shown = rows.flatMap((name) => {
      const node = sources.find((source) => source.name === name)?.node;
      return node && view.results.get(node.id)?.state === "ready" ? [shownNode(view, node)] : [];
    });
    return shown.length === rows.length ? [`${titleOf(view.worksheet, id)} ${shown.join(" / ")}`] : [];
  });
  return parts.join(" + ");
}

function inputsOf(view: View, owner: GraphNode, sources: readonly Source[]): readonly Input[] {
  return sources.flatMap(({ node }) => {
    if (node?.role !== "quantity" || node.row?.hidden) return [];
    return [{ id: node.id, label: nameIn(view, owner, node), shown: shownNode(view, node) }];
  });
}

function workingOf(view: View, node: GraphNode): Pick<Explanation, "formula" | "numbers" | "inputs"> {
  const { work } = node;
  const nothing = { formula: "", numbers: "", inputs: [] };
  if (work.kind === "formula") {
    return { ...formulaTexts(view, node, work.step), inputs: inputsOf(view, node, work.step.sources) };
  }
  if (work.kind === "gather") return { ...nothing, numbers: gatherText(view, work.how, work.parts) };
  if (work.kind !== "output" || work.model.work.kind !== "model") return nothing;
  const { takes, surveyed } = work.model.work;
  const adds = node.row?.row === "output" ? node.row.adds : undefined;
  if (adds) return { ...nothing, numbers: surveyText(view, adds, surveyed) };
  const inputs = inputsOf(view, node, takes);
  const relation = work.relations().find((step) => isKnown(view, step));
  return { ...nothing, ...(relation ? formulaTexts(view, node, relation) : {}), inputs };
}

/** Whether every number of a relation is there to be put in. */
function isKnown(view: View, step: Step): boolean {
  return step.sources.every(({ node }) => node !== null && view.results.get(node.id)?.state === "ready");
}

function originOf(node: GraphNode, result: Result): Explanation["origin"] {
  if (result.state === "ready") return result.origin;
  const { kind } = node.work;
  if (kind === "measured") return "measured";
  return kind === "entry" || kind === "pick" || node.row?.row === "link" ? "given" : "computed";
}

function fromOf(view: View, node: GraphNode): string | null {
  const { kind } = node.work;
  if (kind === "pick") return "default";
  if (kind !== "entry" && kind !== "measured") return null;
  const entry = entryOfNode(view.worksheet, node);
  return entry ? (entry.from ?? null) : "default";
}

const WORKED_OUT = ["formula", "output", "gather", "user_formula"];

function wordsOf(node: GraphNode, help: string): string {
  const { row, work } = node;
  if (work.kind === "measured") {
    const teaches = row && "measurable" in row ? row.measurable?.teaches : undefined;
    return teaches ? `Measured. It teaches ${teaches}.` : "Measured.";
  }
  return row && WORKED_OUT.includes(row.row) ? help : "";
}

function troubleOf(id: QuantityId, result: Result): Pick<Explanation, "reason" | "cause"> {
  if (result.state === "none")
    return { reason: result.reason, cause: result.cause === id ? null : result.cause };
  if (result.state === "failed") return { reason: result.problem.text, cause: result.problem.cause ?? null };
  return { reason: "", cause: null };
}

function twinOf(view: View, node: GraphNode): Explanation["computedTwin"] {
  const twin = nodeOf(view.graph, twinId(node.id));
  return twin ? { id: twin.id, shown: shownNode(view, twin) } : null;
}

/**
 * The working of a quantity, made when it is asked for.
 * @returns null where there is no such quantity
 */
function explanationOf(
  graph: Graph,
  worksheet: Worksheet,
  results: Results,
  id: QuantityId,
  options: ShowOptions,
  words: Words,
): Explanation | null {
  const node = nodeOf(graph, id);
  const result = results.get(id);
  if (!node || !result || node.role === "model") return null;
  // A sum must come out: what it is made of is given whole.
  const view = { graph, worksheet, results, options: { ...options, rounded: false } };
  const working = workingOf(view, node);
  const said = node.row ? rowWords(words, node.kind?.kind ?? "", node.row) : { help: "", source: "" };
  const isAnswered = result.state === "ready" || result.state === "pending";
  return {
    id,
    label: labelOf(graph, worksheet, id),
    cardTitle: titleOf(worksheet, node.card),
    help: said.help,
    origin: originOf(node, result),
    from: fromOf(view, node),
    words: wordsOf(node, said.help),
    ...working,
    numbers: isAnswered ? working.numbers : "",
    shown: shownNode(view, node),
    source: node.work.kind === "measured" ? "your own measurement" : said.source || "definition",
    ...troubleOf(id, result),
    computedTwin: twinOf(view, node),
    reads: nearestSeen(node, (at) => at.reads),
    feeds: nearestSeen(node, (at) => readersOf(graph, at)),
  };
}

const NOTHING: Omit<Explanation, "id" | "label"> = {
  cardTitle: "",
  help: "",
  origin: "computed",
  from: null,
  words: "",
  formula: "",
  numbers: "",
  shown: "",
  source: "definition",
  reason: "There is no such quantity.",
  computedTwin: null,
  inputs: [],
  reads: [],
  feeds: [],
  cause: null,
};

/** The working of a quantity; one that does not exist has nothing but a reason. */
export function explain(
  graph: Graph,
  worksheet: Worksheet,
  results: Results,
  id: QuantityId,
  options: ShowOptions,
  words: Words,
): Explanation {
  return explanationOf(graph, worksheet, results, id, options, words) ?? { id, label: id, ...NOTHING };
}
