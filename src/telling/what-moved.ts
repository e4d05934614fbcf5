// What has moved between what is held and what stands now: what the sentence that leads is about, then the furthest first.

import { namesNothing } from "../graph/moved.ts";
import type { Graph, GraphNode } from "../graph/nodes.ts";
import { nodeOf } from "../graph/nodes.ts";
import { shownIn } from "../graph/readers.ts";
import { shownOf } from "../graph/shown.ts";
import type { QuantityId, Result } from "../graph/types.ts";
import type { ShowOptions } from "../units/show.ts";
import { answers as sentences } from "./answers.ts";
import type { Asked } from "./asked.ts";

type Worked = {
  readonly graph: Graph;
  readonly worksheet: Parameters<typeof shownOf>[0] & Pick<Asked, "cards">;
  readonly results: { readonly get: (id: QuantityId) => Result | undefined };
};

/**
 * One quantity that moved: as read, and where both values stand on a line from nought (or the lesser of them, where that is
 * below it) to the greater. How far it moved is how much of that line lies between them: `farOf`.
 */
export type Moved = {
  readonly id: QuantityId;
  readonly was: string;
  readonly now: string;
  /** From 0 to 1; null where it is a word. */
  readonly wasAt: number | null;
  readonly nowAt: number | null;
};

const GIVEN: ReadonlySet<string> = new Set(["given", "choice", "link", "text", "date", "list"]);
const ANSWER: ReadonlySet<string> = new Set(["output", "formula", "gather", "user_formula"]);

/** Ends of the line that both values stand on: from nought, where neither is below it. */
function onLine(was: number, now: number): readonly [number, number] {
  const [least, most] = [Math.min(0, was, now), Math.max(0, was, now)];
  const span = most - least;
  return span > 0 ? [(was - least) / span, (now - least) / span] : [0, 0];
}

/** How far it moved, as the list is sorted and as its line is drawn: from 0 to 1; a word has not moved by any length. */
const farOf = ({ wasAt, nowAt }: Moved): number =>
  wasAt === null || nowAt === null ? -1 : Math.abs(nowAt - wasAt);

function movedNode(before: Worked, now: Worked, node: GraphNode, options: ShowOptions): Moved | null {
  const old = before.results.get(node.id);
  const fresh = now.results.get(node.id);
  if (old === fresh || !old || !fresh) return null;
  if (namesNothing(before.results, node) || namesNothing(now.results, node)) return null;
  const [from, to] = [shownIn(old), shownIn(fresh)];
  const oldNode = nodeOf(before.graph, node.id);
  if (from === null || to === null || !oldNode) return null;
  const [was, is] = [
    shownOf(before.worksheet, oldNode, from, options),
    shownOf(now.worksheet, node, to, options),
  ];
  if (was === is || was === "" || is === "") return null;
  const said = { id: node.id, was, now: is };
  if (typeof from !== "number" || typeof to !== "number") return { ...said, wasAt: null, nowAt: null };
  const [wasAt, nowAt] = onLine(from, to);
  return { ...said, wasAt, nowAt };
}

/** A given that nobody typed, neither now nor before, follows others as an answer does. */
function isTyped({ worksheet }: Worked, { card, row }: GraphNode): boolean {
  // The worksheet's own, whoever said it.
  if (row?.row === "text" && row.of === "currency") return true;
  const of = worksheet.cards.find(({ id }) => id === card);
  const name = row?.name ?? "";
  if (row?.row === "given" && row.stored === "card")
    return of?.[name === "price" ? "price" : "life"] !== undefined;
  return of?.givens[name] !== undefined || of?.measured[name] !== undefined;
}

/** Beside a measured number stands the computed one, under another name. */
const isShown = ({ id, card, row }: GraphNode, among: ReadonlySet<string>): boolean =>
  row !== null && among.has(row.row) && row.hidden !== true && id === `${card}.${row.name}`;

/** The numbers of the sentence that leads, in its order. */
const inLead = ({ worksheet: { cards }, results }: Worked): readonly QuantityId[] =>
  sentences({ result: (id) => results.get(id), cards }, { alone: true })
    .filter(({ lead }) => lead)
    .flatMap(({ pieces }) => pieces.flatMap((piece) => (typeof piece === "string" ? [] : [piece.quantity])));

/**
 * What the lead says, in its order, then the furthest first and words last; of equals by name, so that the list does not
 * depend on the order of cards.
 */
function sorted(moved: readonly Moved[], lead: readonly QuantityId[] = []): readonly Moved[] {
  const place = ({ id }: Moved): number => (lead.includes(id) ? lead.indexOf(id) : lead.length);
  return [...moved].sort((a, b) => place(a) - place(b) || farOf(b) - farOf(a) || (a.id < b.id ? -1 : 1));
}

export type WhatMoved = {
  readonly answers: readonly Moved[];
  readonly givens: readonly Moved[];
  /** Answers shown somewhere that read as they did. */
  readonly unmoved: number;
};

/** What moved, as a reader sees it: numbers and words that read the same have not. */
export function whatMoved(before: Worked, now: Worked, options: ShowOptions): WhatMoved {
  const answers: Moved[] = [];
  const givens: Moved[] = [];
  let unmoved = 0;
  for (const node of now.graph.nodes) {
    const isGiven = isShown(node, GIVEN);
    const isAnswer = isShown(node, ANSWER) || (isGiven && !isTyped(before, node) && !isTyped(now, node));
    if (!isAnswer && !isGiven) continue;
    const moved = movedNode(before, now, node, options);
    if (moved) (isAnswer ? answers : givens).push(moved);
    else if (!isGiven) unmoved += 1;
  }
  return { answers: sorted(answers, inLead(now)), givens: sorted(givens), unmoved };
}
