//   spring a --\
//               > pond p --> ditch d
//   spring b --/        \--> ditch e (nothing chosen)

import { describe, expect, it } from "vitest";
import { card, entry, numberAt, own, sheet, withPlace, workOut } from "./kinds.ts";

const feeds = { feeds: entry("p") };
const base = () =>
  withPlace(
    card("a", "spring", feeds),
    card("b", "spring", { ...feeds, width: entry(6, "m"), rock: entry(1, "m"), soil: entry("sand") }),
    card("p", "pond"),
    card("d", "ditch", { pond: entry("p") }),
    card("e", "ditch"),
  );

describe("givens", () => {
  it("a default, a worked-out default and one picked by a word are used where nothing was entered", () => {
    const { results } = workOut(base());
    expect(numberAt(results, "a.width")).toBe(4);
    expect(numberAt(results, "a.depth")).toBe(2);
    expect(numberAt(results, "a.loss")).toBe(0.1);
    expect(numberAt(results, "b.loss")).toBe(0.5);
    expect(results.get("a.width")).toEqual({ state: "ready", value: 4, origin: "given" });
    expect(results.get("a.depth")).toMatchObject({ origin: "computed" });
  });

  it("an entry is read in its own unit and kept in SI", () => {
    const { results } = workOut(
      withPlace(card("a", "spring", { width: entry(100, "in"), loss: entry(20, "%") })),
    );
    expect(numberAt(results, "a.width")).toBeCloseTo(2.54, 12);
    expect(numberAt(results, "a.loss")).toBeCloseTo(0.2, 12);
  });

  it("an empty given is none with its reason, and so are its readers, with the same cause", () => {
    const { results } = workOut(base());
    const none = { state: "none", reason: "no rock here", cause: "a.rock" };
    expect(results.get("a.rock")).toEqual(none);
    expect(results.get("a.rocky")).toEqual(none);
    expect(numberAt(results, "b.rocky")).toBe(7);
  });

  it.each([
    ["a word for a number", { width: entry("wide", "m") }, "bad_value"],
    ["an unknown unit", { width: entry(3, "zorkmid") }, "unit"],
    ["a volume for a length", { width: entry(3, "gal") }, "dimension"],
    ["a length below its limit", { width: entry(-1, "m") }, "limit"],
    ["an unknown word", { soil: entry("moon") }, "bad_value"],
    ["nothing where a value is needed", { width: entry(null) }, "missing"],
  ])("%s fails that given at its place and its readers as upstream", (_, givens, code) => {
    const { results } = workOut(withPlace(card("a", "spring", givens)));
    const row = "soil" in givens ? "soil" : "width";
    expect(results.get(`a.${row}`)).toMatchObject({ state: "failed", problem: { code, at: `a.${row}` } });
    expect(results.get("a.yield")).toMatchObject({
      state: "failed",
      problem: { code: "upstream", at: "a.yield", cause: `a.${row}` },
    });
    expect(results.problems.map(({ at }) => at)).toEqual([`a.${row}`]);
  });

  it("a limit is told in the unit that was typed", () => {
    const { results } = workOut(withPlace(card("d", "ditch", { length: entry(900, "m") })));
    expect(results.get("d.length")).toMatchObject({
      problem: { text: "The length: at most 500\u00a0m is wanted here." },
    });
  });
});

describe("links and gathers", () => {
  it("a formula reads through its link, and a gather sums, takes the most and lists who points here", () => {
    const { results } = workOut(base());
    // width × depth × slope × 1 m × (1 − loss): 4·2·2·0.9 and 6·3·2·0.5, by hand.
    expect(numberAt(results, "a.yield")).toBeCloseTo(14.4, 12);
    expect(numberAt(results, "b.yield")).toBe(18);
    expect(numberAt(results, "p.water")).toBeCloseTo(32.4, 12);
    expect(numberAt(results, "p.best")).toBe(18);
    expect(results.get("p.feeders")).toMatchObject({ value: ["a", "b"] });
    expect(numberAt(results, "d.half")).toBeCloseTo(16.2, 12);
  });

  it("a gather leaves out what is none, sums nothing to 0, and has no most of nothing", () => {
    const { results } = workOut(
      withPlace(
        card("b", "spring", { feeds: entry("p"), rock: entry(1, "m") }),
        card("a", "spring", feeds),
        card("p", "pond"),
        card("q", "pond"),
      ),
    );
    expect(results.get("p.rocks")).toMatchObject({ value: [1] });
    expect(numberAt(results, "q.water")).toBe(0);
    expect(results.get("q.best")).toMatchObject({ state: "none", reason: "nothing leads here" });
  });

  it("a gather of a failed part fails with the part as its cause", () => {
    const { results } = workOut(
      withPlace(card("a", "spring", { ...feeds, width: entry(-1, "m") }), card("p", "pond")),
    );
    expect(results.get("p.water")).toMatchObject({ problem: { code: "upstream", cause: "a.width" } });
  });

  it("a reader through an empty link is none with the link's reason", () => {
    const { results } = workOut(base());
    expect(results.get("e.half")).toEqual({ state: "none", reason: "no pond chosen", cause: "e.pond" });
    expect(results.get("e.head")).toEqual({ state: "none", reason: "dry", cause: "e.head" });
  });

  it("a row that only some of a link's kinds have does not apply to the others", () => {
    const { results } = workOut(withPlace(card("t", "tee"), card("d", "ditch", { pond: entry("t") })));
    expect(results.get("d.half")).toMatchObject({ state: "none", cause: "t.water" });
  });

  it("a condition that holds makes the row none with its reason, whatever else it reads", () => {
    const { results } = workOut(withPlace(card("d", "ditch", { length: entry(200, "m") })));
    expect(results.get("d.half")).toEqual({ state: "none", reason: "too long to carry", cause: "d.half" });
  });
});

describe("models", () => {
  it("several outputs come from one run, by row name or by quantity id", () => {
    const { results } = workOut(
      withPlace(
        card("a", "spring", feeds),
        card("p", "pond"),
        card("q", "pond"),
        card("d", "ditch", { pond: entry("p") }),
      ),
    );
    expect(numberAt(results, "p.share")).toBe(1);
    expect(numberAt(results, "q.share")).toBe(0);
    expect(numberAt(results, "d.head")).toBeCloseTo(1.44, 12);
  });

  it("what a model throws fails its outputs at their places, once in the list of problems", () => {
    const { results } = workOut(
      withPlace(
        card("a", "spring", { ...feeds, width: entry(50, "m") }),
        card("p", "pond"),
        card("d", "ditch", { pond: entry("p") }),
      ),
    );
    for (const row of ["head", "waste"]) {
      expect(results.get(`d.${row}`)).toMatchObject({
        state: "failed",
        problem: { code: "model", at: `d.${row}`, text: "Too much water for this ditch." },
      });
    }
    expect(results.problems.filter(({ code }) => code === "model")).toHaveLength(1);
  });

  it("an outcome that failed carries its own sentence", () => {
    const { results } = workOut(base());
    expect(results.get("e.waste")).toMatchObject({ problem: { code: "model", text: "No water to waste." } });
  });
});

describe("the user's own lines", () => {
  it("read any quantity by its card's name, other own lines too, in their own unit", () => {
    const { results, graph } = workOut(
      withPlace(card("a", "spring"), own("x", "a.width * 2", "ft"), own("y", "x.value * x.value")),
    );
    expect(numberAt(results, "x.value")).toBe(8);
    expect(numberAt(results, "y.value")).toBe(64);
    expect(graph.siUnitOf("y.value")).toBe("m2");
  });

  it.each([
    ["of a wrong dimension for its unit", "place.slope", "gal", "dimension"],
    ["that adds unlike things", "place.slope + a.width", "", "dimension"],
    ["that names no card", "nobody.width", "", "formula"],
    ["that names no row", "a.depht", "", "formula"],
    ["that names a word", "a.soil * 2", "", "dimension"],
    ["that is broken", "2 * (", "", "formula"],
    ["in an unknown unit", "a.width", "zorkmid", "unit"],
  ])("a line %s fails at its place and leaves the rest alone", (_, formulaText, unit, code) => {
    const { results } = workOut(
      withPlace(card("a", "spring"), own("x", formulaText, unit), own("y", "x.value + 1")),
    );
    expect(results.get("x.value")).toMatchObject({ state: "failed", problem: { code, at: "x.value" } });
    expect(results.get("y.value")).toMatchObject({ problem: { code: "upstream", cause: "x.value" } });
    expect(numberAt(results, "a.width")).toBe(4);
  });

  it("mark the place of what is wrong", () => {
    const { results } = workOut(withPlace(own("x", "1 + nobody.width")));
    expect(results.get("x.value")).toMatchObject({ problem: { span: { start: 4, end: 16 } } });
  });
});

describe("an empty worksheet", () => {
  it("says that the card of the place is missing, and answers nothing else", () => {
    const { results } = workOut(sheet([]));
    expect(results.ids).toEqual([]);
    expect(results.problems).toEqual([
      { code: "missing_card", at: "place", text: 'The card "A place" is missing.' },
    ]);
  });
});
