// One pass over the graph. From the results before, only what an edit reaches is computed again, and an unchanged
// value keeps its result object, so that readers rest and cards are not drawn again.

import type { Card, Worksheet } from "../document/worksheet.ts";
import { compute } from "./compute.ts";
import type { EntryPlace, Graph } from "./network.ts";
import { type Asked, type Pass, settle } from "./pass.ts";
import { entryAt } from "./plan.ts";
import { failed, reasonOf } from "./problems.ts";
import { type Inside, Results } from "./results.ts";
import type { Result, Settled } from "./types.ts";

export { Results } from "./results.ts";

/** Cards in the places the graph knows them by, whatever the order in the worksheet. */
function cardsFor(graph: Graph, worksheet: Worksheet): readonly Card[] {
  const fits = graph.cards.every((card, at) => worksheet.cards[at]?.id === card.id);
  if (fits) return worksheet.cards;
  const byId = new Map(worksheet.cards.map((card) => [card.id, card]));
  return graph.cards.map((card) => byId.get(card.id) ?? card);
}

function entryOf(card: Card | undefined, { place, row }: EntryPlace): unknown {
  if (place === "card") return row === "life" ? card?.life : card?.price;
  return entryAt(place === "measured" ? card?.measured : card?.givens, row);
}

/** Positions whose entries, titles, answers or records are other objects now. */
function* edited(pass: Pass, before: Inside): Generator<number> {
  const { graph, cards } = pass;
  for (let at = 0; at < cards.length; at++) {
    const card = cards[at];
    const old = before.cards[at];
    if (card === old) continue;
    for (const place of graph.places.get(at) ?? []) {
      if (entryOf(card, place) !== entryOf(old, place)) yield place.position;
    }
    if (card?.title !== old?.title) yield* graph.titleReaders.get(at) ?? [];
  }
  for (const [position, asked] of before.asked) if (isStale(pass.settled, asked)) yield position;
}

/** Marks what was edited, and returns the least position marked. */
function markEdits(pass: Pass, before: Inside, dirty: Uint8Array): number {
  let first = dirty.length;
  for (const position of edited(pass, before)) {
    dirty[position] = 1;
    first = Math.min(first, position);
  }
  return first;
}

/** Whether an answer or a record has come, gone or changed since a model was looked at. */
function isStale(settled: Settled, asked: Asked): boolean {
  if (asked.request && settled.answers.get(asked.request.key) !== asked.answer) return true;
  return asked.recordKey !== null && (settled.records.get(asked.recordKey) ?? null) !== asked.record;
}

function markReaders(graph: Graph, position: number, dirty: Uint8Array): void {
  const end = graph.starts[position + 1] ?? 0;
  for (let at = graph.starts[position] ?? 0; at < end; at++) dirty[graph.readers[at] ?? 0] = 1;
}

/** Settles what is marked, in order; the one place that turns something thrown into a problem. */
function run(pass: Pass, dirty: Uint8Array, first: number): readonly number[] {
  const { graph } = pass;
  const done: number[] = [];
  let position = first;
  const take = (result: Result) => {
    done.push(position);
    if (settle(pass, position, result)) markReaders(graph, position, dirty);
  };
  while (position < graph.nodes.length) {
    try {
      for (; position < graph.nodes.length; position++) {
        const node = dirty[position] === 1 ? graph.nodes[position] : undefined;
        if (node) take(compute(pass, node));
      }
    } catch (error) {
      take(failed("model", graph.nodes[position]?.id ?? "", reasonOf(error)));
      position++;
    }
  }
  return done;
}

function sameShowing(a: Worksheet, b: Worksheet): boolean {
  return a.units === b.units && a.locale === b.locale && a.currency === b.currency;
}

function startPass(graph: Graph, worksheet: Worksheet, settled: Settled, before: Inside | null): Pass {
  const { units, locale, currency } = worksheet;
  const shared = { graph, cards: cardsFor(graph, worksheet), show: { units, locale, currency }, settled };
  if (before?.graph === graph) {
    const { values, states, results, asked } = before;
    return {
      ...shared,
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
  const before = previous?.inside ?? null;
  const pass = startPass(graph, worksheet, settled, before);
  const dirty = new Uint8Array(graph.nodes.length);
  const continues = before !== null && before.graph === graph && sameShowing(before.worksheet, worksheet);
  const first = continues ? markEdits(pass, before, dirty) : 0;
  if (!continues) dirty.fill(1);
  const done = run(pass, dirty, first);
  const { cards, values, states, results, asked } = pass;
  return new Results({ graph, worksheet, cards, values, states, results, asked, done });
}
