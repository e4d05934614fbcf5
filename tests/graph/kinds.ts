// Small card kinds for the tests of the graph, and short ways to write worksheets over them.
//
//   spring --yield--> pond (gathers the springs that feed it) --> ditch (reads its pond through a link)
//     |                                                            |
//   place.slope (single card)                              own lines: any card_id.row

import {
  type Card,
  CURRENT_VERSION,
  type Entries,
  type Entry,
  type Worksheet,
} from "../../src/document/worksheet.ts";
import { buildGraph, type Graph } from "../../src/graph/build.ts";
import { evaluate, type Results } from "../../src/graph/evaluate.ts";
import type {
  CardKind,
  CardKinds,
  FormulaRow,
  GatherRow,
  LinkGiven,
  Model,
  NumberGiven,
  OutputRow,
  Outputs,
  Row,
  Settled,
} from "../../src/graph/types.ts";

const named = (name: string) => ({
  name,
  label: `The ${name}`,
  help: `Help on ${name}.`,
  source: "definition",
});

export const given = (
  name: string,
  measure: NumberGiven["measure"],
  usual: NumberGiven["default"],
  more: Partial<NumberGiven> = {},
): NumberGiven => ({ ...named(name), row: "given", measure, default: usual, ...more });

export const formula = (
  name: string,
  measure: FormulaRow["measure"],
  text: string,
  more: Partial<FormulaRow> = {},
): FormulaRow => ({
  ...named(name),
  row: "formula",
  measure,
  formula: text,
  help: `Words on ${name}.`,
  ...more,
});

export const output = (
  name: string,
  of: string,
  measure: OutputRow["measure"],
  more: Partial<OutputRow> = {},
): OutputRow => ({ ...named(name), row: "output", of, measure, help: `Words on ${name}.`, ...more });

const gather = (
  name: string,
  measure: GatherRow["measure"],
  from: Pick<GatherRow, "kind" | "by" | "take" | "how">,
): GatherRow => ({ ...named(name), row: "gather", measure, help: `Words on ${name}.`, ...from });

const link = (name: string, kinds: readonly string[], many = false): LinkGiven => ({
  ...named(name),
  row: "link",
  kinds,
  many,
  absent: `no ${name} chosen`,
});

export const text = (name: string, usual = ""): Row => ({ ...named(name), row: "text", default: usual });

export function kind(name: string, rows: readonly Row[], more: Partial<CardKind> = {}): CardKind {
  return { kind: name, label: `A ${name}`, purpose: `For ${name}.`, rows, models: [], cautions: [], ...more };
}

/** Hands each pond back its share of all water, by quantity id; it looks at every pond, whatever their state. */
const sharing: Model = {
  name: "sharing",
  takes: ["slope"],
  surveys: { pond: ["water"] },
  outputs: "by quantity id",
  run: ({ cards }) => {
    const ponds = cards.pond ?? [];
    const water = ponds.map(({ results }) =>
      results.water?.state === "ready" ? Number(results.water.value) : 0,
    );
    const sum = water.reduce((total, amount) => total + amount, 0);
    const outputs: Record<string, Outputs[string]> = {};
    for (const [at, pond] of ponds.entries()) {
      outputs[`${pond.id}.share`] =
        sum > 0 ? { value: (water[at] ?? 0) / sum } : { none: "no water anywhere" };
    }
    return outputs;
  },
};

const forecast: Model = {
  name: "forecast",
  takes: ["slope", "stone"],
  heavy: true,
  outputs: ["outlook", "outlook_words"],
  run: ({ values }) => ({
    outlook: { value: Number(values.slope) * Number(values.stone) },
    outlook_words: { value: "fair" },
  }),
};

const split: Model = {
  name: "split",
  takes: ["length", "pond.water", "measured.head"],
  tolerant: true,
  outputs: ["head", "waste"],
  run: ({ values, results }) => {
    const water = values["pond.water"];
    if (typeof water !== "number") return { head: { none: "dry" }, waste: { failed: "No water to waste." } };
    if (water > 900) throw new Error("Too much water for this ditch.");
    const taught = results["measured.head"]?.state === "ready" ? 1 : 0;
    return { head: { value: water / Number(values.length) }, waste: { value: taught } };
  },
};

export const KINDS: CardKinds = {
  place: kind(
    "place",
    [
      given("slope", "factor", [2, "1"], { min: 0, max: 10 }),
      given("stone", "factor", [3, "1"]),
      output("outlook", "forecast", "factor"),
      output("outlook_words", "forecast", "text"),
      formula("twice_outlook", "factor", "2 * outlook"),
    ],
    { single: true, models: [sharing, forecast] },
  ),
  spring: kind("spring", [
    given("width", "length", [4, "m"], { min: 0 }),
    given("depth", "length", { formula: "width / 2" }),
    given("rock", "length", null, { absent: "no rock here" }),
    {
      ...named("soil"),
      row: "choice",
      default: "clay",
      options: [
        { word: "clay", label: "Clay" },
        { word: "sand", label: "Sand" },
      ],
    },
    given("loss", "share", { by: "soil", pick: { clay: [10, "%"], sand: [50, "%"] } }),
    link("feeds", ["pond"]),
    formula("yield", "volume", "width * depth * place.slope * 1 m * (1 - loss)", {
      measurable: { teaches: "what the spring gives" },
    }),
    formula("rocky", "length", "rock + width"),
    formula("into", "volume", "feeds.water"),
  ]),
  pond: kind("pond", [
    gather("water", "volume", { kind: "spring", by: "feeds", take: "yield", how: "sum" }),
    gather("best", "volume", { kind: "spring", by: "feeds", take: "yield", how: "max" }),
    gather("rocks", "series", { kind: "spring", by: "feeds", take: "rock", how: "list" }),
    gather("feeders", "series", { kind: "spring", by: "feeds", take: "id", how: "list" }),
    output("share", "place.sharing", "share"),
  ]),
  ditch: kind(
    "ditch",
    [
      link("pond", ["pond", "tee"]),
      given("length", "length", [10, "m"], { min: 0.5, max: 500 }),
      output("head", "split", "area", { measurable: { teaches: "nothing else" } }),
      output("waste", "split", "count"),
      formula("half", "volume", "pond.water / 2", {
        none: [{ if: "length > 100 m", reason: "too long to carry" }],
      }),
    ],
    { models: [split] },
  ),
  tee: kind("tee", [given("height", "height", [1, "m"])]),
  own: kind("own", [
    text("name", "My line"),
    text("formula", "place.slope"),
    text("unit"),
    {
      ...named("value"),
      row: "user_formula",
      formula: "formula",
      unit: "unit",
      called: "name",
      help: "Your own.",
    },
  ]),
};

export const NOTHING_SETTLED: Settled = { answers: new Map(), records: new Map() };

export const entry = (value: Entry["value"], unit = ""): Entry => ({ value, unit });

export function card(id: string, kindName: string, givens: Entries = {}, measured: Entries = {}): Card {
  return { id, kind: kindName, title: `Card ${id}`, givens, measured };
}

export const own = (id: string, formulaText: string, unit = ""): Card =>
  card(id, "own", { formula: entry(formulaText), unit: entry(unit) });

export function sheet(cards: readonly Card[], more: Partial<Worksheet> = {}): Worksheet {
  return {
    version: CURRENT_VERSION,
    title: "A test",
    units: "metric",
    locale: "en-US",
    currency: "$",
    datum: "",
    made_by: "",
    made_on: "2026-05-01",
    cards,
    ...more,
  };
}

/** A place of its own is added where the cards have none. */
export function withPlace(...cards: readonly Card[]): Worksheet {
  return sheet([card("place", "place"), ...cards]);
}

export type Worked = { readonly graph: Graph; readonly worksheet: Worksheet; readonly results: Results };

export function workOut(worksheet: Worksheet, settled = NOTHING_SETTLED, kinds = KINDS): Worked {
  const graph = buildGraph(worksheet, kinds);
  return { graph, worksheet, results: evaluate(graph, worksheet, settled) };
}

/** The worksheet with one given of one card set. */
export function withGiven(worksheet: Worksheet, id: string, row: string, value: Entry): Worksheet {
  const cards = worksheet.cards.map((one) =>
    one.id === id ? { ...one, givens: { ...one.givens, [row]: value } } : one,
  );
  return { ...worksheet, cards };
}

export function numberAt(results: Results, id: string): number {
  const result = results.get(id);
  if (result?.state !== "ready" || typeof result.value !== "number") {
    throw new Error(`${id} is ${JSON.stringify(result)}`);
  }
  return result.value;
}

/** Everything a reader could see: results by name, problems and requests. */
export function picture({ graph, results }: Pick<Worked, "graph" | "results">): unknown {
  return {
    results: Object.fromEntries(
      graph.nodes.filter(({ role }) => role !== "model").map(({ id }) => [id, results.get(id)]),
    ),
    problems: results.problems,
    requests: results.requests,
  };
}
