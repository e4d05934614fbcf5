// The worksheet as the builder sees it: cards with their kinds, nodes by id, and what is wrong with the cards.

import type { Card, Entry, EntryValue, Worksheet } from "../document/worksheet.ts";
import { readFormula } from "../formula/read.ts";
import type { GraphNode, Work } from "./nodes.ts";
import { failed } from "./problems.ts";
import type { CardKind, CardKinds, LinkGiven, Model, Problem, QuantityId, Result, Row } from "./types.ts";

export type CardPlan = {
  readonly card: Card;
  readonly at: number;
  readonly kind: CardKind;
  /** Another card has the same id: nothing of it can be told apart. */
  readonly doubled: boolean;
};

export type Draft = {
  readonly kinds: CardKinds;
  readonly worksheet: Worksheet;
  /** Cards of a known kind, sorted by id, so that nothing depends on their order in the document. */
  readonly cards: readonly CardPlan[];
  readonly byId: ReadonlyMap<string, CardPlan>;
  /** Ids of cards of an unknown kind. */
  readonly strangers: ReadonlySet<string>;
  readonly nodes: Map<QuantityId, GraphNode>;
  readonly problems: Problem[];
  /** Where only a part is built: what was found to be read, still without its work; null where all is in the plan. */
  reached: Reached[] | null;
};

/** A node of a card's row or model. */
export type Reached = { readonly owner: CardPlan; readonly node: GraphNode } & (
  | { readonly row: Row }
  | { readonly model: Model }
);

/** The kind of that name, or undefined; names such as `constructor` are no kinds. */
export function kindNamed(kinds: CardKinds, name: string): CardKind | undefined {
  return Object.hasOwn(kinds, name) ? kinds[name] : undefined;
}

/** An entry by the name of its row, or undefined. */
export function entryAt(
  entries: Readonly<Record<string, Entry>> | null | undefined,
  row: string,
): Entry | undefined {
  return entries && Object.hasOwn(entries, row) ? (entries[row] ?? undefined) : undefined;
}

const ROWS = new WeakMap<CardKind, ReadonlyMap<string, Row>>();

/** The row of that name of a kind, or undefined. */
export function rowNamed(kind: CardKind, name: string): Row | undefined {
  const known = ROWS.get(kind);
  if (known) return known.get(name);
  // Of two by one name the first counts.
  const rows = new Map(kind.rows.toReversed().map((row) => [row.name, row]));
  ROWS.set(kind, rows);
  return rows.get(name);
}

/** The stored value of a link row: ids as they stand in the document. */
export function linkedIds(card: Card, row: LinkGiven): readonly string[] {
  const value: EntryValue | undefined = entryAt(card.givens, row.name)?.value;
  if (typeof value === "string") return value === "" ? [] : [value];
  return Array.isArray(value) ? value.filter((id): id is string => typeof id === "string") : [];
}

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function misplaced(card: Card, kind: CardKind): Problem | null {
  if (!kind.single || card.id === kind.kind) return null;
  return {
    code: "duplicate_id",
    at: card.id,
    text: `There can be only one card "${kind.label}", under the name ${kind.kind}.`,
  };
}

function problemOf(card: Card, kind: CardKind | undefined): Problem | null {
  if (kind) return misplaced(card, kind);
  return { code: "unknown_kind", at: card.id, text: `I do not know the kind of card "${card.kind}".` };
}

function countsOf(cards: readonly Card[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { id } of cards) counts.set(id, (counts.get(id) ?? 0) + 1);
  return counts;
}

const byPlace = (a: Problem, b: Problem) =>
  byText(a.at, b.at) || byText(a.code, b.code) || byText(a.text, b.text);

/** Problems of the cards as a whole: names that stand twice, single cards that are missing. */
function wholeProblems(
  counts: ReadonlyMap<string, number>,
  byId: ReadonlyMap<string, CardPlan>,
  kinds: CardKinds,
): readonly Problem[] {
  const doubled = [...counts].filter(([, count]) => count > 1);
  const singles = Object.values(kinds).filter((kind) => kind.single && !byId.has(kind.kind));
  return [
    ...doubled.map(
      ([at, count]): Problem => ({
        code: "duplicate_id",
        at,
        text: `${count} cards have the same name, ${at}.`,
      }),
    ),
    ...singles.map((kind) => missingCard(kind, kind.kind)),
  ];
}

/** Sorts the cards, matches them with their kinds, and notes unknown kinds, doubled ids and missing single cards. */
export function draftOf(worksheet: Worksheet, kinds: CardKinds, reached: Reached[] | null = null): Draft {
  const problems: Problem[] = [];
  const strangers = new Set<string>();
  const counts = countsOf(worksheet.cards);
  const cards: CardPlan[] = [];
  for (const [at, card] of worksheet.cards.entries()) {
    const kind = kindNamed(kinds, card.kind);
    const problem = problemOf(card, kind);
    if (problem) problems.push(problem);
    if (!kind) strangers.add(card.id);
    else if (!problem) cards.push({ card, at, kind, doubled: (counts.get(card.id) ?? 0) > 1 });
  }
  cards.sort((a, b) => byText(a.card.id, b.card.id) || byText(a.kind.kind, b.kind.kind));
  const byId = new Map(cards.map((plan) => [plan.card.id, plan]));
  problems.push(...wholeProblems(counts, byId, kinds));
  problems.sort(byPlace);
  return { kinds, worksheet, cards, byId, strangers, nodes: new Map(), problems, reached };
}

/** The problem of a single card that is not there. */
export function missingCard(kind: CardKind, at: string): Problem {
  return { code: "missing_card", at, text: `The card "${kind.label}" is missing.` };
}

type Reading = ReturnType<typeof readFormula>;

/** Formula texts read so far, by money: the kinds' own are the same in every worksheet, and reading is a third of building. */
const READINGS = new Map<string, Map<string, Reading>>();
/** So many texts of one money, and so many moneys; past them all is forgotten, for typed texts have no end. */
const MOST_TEXTS = 4000;
const MOST_MONEYS = 8;

function kept<T>(map: Map<string, T>, most: number, key: string, make: () => T): T {
  const known = map.get(key);
  if (known !== undefined) return known;
  if (map.size >= most) map.clear();
  const made = make();
  map.set(key, made);
  return made;
}

/** A formula text as it was read, in the money of the worksheet; frozen, so that any worksheet may share it. */
export function readingOf({ worksheet: { currency } }: Pick<Draft, "worksheet">, text: string): Reading {
  const texts = kept(READINGS, MOST_MONEYS, currency, () => new Map<string, Reading>());
  return kept(texts, MOST_TEXTS, text, () => readFormula(text, { currency }));
}

/** Reads what the kinds of a worksheet's cards reckon by, so that its graph is built in half the time: a task of its own. */
export function readAhead(worksheet: Worksheet, kinds: CardKinds): void {
  for (const name of new Set(worksheet.cards.map(({ kind }) => kind)))
    for (const row of kindNamed(kinds, name)?.rows ?? []) {
      if (row.row !== "formula") continue;
      readingOf({ worksheet }, row.formula);
      for (const { if: condition } of row.none ?? []) readingOf({ worksheet }, condition);
    }
}

/** A node that is in the plan already, or a new one. */
export function addNode(
  plan: Draft,
  id: QuantityId,
  role: GraphNode["role"],
  owner: {
    readonly card: string;
    readonly cardAt: number;
    readonly kind: CardKind | null;
    readonly row: Row | null;
  },
): GraphNode {
  const known = plan.nodes.get(id);
  if (known) return known;
  const work: Work = { kind: "fixed", result: failed("missing", id, "There is no value.") };
  const node: GraphNode = { id, ...owner, role, work, reads: [], rank: 0, position: -1, dimension: null };
  plan.nodes.set(id, node);
  return node;
}

/** A node for something that is read but is not there, with what its readers are told. */
export function standIn(
  plan: Draft,
  id: QuantityId,
  kind: CardKind | null,
  row: Row | null,
  result: Result,
): GraphNode {
  const known = plan.nodes.get(id);
  if (known) return known;
  const node = addNode(plan, id, "stand_in", { card: id.split(".")[0] ?? "", cardAt: -1, kind, row });
  node.work = { kind: "fixed", result };
  return node;
}

export type Target =
  | { readonly plan: CardPlan }
  | { readonly code: "dead_link" | "wrong_link"; readonly text: string };

/** The card that a link leads to, or why it leads nowhere. */
export function targetOf(plan: Draft, row: LinkGiven, id: string): Target {
  const target = plan.byId.get(id);
  if (target && row.kinds.includes(target.kind.kind)) return { plan: target };
  if (target || plan.strangers.has(id)) {
    const kinds = row.kinds.map((name) => kindNamed(plan.kinds, name)?.label ?? name).join(" or ");
    return { code: "wrong_link", text: `${row.label}: ${id} is no ${kinds}.` };
  }
  return { code: "dead_link", text: `${row.label}: there is no card ${id}.` };
}
