// The eleven laws, each by small graphs that are drawn where they matter. Random graphs follow in random.test.ts.

import { describe, expect, it } from "vitest";
import { buildGraph, graphFor } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import { inputOf } from "../../src/graph/requests.ts";
import type { CardKinds, Model, Outputs, Request, Settled } from "../../src/graph/types.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import {
  card,
  entry,
  formula,
  given,
  KINDS,
  kind,
  NOTHING_SETTLED,
  numberAt,
  output,
  own,
  picture,
  sheet,
  text,
  withGiven,
  withPlace,
  workOut,
} from "./kinds.ts";

const forecastOf = (request: Request): Outputs => {
  const model = KINDS.place?.models.find(({ name }) => `place.${name}` === request.model);
  return model?.run(inputOf(request, model, null)) ?? {};
};

const answering = (...requests: readonly Request[]): Settled => ({
  answers: new Map(requests.map((request) => [request.key, forecastOf(request)])),
  records: new Map(),
});

const network = () =>
  withPlace(
    card("a", "spring", { feeds: entry("p") }),
    card("b", "spring", { feeds: entry("p"), width: entry(6, "m") }),
    card("p", "pond"),
    card("d", "ditch", { pond: entry("p") }),
    own("line", "p.water / d.length"),
  );

describe("[G1] results depend only on what they are given", () => {
  it("[G1] two runs over equal documents agree in everything", () => {
    expect(picture(workOut(structuredClone(network())))).toEqual(picture(workOut(network())));
  });

  it("[G1] the order of editing leaves no trace", () => {
    const first = workOut(network());
    const there = withGiven(withGiven(network(), "a", "width", entry(9, "m")), "d", "length", entry(3, "m"));
    const back = withGiven(withGiven(there, "d", "length", entry(10, "m")), "a", "width", entry(4, "m"));
    const middle = evaluate(first.graph, there, NOTHING_SETTLED, first.results);
    const last = evaluate(first.graph, back, NOTHING_SETTLED, middle);
    expect(last.ids.map((id) => last.get(id))).toEqual(first.results.ids.map((id) => first.results.get(id)));
  });
});

describe("[G2] once a pass, after everything it reads", () => {
  //   a --> b --> d       d is reached by two ways and is still run once
  //    \--> c --/
  it("[G2] a node reached by two ways runs once, after both", () => {
    let runs = 0;
    const counting: Model = {
      name: "count",
      takes: ["b", "c"],
      outputs: ["d"],
      run: ({ values }) => {
        runs += 1;
        return { d: { value: Number(values.b) + Number(values.c) } };
      },
    };
    const kinds: CardKinds = {
      x: kind(
        "x",
        [
          output("d", "count", "factor"),
          formula("c", "factor", "a * 3"),
          formula("b", "factor", "a * 2"),
          given("a", "factor", [1, "1"]),
        ],
        { models: [counting] },
      ),
    };
    const worksheet = sheet([card("x", "x")]);
    const { graph, results } = workOut(worksheet, NOTHING_SETTLED, kinds);
    expect(numberAt(results, "x.d")).toBe(5);
    expect(runs).toBe(1);
    const edited = withGiven(worksheet, "x", "a", entry(2, "1"));
    const next = evaluate(graph, edited, NOTHING_SETTLED, results);
    expect(numberAt(next, "x.d")).toBe(10);
    expect(runs).toBe(2);
    expect(next.recomputed).toEqual(["x.a", "x.b", "x.c", "x.count()", "x.d"]);
  });

  it("[G2] everything stands after what it reads", () => {
    const { graph } = workOut(network());
    for (const node of graph.nodes)
      for (const read of node.reads) expect(read.position).toBeLessThan(node.position);
  });
});

describe("[G3] cycles", () => {
  //   k -> m -> n -> k          the short way round is k, m, k
  //        m -> k
  //   r reads n;  free reads nothing of it
  const cycle = () =>
    withPlace(
      own("k", "m.value + 1"),
      own("m", "k.value + n.value"),
      own("n", "k.value * 2"),
      own("r", "n.value + 1"),
      own("free", "place.slope * 5"),
    );

  it("[G3] every member fails with the same shortest closed path from the least name", () => {
    const { results } = workOut(cycle());
    const path = ["k.value", "m.value", "k.value"];
    for (const id of ["k.value", "m.value", "n.value"]) {
      expect(results.get(id)).toMatchObject({ state: "failed", problem: { code: "cycle", at: id, path } });
    }
  });

  it("[G3] readers after it fail as upstream, others are unharmed", () => {
    const { results } = workOut(cycle());
    expect(results.get("r.value")).toMatchObject({ problem: { code: "upstream", cause: "n.value" } });
    expect(numberAt(results, "free.value")).toBe(10);
  });

  it("[G3] a line that reads itself is a cycle of one", () => {
    const { results } = workOut(withPlace(own("k", "k.value + 1")));
    expect(results.get("k.value")).toMatchObject({
      problem: { code: "cycle", path: ["k.value", "k.value"] },
    });
  });

  it("[G3] what lies between two cycles is a reader, not a member", () => {
    const { results } = workOut(
      withPlace(
        own("a", "b.value"),
        own("b", "a.value"),
        own("between", "a.value + 1"),
        own("y", "z.value + between.value"),
        own("z", "y.value"),
      ),
    );
    expect(results.get("between.value")).toMatchObject({ problem: { code: "upstream", cause: "a.value" } });
    expect(results.get("y.value")).toMatchObject({ problem: { path: ["y.value", "z.value", "y.value"] } });
  });

  it("[G3] a cycle through a model names the quantities, not the model", () => {
    const round: Model = { name: "round", takes: ["a"], outputs: ["b"], run: () => ({ b: { value: 1 } }) };
    const kinds = {
      x: kind("x", [formula("a", "factor", "b"), output("b", "round", "factor")], { models: [round] }),
    };
    const { results } = workOut(sheet([card("x", "x")]), NOTHING_SETTLED, kinds);
    expect(results.get("x.b")).toMatchObject({ problem: { code: "cycle", path: ["x.a", "x.b", "x.a"] } });
  });

  it("[G3] a circle of ten thousand lines is found without running out of room", () => {
    const lines = Array.from({ length: 10_000 }, (_, at) => own(`l${at}`, `l${(at + 1) % 10_000}.value`));
    const { results } = workOut(withPlace(...lines));
    const result = results.get("l77.value");
    expect(result?.state === "failed" && result.problem.path).toHaveLength(10_001);
  });
});

describe("[G4] the first cause", () => {
  //   bad_late (rank 2) --\
  //   bad_b (rank 0) ------> sum     the least rank is named, then the least name
  //   bad_a (rank 0) ------/
  it("[G4] is the one of least rank, then of least name", () => {
    const worksheet = withPlace(
      card("bad_b", "spring", { width: entry(-1, "m") }),
      card("bad_a", "spring", { width: entry(-1, "m") }),
      own("deep", "place.slope * 2"),
      own("aa_late", "1 / (deep.value - 4)"),
      own("sum", "aa_late.value + bad_b.width / 1 m + bad_a.width / 1 m"),
      own("after", "sum.value + 1"),
    );
    const { results } = workOut(worksheet);
    expect(results.get("aa_late.value")).toMatchObject({ problem: { code: "not_finite" } });
    for (const id of ["sum.value", "after.value"]) {
      expect(results.get(id)).toMatchObject({ problem: { code: "upstream", at: id, cause: "bad_a.width" } });
    }
  });

  it("[G4] its own sentence travels with it", () => {
    const { results } = workOut(
      withPlace(card("a", "spring", { width: entry(2, "gal") }), own("x", "a.yield")),
    );
    const first = results.get("a.width");
    const last = results.get("x.value");
    if (first?.state !== "failed" || last?.state !== "failed") throw new Error("Both should have failed.");
    expect(last.problem.text).toBe(first.problem.text);
  });
});

describe("[G5] no number that is not finite", () => {
  const answers = (value: unknown): CardKinds => ({
    x: kind(
      "x",
      [output("d", "give", "series"), given("a", "factor", [1, "1"]), formula("e", "factor", "a / 0 * a")],
      {
        models: [{ name: "give", takes: [], outputs: ["d"], run: () => ({ d: { value: value as number } }) }],
      },
    ),
  });

  it.each([
    ["NaN", Number.NaN],
    ["infinity", Number.POSITIVE_INFINITY],
    ["a series with a hole", Float64Array.of(1, Number.NaN)],
    ["a list with infinity inside", [[1, Number.NEGATIVE_INFINITY]]],
    ["a plan with NaN inside", { parts: [{ length: Number.NaN }] }],
  ])("[G5] %s from a model becomes a problem", (_, value) => {
    const { results } = workOut(sheet([card("x", "x")]), NOTHING_SETTLED, answers(value));
    expect(results.get("x.d")).toMatchObject({ state: "failed", problem: { code: "not_finite", at: "x.d" } });
  });

  it("[G5] a formula that divides by nothing becomes a problem", () => {
    const { results } = workOut(withPlace(own("x", "1 / (place.slope - 2)")));
    expect(results.get("x.value")).toMatchObject({ problem: { code: "not_finite", at: "x.value" } });
  });

  it("[G5] a typed number too large for SI is refused where it was typed", () => {
    const { results } = workOut(withPlace(card("a", "spring", { width: entry(1e308, "mi") })));
    expect(results.get("a.width")).toMatchObject({ problem: { code: "not_finite", at: "a.width" } });
  });
});

describe("[G6] a wrong document gives problems, never a throw", () => {
  it("[G6] an unknown kind is said, and the rest answers", () => {
    const { results } = workOut(
      withPlace(card("x", "dragon"), card("y", "constructor"), card("a", "spring")),
    );
    expect(results.problems.map(({ code, at }) => [code, at])).toEqual([
      ["unknown_kind", "x"],
      ["unknown_kind", "y"],
    ]);
    expect(numberAt(results, "a.width")).toBe(4);
  });

  it("[G6] a dead link and a wrong link fail at the link, its readers as upstream", () => {
    const { results } = workOut(
      withPlace(card("d", "ditch", { pond: entry("gone") }), card("e", "ditch", { pond: entry("d") })),
    );
    expect(results.get("d.pond")).toMatchObject({ problem: { code: "dead_link", at: "d.pond" } });
    expect(results.get("e.pond")).toMatchObject({ problem: { code: "wrong_link", at: "e.pond" } });
    expect(results.get("d.half")).toMatchObject({ problem: { code: "upstream", cause: "d.pond" } });
  });

  it("[G6] a missing single card fails its readers, and is said once", () => {
    const { results } = workOut(sheet([card("a", "spring"), card("b", "spring")]));
    expect(results.get("a.yield")).toMatchObject({ problem: { code: "upstream", cause: "place.slope" } });
    expect(results.problems.map(({ code, at }) => [code, at])).toEqual([["missing_card", "place"]]);
    expect(numberAt(results, "a.depth")).toBe(2);
  });

  it("[G6] two cards of one name both fail", () => {
    const { results } = workOut(
      withPlace(card("a", "spring"), card("a", "spring", { width: entry(1, "m") })),
    );
    expect(results.get("a.width")).toMatchObject({ problem: { code: "duplicate_id", at: "a.width" } });
    expect(results.problems.map(({ code, at }) => [code, at])).toEqual([["duplicate_id", "a"]]);
  });

  it("[G6] unknown givens are left aside", () => {
    const { results } = workOut(withPlace(card("a", "spring", { sparkle: entry(3, "zorkmid") })));
    expect(results.problems).toEqual([]);
  });

  it("[G6] a kind's formula of a wrong dimension fails at its row", () => {
    const kinds = {
      x: kind("x", [
        given("a", "length", [1, "m"]),
        formula("b", "volume", "a * a"),
        formula("c", "area", "a * nothing"),
      ]),
    };
    const { results } = workOut(sheet([card("x", "x")]), NOTHING_SETTLED, kinds);
    expect(results.get("x.b")).toMatchObject({ problem: { code: "dimension", at: "x.b" } });
    expect(results.get("x.c")).toMatchObject({ problem: { code: "formula", at: "x.c" } });
  });
});

describe("[G7] an unchanged value keeps its object", () => {
  it("[G7] over an edit, only what changed is another object", () => {
    const before = workOut(network());
    const edited = withGiven(before.worksheet, "d", "length", entry(20, "m"));
    const after = evaluate(before.graph, edited, NOTHING_SETTLED, before.results);
    const changed = after.ids.filter((id) => after.get(id) !== before.results.get(id));
    expect([...changed].sort()).toEqual(["d.head", "d.length", "line.value"]);
  });

  it("[G7] an unchanged value stops the wave: its readers are not computed again", () => {
    const worksheet = withPlace(own("x", "max(place.slope, 5)"), own("y", "x.value * 2"));
    const before = workOut(worksheet);
    const after = evaluate(
      before.graph,
      withGiven(worksheet, "place", "slope", entry(3, "1")),
      NOTHING_SETTLED,
      before.results,
    );
    expect(after.recomputed).toContain("x.value");
    expect(after.recomputed).not.toContain("y.value");
    expect(after.get("x.value")).toBe(before.results.get("x.value"));
  });

  it("[G7] equal entries in new objects give the same results", () => {
    const before = workOut(network());
    const after = evaluate(before.graph, structuredClone(network()), NOTHING_SETTLED, before.results);
    for (const id of after.ids) expect(after.get(id)).toBe(before.results.get(id));
  });

  it("[G7] a new graph takes over the objects of what did not change", () => {
    const before = workOut(network());
    const more = { ...before.worksheet, cards: [...before.worksheet.cards, card("q", "pond")] };
    const after = evaluate(buildGraph(more, KINDS), more, NOTHING_SETTLED, before.results);
    for (const id of before.results.ids) {
      if (id !== "p.share") expect(after.get(id), id).toBe(before.results.get(id));
    }
  });

  it("[G7] values leave the graph itself alone; links, lines, measured marks and money do not", () => {
    const { graph, worksheet } = workOut(network());
    const same = (next: typeof worksheet) => graphFor(next, KINDS, graph) === graph;
    expect(same(withGiven(worksheet, "a", "width", entry(7, "m")))).toBe(true);
    expect(same(withGiven(worksheet, "a", "soil", entry("sand")))).toBe(true);
    expect(same({ ...worksheet, title: "Other", units: "us" })).toBe(true);
    expect(same(structuredClone(worksheet))).toBe(true);
    expect(same(withGiven(worksheet, "a", "feeds", entry(null)))).toBe(false);
    expect(same(withGiven(worksheet, "a", "depth", entry(1, "m")))).toBe(false);
    expect(same(withGiven(worksheet, "line", "formula", entry("1 + 1")))).toBe(false);
    expect(same({ ...worksheet, currency: "€" })).toBe(false);
    expect(same({ ...worksheet, cards: worksheet.cards.slice(1) })).toBe(false);
    const measured = worksheet.cards.map((one) =>
      one.id === "a" ? { ...one, measured: { yield: entry(3, "m3") } } : one,
    );
    expect(same({ ...worksheet, cards: measured })).toBe(false);
  });
});

describe("[G8] [G9] heavy answers", () => {
  it("[G8] a missing answer is asked for, pending, and so are its readers", () => {
    const { results } = workOut(withPlace());
    expect(results.requests).toMatchObject([
      { model: "place.forecast", input: { slope: 2, stone: 3 }, record: null },
    ]);
    for (const id of ["place.outlook", "place.outlook_words", "place.twice_outlook"]) {
      expect(results.get(id)).toEqual({ state: "pending", last: null });
    }
  });

  it("[G8] an answer settles it; after an edit the last value is shown, marked as old", () => {
    const first = workOut(withPlace());
    const settled = answering(...first.results.requests);
    const second = evaluate(first.graph, first.worksheet, settled, first.results);
    expect(numberAt(second, "place.twice_outlook")).toBe(12);
    expect(second.requests).toEqual([]);
    const edited = withGiven(first.worksheet, "place", "stone", entry(4, "1"));
    const third = evaluate(first.graph, edited, settled, second);
    expect(third.get("place.outlook")).toEqual({ state: "pending", last: 6 });
    expect(third.get("place.twice_outlook")).toEqual({ state: "pending", last: 12 });
    const again = withGiven(edited, "place", "stone", entry(5, "1"));
    expect(evaluate(first.graph, again, settled, third).get("place.outlook")).toEqual({
      state: "pending",
      last: 6,
    });
  });

  it("[G9] a late answer to other inputs is never shown, and serves again when they come back", () => {
    const first = workOut(withPlace());
    const edited = withGiven(first.worksheet, "place", "stone", entry(4, "1"));
    const second = evaluate(first.graph, edited, NOTHING_SETTLED, first.results);
    const late = answering(...first.results.requests);
    const third = evaluate(first.graph, edited, late, second);
    expect(third.get("place.outlook")).toEqual({ state: "pending", last: null });
    expect(third.requests).toHaveLength(1);
    const back = evaluate(first.graph, first.worksheet, late, third);
    expect(numberAt(back, "place.outlook")).toBe(6);
  });

  it("[G9] the key is the whole text of model, inputs and record", () => {
    const { results } = workOut(withPlace());
    expect(JSON.parse(results.requests[0]?.key ?? "")).toEqual([
      "place.forecast",
      { slope: 2, stone: 3 },
      null,
    ]);
  });

  it("[G8] a failed input is no reason to ask", () => {
    const { results } = workOut(withGiven(withPlace(), "place", "slope", entry(99, "1")));
    expect(results.requests).toEqual([]);
    expect(results.get("place.outlook")).toMatchObject({
      problem: { code: "upstream", cause: "place.slope" },
    });
  });
});

describe("records", () => {
  const record = { key: "r1", rain: Float64Array.of(0.002, 0.003) } as unknown as DailyRecord;
  const wet: Model = {
    name: "wet",
    takes: [],
    record: "record",
    outputs: ["rain"],
    run: ({ record: given_ }) => ({ rain: { value: given_?.rain.reduce((sum, day) => sum + day, 0) ?? -1 } }),
  };
  const kinds = { x: kind("x", [text("record", "r1"), output("rain", "wet", "rain")], { models: [wet] }) };
  const worksheet = sheet([card("x", "x")]);

  it("a record is handed over by its key; one that is not here fails until it comes", () => {
    const without = workOut(worksheet, NOTHING_SETTLED, kinds);
    expect(without.results.get("x.rain")).toMatchObject({ problem: { code: "record", at: "x.rain" } });
    const settled = { answers: new Map(), records: new Map([["r1", record]]) };
    const withIt = evaluate(without.graph, worksheet, settled, without.results);
    expect(numberAt(withIt, "x.rain")).toBe(0.005);
  });
});

describe("[G10] measured values", () => {
  const measured = () =>
    withPlace(
      card("a", "spring", { feeds: entry("p") }, { yield: entry(1000, "L"), depth: entry(1, "m") }),
      card("p", "pond"),
      card("d", "ditch", { pond: entry("p") }, { head: entry(3, "m2") }),
    );

  it("[G10] is marked, read by all readers, and keeps the computed one beside it", () => {
    const { results } = workOut(measured());
    expect(results.get("a.yield")).toEqual({ state: "ready", value: 1, origin: "measured" });
    expect(numberAt(results, "p.water")).toBe(1);
    expect(results.get("a.yield~computed")).toMatchObject({ state: "ready", origin: "computed" });
    expect(numberAt(results, "a.yield~computed")).toBeCloseTo(14.4, 12);
    expect(results.ids).not.toContain("a.yield~computed");
  });

  it("[G10] reads nothing: what the computed one reads no longer reaches its readers", () => {
    const first = workOut(measured());
    const edited = withGiven(first.worksheet, "a", "width", entry(5, "m"));
    const next = evaluate(first.graph, edited, NOTHING_SETTLED, first.results);
    expect(next.recomputed).toContain("a.yield~computed");
    expect(next.recomputed).not.toContain("a.yield");
    expect(next.recomputed).not.toContain("p.water");
  });

  it("[G10] a model may learn from it, and cuts no circle of its own", () => {
    const { results } = workOut(measured());
    expect(numberAt(results, "d.head")).toBe(3);
    expect(numberAt(results, "d.waste")).toBe(1);
    expect(numberAt(results, "d.head~computed")).toBe(0.1);
  });

  it("[G10] a row that cannot be measured says so and is worked out as before", () => {
    const { results } = workOut(measured());
    expect(numberAt(results, "a.depth")).toBe(2);
    expect(results.problems).toMatchObject([{ code: "bad_value", at: "a.depth" }]);
  });

  it("[G10] a measured value of a wrong unit fails at its place", () => {
    const { results } = workOut(withPlace(card("a", "spring", {}, { yield: entry(3, "psi") })));
    expect(results.get("a.yield")).toMatchObject({ problem: { code: "dimension", at: "a.yield" } });
  });

  it("[G10] a measured value of a given stands for it, and the given stays beside it", () => {
    const kinds = { x: kind("x", [given("a", "length", [2, "m"], { measurable: { teaches: "its size" } })]) };
    const { results } = workOut(sheet([card("x", "x", {}, { a: entry(3, "m") })]), NOTHING_SETTLED, kinds);
    expect(results.get("x.a")).toEqual({ state: "ready", value: 3, origin: "measured" });
    expect(results.get("x.a~computed")).toEqual({ state: "ready", value: 2, origin: "given" });
  });
});

describe("[G11] the order of the cards", () => {
  it("[G11] changes no result, problem or request, to the last bit", () => {
    const worksheet = network();
    const reversed = { ...worksheet, cards: worksheet.cards.toReversed() };
    expect(picture(workOut(reversed))).toEqual(picture(workOut(worksheet)));
  });

  it("[G11] sums are put together by the cards' names", () => {
    // 0.1 + 0.2 + 0.3 differs from 0.3 + 0.2 + 0.1 in the last bit.
    const kinds: CardKinds = {
      bit: kind("bit", [given("size", "factor", [0, "1"]), { ...linkRow }]),
      heap: kind("heap", [
        {
          row: "gather",
          name: "all",
          label: "All",
          help: "",
          source: "definition",
          measure: "factor",
          kind: "bit",
          by: "on",
          take: "size",
          how: "sum",
        },
      ]),
    };
    const bit = (id: string, size: number) => card(id, "bit", { size: entry(size, "1"), on: entry("h") });
    const cards = [bit("a", 0.1), bit("b", 0.2), bit("c", 0.3), card("h", "heap")];
    const [there, back] = [cards, cards.toReversed()].map(
      (list) => workOut(sheet(list), NOTHING_SETTLED, kinds).results,
    );
    expect(there && numberAt(there, "h.all")).toBe(0.1 + 0.2 + 0.3);
    expect(back && numberAt(back, "h.all")).toBe(0.1 + 0.2 + 0.3);
  });
});

const linkRow = {
  row: "link",
  name: "on",
  label: "On",
  help: "",
  source: "definition",
  kinds: ["heap"],
  many: false,
  absent: "on nothing",
} as const;
