// One pass over the graph. From the results before, only what an edit reaches is computed again, and an unchanged
// value keeps its result object, so that readers rest and cards are not drawn again.

import type { Card, Worksheet } from "../document/worksheet.ts";
import { entryAt } from "./card-plans.ts";
import { compute } from "./compute.ts";
import type { EntryPlace, Graph } from "./nodes.ts";
import { once } from "./once.ts";
import { type AskedAnswer, FAILED, hasAll, type Pass, settle, settleNumber } from "./pass.ts";
import { failed, reasonOf } from "./problems.ts";
import { type Inside, Results } from "./results.ts";
import type { Result, Settled } from "./types.ts";

export { Results } from "./results.ts";

/** Cards in the places the graph knows them by, whatever the order in the worksheet. */
function cardsFor(graph: Graph, worksheet: Worksheet): readonly Card[] {
  const { cards } = worksheet;
  let at = 0;
  while (at < graph.cards.length && (cards[at] === graph.cards[at] || cards[at]?.id === graph.cards[at]?.id))
    at++;
  if (at === graph.cards.length && at === cards.length) return cards;
  const byId = new Map(cards.map((card) => [card.id, card]));
  return graph.cards.map((card) => byId.get(card.id) ?? card);
}

function entryOf(card: Card | undefined, { place, row }: EntryPlace): unknown {
  if (place === "card") return row === "life" ? card?.life : card?.price;
  return entryAt(place === "measured" ? card?.measured : card?.givens, row);
}

/** Positions whose entries or titles are other objects in one card now. */
function editedIn(
  graph: Graph,
  at: number,
  card: Card | undefined,
  old: Card | undefined,
): readonly number[] {
  const places = graph.places.get(at) ?? [];
  const changed = places.filter((place) => entryOf(card, place) !== entryOf(old, place));
  const titles = card?.title === old?.title ? [] : (graph.titleReaders.get(at) ?? []);
  return [...changed.map(({ position }) => position), ...titles];
}

/** Marks what was edited, answered or brought in since, and returns the least position marked. */
function markEdits(pass: Pass, before: Inside, dirty: Uint8Array): number {
  const { graph, cards } = pass;
  let first = dirty.length;
  const mark = (position: number) => {
    dirty[position] = 1;
    first = Math.min(first, position);
  };
  for (let at = 0; at < cards.length; at++) {
    if (cards[at] !== before.cards[at]) editedIn(graph, at, cards[at], before.cards[at]).forEach(mark);
  }
  for (const [position, asked] of before.asked) if (isStale(pass.settled, asked)) mark(position);
  return first;
}

/** Whether an answer or a record has come, gone or changed since a model was looked at. */
function isStale(settled: Settled, asked: AskedAnswer): boolean {
  if (asked.request && settled.answers.get(asked.request.key) !== asked.answer) return true;
  return asked.recordKey !== null && (settled.records.get(asked.recordKey) ?? null) !== asked.record;
}

function markReaders(graph: Graph, position: number, dirty: Uint8Array): void {
  const end = graph.starts[position + 1] ?? 0;
  for (let at = graph.starts[position] ?? 0; at < end; at++) dirty[graph.readers[at] ?? 0] = 1;
}

/** Settles one node; a plain formula, by far the commonest, takes the short way. */
function settleAt(pass: Pass, position: number): boolean {
  const { graph } = pass;
  const formula = graph.plain[position];
  if (formula && hasAll(pass, position)) return settleNumber(pass, position, formula(pass.values));
  const node = graph.nodes[position];
  return node !== undefined && settle(pass, position, compute(pass, node));
}

/** Settles what is marked, in order; the one place that turns something thrown into a problem. */
function run(pass: Pass, dirty: Uint8Array, first: number): readonly number[] {
  const { graph } = pass;
  const done: number[] = [];
  let position = first;
  while (position < dirty.length) {
    try {
      for (; position < dirty.length; position++) {
        if (dirty[position] !== 1) continue;
        if (settleAt(pass, position)) markReaders(graph, position, dirty);
        done.push(position);
      }
    } catch (error) {
      const id = graph.nodes[position]?.id ?? "";
      if (settle(pass, position, failed("model", id, reasonOf(error)))) markReaders(graph, position, dirty);
      done.push(position);
      position++;
    }
  }
  return done;
}

function sameShowing(a: Worksheet, b: Worksheet): boolean {
  return a.units === b.units && a.locale === b.locale && a.currency === b.currency;
}

/** Whether a pass was over a part of the graph. */
const isPart = (part: Graph, graph: Graph): boolean =>
  part.whole !== null && !graph.whole && part.worksheet === graph.worksheet && part.kinds === graph.kinds;

/** A pass over a part, laid into the places of the whole; what is not in it counts as failed until it is settled. */
function laidInto(graph: Graph, part: Inside): { readonly before: Inside; readonly unknown: Uint8Array } {
  const { length } = graph.nodes;
  const values = new Float64Array(length).fill(Number.NaN);
  const states = new Uint8Array(length).fill(FAILED);
  const results = new Array<Result | undefined>(length);
  const unknown = new Uint8Array(length).fill(1);
  const placeOf = part.graph.nodes.map(({ id }) => graph.index.get(id) ?? -1);
  for (const [at, place] of placeOf.entries()) {
    if (place < 0) continue;
    values[place] = part.values[at] ?? Number.NaN;
    states[place] = part.states[at] ?? FAILED;
    results[place] = part.results[at];
    unknown[place] = 0;
  }
  const asked = new Map([...part.asked].map(([at, answer]) => [placeOf[at] ?? -1, answer]));
  return { before: { ...part, graph, values, states, results, asked, whole: null }, unknown };
}

function startPass(graph: Graph, worksheet: Worksheet, settled: Settled, before: Inside | null): Pass {
  const { units, locale, currency } = worksheet;
  const shared = { graph, cards: cardsFor(graph, worksheet), show: { units, locale, currency }, settled };
  if (before?.graph === graph) {
    const { values, states, results, asked } = before;
    return {
      ...shared,
      continues: true,
      values: values.slice(),
      states: states.slice(),
      results: results.slice(),
      asked: new Map(asked),
    };
  }
  const { nodes } = graph;
  const old = (id: string) => before?.results[before.graph.index.get(id) ?? -1];
  return {
    ...shared,
    continues: false,
    values: new Float64Array(nodes.length),
    states: new Uint8Array(nodes.length),
    results: before ? nodes.map(({ id }) => old(id)) : new Array<Result | undefined>(nodes.length),
    asked: new Map(),
  };
}

/**
 * The results of a worksheet.
 * @param graph built for the worksheet, or for an earlier state of the same shape
 * @param settled answers of heavy models and rain records by their keys
 * @param previous results of an earlier pass: they save work and keep objects, and change no value
 */
export function evaluate(graph: Graph, worksheet: Worksheet, settled: Settled, previous?: Results): Results {
  const known = previous?.inside ?? null;
  const laid = known && isPart(known.graph, graph) ? laidInto(graph, known) : null;
  const before = laid?.before ?? known;
  const pass = startPass(graph, worksheet, settled, before);
  const continues = before !== null && before.graph === graph && sameShowing(before.worksheet, worksheet);
  const dirty = (continues ? laid?.unknown : null) ?? new Uint8Array(graph.nodes.length);
  const edited = continues ? markEdits(pass, before, dirty) : 0;
  if (!continues) dirty.fill(1);
  const done = run(pass, dirty, laid ? 0 : edited);
  const { cards, values, states, results, asked } = pass;
  const whole = graph.whole && once(() => evaluate(graph.whole?.graph() ?? graph, worksheet, settled, all));
  const all = new Results({ graph, worksheet, cards, values, states, results, asked, done, whole });
  return all;
}
