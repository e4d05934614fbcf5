// Random worksheets, random edits, garbage. A failing run prints its seed and path.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Card, Entry, Worksheet } from "../../src/document/worksheet.ts";
import { buildPart, graphFor } from "../../src/graph/build.ts";
import { evaluate, type Results } from "../../src/graph/evaluate.ts";
import { inputOf } from "../../src/graph/requests.ts";
import { sameResult } from "../../src/graph/same.ts";
import type { Outputs, Settled } from "../../src/graph/types.ts";
import { tries } from "../tries.ts";
import {
  card,
  entry,
  KINDS,
  NOTHING_SETTLED,
  own,
  picture,
  sheet,
  type Worked,
  withPlace,
  workOut,
} from "./kinds.ts";

const SPRINGS = ["a", "b", "c"];
const PONDS = ["p", "q"];
const LINES = ["k", "l", "m", "n", "o"];
const NAMES = [
  "place.slope",
  "place.twice_outlook",
  "a.width / 1 m",
  "b.yield / 1 m3",
  "p.water / 1 m3",
  "q.share",
  "d.head / 1 m2",
  "d.half / 1 L",
  "gone.width",
  ...LINES.map((id) => `${id}.value`),
];

const width = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: 0, max: 40 }).map((value) => entry(value, "m")) },
  { weight: 1, arbitrary: fc.constantFrom(entry(-1, "m"), entry(2, "gal"), entry("x"), entry(null)) },
);
const id = (ids: readonly string[]) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...ids) },
    { weight: 1, arbitrary: fc.constantFrom(null, "gone", "place") },
  );
const line = fc
  .tuple(
    fc.constantFrom(...NAMES),
    fc.constantFrom(" + ", " * ", " - ", " / "),
    fc.constantFrom(...NAMES, "2", "0.1"),
  )
  .map((parts) => parts.join(""));

type Edit = {
  readonly card: string;
  readonly row: string;
  readonly entry: Entry | null;
  readonly measured?: true;
};

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ card: fc.constantFrom(...SPRINGS), row: fc.constant("width"), entry: width }),
  fc.record({ card: fc.constantFrom(...SPRINGS), row: fc.constant("depth"), entry: fc.option(width) }),
  fc.record({
    card: fc.constantFrom(...SPRINGS),
    row: fc.constant("soil"),
    entry: fc.constantFrom(entry("clay"), entry("sand"), entry("moon")),
  }),
  fc.record({
    card: fc.constantFrom(...SPRINGS),
    row: fc.constant("feeds"),
    entry: id(PONDS).map((value) => entry(value)),
  }),
  fc.record({
    card: fc.constant("d"),
    row: fc.constant("pond"),
    entry: id([...PONDS, "t"]).map((value) => entry(value)),
  }),
  fc.record({
    card: fc.constant("d"),
    row: fc.constant("length"),
    entry: fc.integer({ min: 0, max: 200 }).map((value) => entry(value, "m")),
  }),
  fc.record({
    card: fc.constant("place"),
    row: fc.constantFrom("slope", "stone"),
    entry: fc.integer({ min: 0, max: 4 }).map((value) => entry(value, "1")),
  }),
  fc.record({
    card: fc.constantFrom(...LINES),
    row: fc.constant("formula"),
    entry: line.map((text) => entry(text)),
  }),
  fc.record({
    card: fc.constantFrom(...SPRINGS),
    row: fc.constantFrom("yield", "depth"),
    entry: fc.option(fc.integer({ min: 1, max: 9 }).map((value) => entry(value, "m3"))),
    measured: fc.constant(true as const),
  }),
);

function changed(one: Card, { row, entry: value, measured }: Edit): Card {
  const place = measured ? "measured" : "givens";
  const { [row]: _, ...rest } = one[place];
  return { ...one, [place]: value === null ? rest : { ...rest, [row]: value } };
}

const applied = (worksheet: Worksheet, one: Edit): Worksheet => ({
  ...worksheet,
  cards: worksheet.cards.map((candidate) =>
    candidate.id === one.card ? changed(candidate, one) : candidate,
  ),
});

const start = withPlace(
  ...SPRINGS.map((name) => card(name, "spring", { feeds: entry("p") })),
  ...PONDS.map((name) => card(name, "pond")),
  card("d", "ditch", { pond: entry("p") }),
  card("t", "tee"),
  ...LINES.map((name) => own(name, "place.slope")),
);

const worksheets = fc.array(edit, { maxLength: 14 }).map((edits) => edits.reduce(applied, start));

/** Answers part of what is asked, as a worker would in its own time. */
function answerSome(settled: Settled, results: Results, some: boolean): Settled {
  const answers = new Map<string, Outputs>(settled.answers);
  for (const request of some ? results.requests : []) {
    const model = KINDS.place?.models.find(({ name }) => `place.${name}` === request.model);
    answers.set(request.key, model?.run(inputOf(request, model, null)) ?? {});
  }
  return { ...settled, answers };
}

/** What must not depend on what came before: everything but the old value shown while pending. */
function withoutOld(worked: Pick<Worked, "graph" | "results">): unknown {
  return JSON.parse(JSON.stringify(picture(worked), (key, value) => (key === "last" ? null : value)));
}

describe("random worksheets", () => {
  it("[G7] [G1] after every edit of a random list, the pass from before equals a fresh one", () => {
    fc.assert(
      fc.property(worksheets, fc.array(fc.tuple(edit, fc.boolean()), { maxLength: 12 }), (first, edits) => {
        let settled: Settled = { answers: new Map(), records: new Map() };
        let worked = workOut(first, settled);
        for (const [one, answers] of edits) {
          settled = answerSome(settled, worked.results, answers);
          const worksheet = applied(worked.worksheet, one);
          const graph = graphFor(worksheet, KINDS, worked.graph);
          const results = evaluate(graph, worksheet, settled, worked.results);
          const fresh = workOut(worksheet, settled);
          expect(withoutOld({ graph, results })).toEqual(withoutOld(fresh));
          for (const name of results.ids) {
            const [old, now] = [worked.results.get(name), results.get(name)];
            if (old && now && sameResult(old, now)) expect(now).toBe(old);
          }
          worked = { graph, worksheet, results };
        }
      }),
      { numRuns: tries(300) },
    );
  });

  it("[G2] [G7] an edit of one number computes nothing that does not read it", () => {
    fc.assert(
      fc.property(
        worksheets,
        fc.constantFrom(...SPRINGS),
        fc.integer({ min: 1, max: 40 }),
        (worksheet, name, value) => {
          const first = workOut(worksheet);
          const next = applied(worksheet, { card: name, row: "width", entry: entry(value, "m") });
          if (graphFor(next, KINDS, first.graph) !== first.graph) return;
          const results = evaluate(
            first.graph,
            next,
            { answers: new Map(), records: new Map() },
            first.results,
          );
          const reached = new Set([`${name}.width`]);
          for (const node of first.graph.nodes)
            if (node.reads.some((read) => reached.has(read.id))) reached.add(node.id);
          expect(results.recomputed.filter((one) => !reached.has(one))).toEqual([]);
          expect(new Set(results.recomputed).size).toBe(results.recomputed.length);
        },
      ),
    );
  });

  it("[G2] [G3] [G4] [G7] what is worked out of a part first is what the whole says, and goes on into it", () => {
    const wanted = fc.uniqueArray(
      fc.constantFrom(...NAMES.slice(2).map((name) => name.split(" ")[0] ?? "")),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(worksheets, wanted, fc.option(edit), (worksheet, names, one) => {
        const settled: Settled = { answers: new Map(), records: new Map() };
        const whole = workOut(worksheet, settled);
        const part = buildPart(worksheet, KINDS, names);
        const first = evaluate(part, worksheet, settled);
        for (const { id } of part.nodes) expect(first.get(id)).toEqual(whole.results.get(id));
        // Whatever else is asked is answered out of the whole, in which nothing of the part is computed again.
        for (const { id } of whole.graph.nodes)
          if (whole.results.ids.includes(id)) expect(first.get(id)).toEqual(whole.results.get(id));
        const known = new Set(part.nodes.map(({ id }) => id));
        expect(picture({ graph: first.all.inside.graph, results: first.all })).toEqual(picture(whole));
        if (first.all !== first) expect(first.all.recomputed.filter((id) => known.has(id))).toEqual([]);
        for (const { id } of part.nodes) expect(first.all.get(id)).toBe(first.get(id));
        if (one === null) return;
        const next = applied(worksheet, one);
        const graph = graphFor(next, KINDS, part);
        const results = evaluate(graph, next, settled, evaluate(part, worksheet, settled).all);
        expect(withoutOld({ graph, results })).toEqual(withoutOld(workOut(next, settled)));
      }),
      { numRuns: tries(300) },
    );
  });

  it("[G11] any order of the cards gives the same, to the last bit", () => {
    fc.assert(
      fc.property(
        worksheets.chain((worksheet) =>
          fc.tuple(
            fc.constant(worksheet),
            fc.shuffledSubarray([...worksheet.cards], { minLength: worksheet.cards.length }),
          ),
        ),
        ([worksheet, cards]) => {
          expect(picture(workOut({ ...worksheet, cards }))).toEqual(picture(workOut(worksheet)));
        },
      ),
      { numRuns: tries(200) },
    );
  });

  it("[G3] [G4] every failure is a first cause, or names one; every cycle's path is closed and real", () => {
    fc.assert(
      fc.property(worksheets, (worksheet) => {
        const { graph, results } = workOut(worksheet);
        for (const name of results.ids) {
          const result = results.get(name);
          if (result?.state !== "failed") continue;
          const { code, cause, path } = result.problem;
          expect(result.problem.at).toBe(name);
          if (code === "cycle") {
            expect(path?.[0]).toBe(path?.at(-1));
            expect(path?.[0]).toBe([...(path ?? [])].sort()[0]);
          }
          if (code !== "upstream") continue;
          const first = results.get(cause ?? "");
          expect(first?.state === "failed" && first.problem.code !== "upstream").toBe(true);
          expect(graph.index.get(cause ?? "")).toBeLessThan(graph.index.get(name) ?? -1);
        }
      }),
      { numRuns: tries(200) },
    );
  });

  it("[G6] [G5] garbage in the entries never throws and lets no number out that is not finite", () => {
    const junk = fc.oneof(
      fc.string(),
      fc.double(),
      fc.constant(null),
      fc.array(fc.oneof(fc.string(), fc.double(), fc.array(fc.double(), { maxLength: 3 })), {
        maxLength: 13,
      }),
      fc.object({ maxDepth: 1 }),
    );
    const units = fc.oneof(fc.string(), fc.constantFrom("m", "gal", "psi", "%", "degF", "1", "m,m"));
    const entries = fc.dictionary(
      fc.constantFrom(
        "width",
        "depth",
        "rock",
        "soil",
        "loss",
        "feeds",
        "pond",
        "length",
        "formula",
        "unit",
        "slope",
        "yield",
        "__proto__",
        "x",
      ),
      fc.oneof(fc.record({ value: junk, unit: units }), fc.constant(null)),
    );
    const cards = fc.array(
      fc.record({
        id: fc.constantFrom("a", "b", "p", "place", "__proto__", "constructor", ""),
        kind: fc.constantFrom(...Object.keys(KINDS), "__proto__", "toString", "dragon"),
        title: fc.string(),
        givens: entries,
        measured: entries,
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(cards, (list) => {
        const garbage = sheet(list as unknown as Card[]);
        const { graph, results } = workOut(garbage);
        const part = buildPart(garbage, KINDS, ["a.yield", "p.water", "b.soil", "place.slope"]);
        for (const { id } of part.nodes)
          expect(evaluate(part, garbage, NOTHING_SETTLED).get(id)).toEqual(results.get(id));
        for (const name of [...results.ids, ...graph.nodes.map((node) => node.id)]) {
          const result = results.get(name);
          expect(result).toBeDefined();
          if (result?.state === "ready" && typeof result.value === "number")
            expect(Number.isFinite(result.value)).toBe(true);
        }
        expect(Array.isArray(results.problems)).toBe(true);
      }),
      { numRuns: tries(500) },
    );
  });
});
