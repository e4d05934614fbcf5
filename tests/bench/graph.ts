// One given changed in a chain of 1,000 and in a fan-out of 10,000 of the user's own lines: the whole way from the edited
// worksheet to results with their identity kept, against mathjs compiled over a Map in topological order, numbers only.

import { compile } from "mathjs";
import { type Card, CURRENT_VERSION, type Worksheet } from "../../src/document/worksheet.ts";
import { buildGraph, graphFor } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import type { CardKinds, NumberGiven, Settled } from "../../src/graph/types.ts";
import { mediansOf, type Ratio, shownTime } from "./measure.ts";

type Line = { readonly name: string; readonly text: (read: (name: string) => string) => string };

const named = (name: string) => ({ name, label: name, help: "", source: "definition" });
const number = (name: string, usual: number): NumberGiven => ({
  ...named(name),
  row: "given",
  measure: "factor",
  default: [usual, "1"],
});
const KINDS: CardKinds = {
  base: {
    kind: "base",
    label: "Base",
    purpose: "",
    rows: [number("share", 0.999), number("gain", 0.5), number("first", 20)],
    models: [],
    cautions: [],
  },
  own: {
    kind: "own",
    label: "Line",
    purpose: "",
    rows: [
      { ...named("formula"), row: "text", default: "" },
      { ...named("unit"), row: "text", default: "" },
      { ...named("value"), row: "user_formula", formula: "formula", unit: "unit" },
    ],
    models: [],
    cautions: [],
  },
};
const SETTLED: Settled = { answers: new Map(), records: new Map() };

function chain(length: number): readonly Line[] {
  return Array.from({ length }, (_, at) => ({
    name: `q${at + 1}`,
    text: (read) => `${read(at === 0 ? "first" : `q${at}`)} * ${read("share")} + ${read("gain")}`,
  }));
}

function fanOut(width: number): readonly Line[] {
  return Array.from({ length: width }, (_, at) => ({
    name: `q${at + 1}`,
    text: (read) => `${read("first")} * ${read("share")} + ${read("gain")} * ${1 + (at % 7)}`,
  }));
}

const idOf = (name: string) => (/^q\d/.test(name) ? `${name}.value` : `base.${name}`);

function baseWith(first: number): Card {
  return {
    id: "base",
    kind: "base",
    title: "",
    givens: { first: { value: first, unit: "1" } },
    measured: {},
  };
}

function sheetOf(lines: readonly Line[]): Worksheet {
  const cards = lines.map(
    ({ name, text }): Card => ({
      id: name,
      kind: "own",
      title: name,
      givens: { formula: { value: text(idOf), unit: "" } },
      measured: {},
    }),
  );
  return {
    version: CURRENT_VERSION,
    title: "",
    units: "metric",
    locale: "en-US",
    currency: "$",
    datum: "",
    made_by: "",
    made_on: "2026-05-01",
    cards: [baseWith(20), ...cards],
  };
}

function ratioOf(name: string, lines: readonly Line[]): Ratio {
  const last = lines.at(-1)?.name ?? "";
  const start = sheetOf(lines);
  let graph = buildGraph(start, KINDS);
  let results = evaluate(graph, start, SETTLED);
  let cards = start.cards;
  const compiled = lines.map((line) => ({ name: line.name, code: compile(line.text((read) => read)) }));
  const scope = new Map<string, number>([
    ["share", 0.999],
    ["gain", 0.5],
    ["first", 20],
  ]);
  const times = mediansOf({
    ours: () => {
      cards = cards.with(0, baseWith(cards[0]?.givens.first?.value === 20 ? 21 : 20));
      const worksheet = { ...start, cards };
      graph = graphFor(worksheet, KINDS, graph);
      results = evaluate(graph, worksheet, SETTLED, results);
    },
    mathjs: () => {
      scope.set("first", scope.get("first") === 20 ? 21 : 20);
      for (const each of compiled) scope.set(each.name, each.code.evaluate(scope));
    },
  });
  const answer = results.get(`${last}.value`);
  const isSame = answer?.state === "ready" && Number.isFinite(answer.value);
  const isWhole = results.recomputed.length === lines.length + 1;
  if (!isSame || !isWhole) throw new Error(`${name}: the pass did not reach every line.`);
  return {
    name: `graph, ${name}: mathjs over the whole pass with results`,
    ratio: times.mathjs / times.ours,
    atLeast: 1,
    detail: `${shownTime(times.mathjs)} over ${shownTime(times.ours)}`,
  };
}

/** The ratios this file promises. */
export function rows(): readonly Ratio[] {
  return [ratioOf("chain of 1000", chain(1000)), ratioOf("fan-out of 10000", fanOut(10_000))];
}
