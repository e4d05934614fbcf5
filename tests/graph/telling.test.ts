// What a reader is told: values with units, workings, cautions, how far a number moved.

import { describe, expect, it } from "vitest";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import { explain } from "../../src/graph/explain.ts";
import { movement } from "../../src/graph/moved.ts";
import { shownOf, shownValue } from "../../src/graph/shown.ts";
import type { CardKinds, Caution } from "../../src/graph/types.ts";
import type { ShowOptions } from "../../src/units/show.ts";
import {
  card,
  entry,
  formula,
  given,
  kind,
  NOTHING_SETTLED,
  own,
  sheet,
  type Worked,
  withGiven,
  withPlace,
  workOut,
} from "./kinds.ts";

const METRIC: ShowOptions = { units: "metric", locale: "en-US", currency: "$" };
const US: ShowOptions = { ...METRIC, units: "us" };
const plain = (text: string) => text.replaceAll("\u00a0", " ");

const network = () =>
  withPlace(
    card("a", "spring", { feeds: entry("p"), width: entry(100, "in") }),
    card("b", "spring", { feeds: entry("p"), rock: entry(1, "m") }, { yield: entry(2, "m3") }),
    card("p", "pond"),
    card("d", "ditch", { pond: entry("p") }),
    own("line", "p.water / d.length"),
  );

const show = ({ graph, worksheet, results }: Worked, id: string, options = METRIC) =>
  plain(shownValue(graph, worksheet, results, id, options));
const tell = ({ graph, worksheet, results }: Worked, id: string, options = METRIC) =>
  explain(graph, worksheet, results, id, options, {});

describe("shown values", () => {
  it("a given stands in the unit that was typed, a result in the worksheet's", () => {
    const worked = workOut(network());
    expect(show(worked, "a.width")).toBe("100 in");
    expect(show(worked, "b.width")).toBe("4 m");
    expect(show(worked, "b.width", US)).toBe("13.1 ft");
    expect(show(worked, "b.yield")).toBe("2 m³");
    expect(show(worked, "b.yield~computed", US)).toBe("3,804 gal");
  });

  it("words stand by their labels, links and ids by the titles of their cards, none by its reason", () => {
    const worked = workOut(network());
    expect(show(worked, "a.soil")).toBe("Clay");
    expect(show(worked, "a.feeds")).toBe("Card p");
    expect(show(worked, "p.feeders")).toBe("Card a, Card b");
    expect(show(worked, "a.rock")).toBe("no rock here");
    expect(show(worked, "p.rocks")).toBe("1 value");
  });

  it("an own line stands in its own unit, or in the one that suits its dimension", () => {
    const worked = workOut(
      withPlace(
        card("a", "spring"),
        own("x", "a.width * 1 m", "ft2"),
        own("y", "a.width * 1 m"),
        own("z", "a.width / 1 s / 1 s"),
      ),
    );
    expect(show(worked, "x.value")).toBe("43.1 ft²");
    expect(show(worked, "y.value")).toBe("4 m²");
    expect(show(worked, "z.value")).toBe("4 m/s²");
  });

  it("a date stands as its locale writes it", () => {
    const date = {
      row: "date",
      name: "on",
      label: "On",
      help: "",
      source: "",
      form: "month_day",
      default: "05-15",
    } as const;
    const worked = workOut(sheet([card("x", "x")]), NOTHING_SETTLED, { x: kind("x", [date]) });
    expect(show(worked, "x.on")).toBe("May 15");
    expect(show(worked, "x.on", { ...METRIC, locale: "en-GB" })).toBe("15 May");
  });
});

describe("the working of a number", () => {
  it("puts labels, then numbers with units, in the formula that ran", () => {
    const working = tell(workOut(network()), "d.half");
    expect(working).toMatchObject({
      label: "The half",
      cardTitle: "Card d",
      origin: "computed",
      source: "definition",
      words: "Words on half.",
    });
    expect(plain(working.formula)).toBe("The water (Card p) ÷ 2");
    expect(plain(working.numbers)).toMatch(/^[\d,.]+ L ÷ 2$/);
    // The length is read by its condition.
    expect(working.reads).toEqual(["d.length", "p.water"]);
  });

  it("lists the parts of a sum by the titles of their cards, and those left out with their reason", () => {
    const worked = workOut(network());
    expect(plain(tell(worked, "p.water").numbers)).toMatch(/^Card a [\d,.]+ L \+ Card b 2 m³$/);
    expect(plain(tell(worked, "p.rocks").numbers)).toBe("Card b 1 m; Card a left out (no rock here)");
  });

  it("of a model says what it was given", () => {
    const working = tell(workOut(network()), "d.head");
    expect(working.inputs.map(({ id }) => id)).toEqual(["d.length", "p.water"]);
    expect(working.inputs[0]?.shown.replace("\u00a0", " ")).toBe("10 m");
    expect(working.words).toBe("Words on head.");
  });

  it("of a measured number keeps the computed one beside it and reads nothing", () => {
    const working = tell(workOut(network()), "b.yield");
    expect(working).toMatchObject({
      origin: "measured",
      reads: [],
      words: "Measured. It teaches what the spring gives.",
    });
    // 4 m × 2 m × 2 × 1 m × 0.9
    expect(plain(working.computedTwin?.shown ?? "")).toBe("14,400 L");
    expect(working.feeds).toContain("p.water");
  });

  it("of a given says where it came from", () => {
    const worked = workOut(withPlace(card("a", "spring", { width: { value: 3, unit: "m", from: "label" } })));
    expect(tell(worked, "a.width")).toMatchObject({ origin: "given", from: "label" });
    expect(tell(worked, "a.loss")).toMatchObject({ origin: "given", from: "default" });
  });

  it("of a failed number says why and where it began", () => {
    const working = tell(workOut(withPlace(card("a", "spring", { width: entry(2, "gal") }))), "a.yield");
    expect(working).toMatchObject({ cause: "a.width", numbers: "" });
    expect(working.reason).toContain("The width");
  });

  it("of something that is not there has nothing but a reason", () => {
    expect(tell(workOut(network()), "nobody.width").reason).toBe("There is no such quantity.");
  });
});

describe("cautions", () => {
  const caution = (id: string, more: Partial<Caution>): Caution => ({
    id,
    text: "Mind it.",
    beside: "height",
    source: "definition",
    weight: "note",
    ...more,
  });
  const kinds = (...cautions: readonly Caution[]): CardKinds => ({
    x: kind(
      "x",
      [
        given("height", "height", [1, "m"]),
        given("hole", "height", null, { absent: "no hole" }),
        formula("twice", "height", "height * 2"),
      ],
      { cautions },
    ),
  });
  const told = (height: number, ...cautions: readonly Caution[]) => {
    const { graph, worksheet, results } = workOut(
      sheet([card("x", "x", { height: entry(height, "m") })]),
      NOTHING_SETTLED,
      kinds(...cautions),
    );
    return cautionsOf(graph, worksheet, results, METRIC, {}).map(({ text }) => plain(text));
  };

  it("hold where their condition does, with numbers put in", () => {
    const high = caution("high", { if: "twice > 3 m", text: "It stands {twice} high." });
    expect(told(1, high)).toEqual([]);
    expect(told(2, high)).toEqual(["It stands 4 m high."]);
  });

  it("hold always without a condition, and not where the condition cannot be told", () => {
    expect(told(1, caution("always", {}), caution("never", { if: "hole > 0 m" }))).toEqual(["Mind it."]);
  });

  it("hold where a row is none, or is a word", () => {
    expect(
      told(1, caution("none", { where: { row: "hole", state: "none" }, text: "No hole: {hole}." })),
    ).toEqual(["No hole: (not known: no hole)."]);
    expect(told(1, caution("none", { where: { row: "height", state: "none" } }))).toEqual([]);
  });

  it("whose condition names nothing are problems of the worksheet", () => {
    const { results } = workOut(
      sheet([card("x", "x")]),
      NOTHING_SETTLED,
      kinds(caution("bad", { if: "nothing > 1" })),
    );
    expect(results.problems).toMatchObject([{ code: "formula", at: "x.height" }]);
  });
});

describe("what a number was before it moved", () => {
  it("is told in its own unit; nothing where a reader sees no difference", () => {
    const { graph, worksheet, results } = workOut(network());
    const edited = withGiven(worksheet, "a", "width", entry(110, "in"));
    const after = evaluate(graph, edited, NOTHING_SETTLED, results);
    const moved = (id: string) => movement(graph, edited, results, after, id, METRIC);
    expect(moved("a.width")).toEqual({ was: "100\u00a0in" });
    expect(moved("b.width")).toBeNull();
    const water = results.get("p.water");
    const node = graph.nodes.find(({ id }) => id === "p.water");
    if (water?.state !== "ready" || !node) throw new Error("p.water is not ready");
    expect(moved("p.water")).toEqual({ was: shownOf(worksheet, node, water.value, METRIC) });
  });

  it("is measured from the last answer that was seen, where a newer one was still waited for", () => {
    const { graph, worksheet, results } = workOut(network());
    const id = "p.water";
    const before = results.get(id);
    if (before?.state !== "ready") throw new Error("p.water is not ready");
    const waited = {
      ...results,
      get: (name: string) =>
        name === id ? ({ state: "pending", last: before.value } as const) : results.get(name),
    };
    const edited = withGiven(worksheet, "a", "width", entry(110, "in"));
    const after = evaluate(graph, edited, NOTHING_SETTLED, results);
    expect(movement(graph, edited, waited, after, id, METRIC)).toEqual(
      movement(graph, edited, results, after, id, METRIC),
    );
    expect(movement(graph, edited, waited, after, id, METRIC)).not.toBeNull();
  });
});
