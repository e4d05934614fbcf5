// What a solver answers is shown with a relation that the answer satisfies: the sum must come out, with a pencil too.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { explain } from "../../src/graph/explain.ts";
import { nodeOf } from "../../src/graph/nodes.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { readWorksheetText } from "../document/read-text.ts";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const US = { units: "us", locale: "en-US", currency: "$" } as const;
const UPPER: Givens = { capacity: [1000, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"] };

function fed(line: Givens): Whole {
  return workedOut(
    sheetOf({
      upper: ["tank", { ...UPPER, reference_share: [100, "%"] }],
      tub: ["tank", { capacity: [50, "gal"], water_height: [24, "in"], outlet_height: [0, "in"] }],
      feed: ["line", { from: "upper", to: "tub", ...line }],
    }),
  );
}

function working(whole: Whole, id: string): string {
  const { numbers, shown } = explain(whole.graph, whole.worksheet, whole.results, id, US, KIND_WORDS);
  return `${numbers} = ${shown}`.replaceAll(/[\u00a0\u202f]/g, " ");
}

const SHEETS: readonly (readonly [string, Whole])[] = [
  ["with a valve", fed({ valve_bore: [6.4, "mm"] })],
  ["with an open end", fed({ valve_bore: null })],
  ["too slow to be turbulent", fed({ valve_bore: [0.2, "mm"] })],
];

/** Relations whose numbers are all known, as they come out over what the model answered; 1 for both nothing. */
function ratios(whole: Whole, id: string): readonly number[] {
  const { work } = nodeOf(whole.graph, id) ?? {};
  const known = (work?.kind === "output" ? work.relations() : []).filter((step) =>
    step.sources.every(
      (source) => source.node !== null && whole.results.get(source.node.id)?.state === "ready",
    ),
  );
  const found = numberAt(whole, id);
  return known.map((step) => {
    const answer = step.run(whole.results.inside.values);
    return Math.abs(answer - found) < 1e-12 ? 1 : answer / found;
  });
}

// A quarter of pi is written with six digits in the working, which is two parts in ten million short.
const DIGITS = 6;

describe("a line's working", () => {
  test.each(SHEETS)("%s: every relation comes out at what the solver found, to a millionth", (_, whole) => {
    for (const name of ["flow", "velocity", "reynolds", "friction_head"]) {
      const found = ratios(whole, `feed.${name}`);
      expect(found.length, name).toBeGreaterThan(0);
      for (const ratio of found) expect(ratio, name).toBeCloseTo(1, DIGITS);
    }
  });

  test("the drop is the upper water less the end, with the numbers put in", () => {
    // The upper tank stands at 4 ft with half of its 4 ft of water; the tub's float shuts at its default level.
    const whole = fed({ shut_level: [12, "in"], reference_share: [50, "%"] });
    expect(working(whole, "feed.head")).toBe("6 ft − 1 ft = 5 ft");
  });

  test("the flow through a valve is shown as its opening times the speed that is left for it", () => {
    const whole = fed({ shut_level: [12, "in"], reference_share: [50, "%"] });
    expect(working(whole, "feed.flow")).toMatch(
      /× .*9\.80665 m\/s² × \(5 ft − [\d.]+ (ft|in)\).* = [\d.]+ gpm/,
    );
    const open = fed({ valve_bore: null });
    expect(working(open, "feed.flow")).toMatch(/ft\/s × 0\.785398 × .* = [\d.]+ gpm/);
  });
});

describe("a pump's working", () => {
  const parts = (pump: Givens, hose: Givens, measured: Givens = {}, watts = 60): Whole =>
    workedOut(
      sheetOf({
        tub: ["tank", { capacity: [100, "gal"], water_height: [4, "ft"] }],
        bilge: ["pump", { powered_by: "cell", ...pump }],
        hose: ["delivery", { from: "tub", pump: "bilge", ...hose }, measured],
        lead: ["wire", { feeds: "bilge", gauge: "2.5 mm2", one_way_length: [40, "ft"] }],
        cell: ["battery", { test_load: [watts, "W"] }, measured["test_time"] ? measured : {}],
      }),
    );
  const holed: Givens = { rose_holes: [80, "1"], rose_hole: [1.2, "mm"] };

  test.each([
    ["by its label", parts({}, {})],
    ["through a rose", parts({}, holed)],
    [
      "as a data sheet has it",
      parts(
        {
          curve: [
            [
              [30, 0],
              [16, 2],
            ],
            "L/min, m",
          ],
        },
        { head_k: [20, "1"] },
      ),
    ],
    ["downhill", parts({}, { outlet_height: [-6, "ft"], hose_length: [5, "ft"] })],
    ["with a bucket", parts({}, { ...holed, bucket_volume: [5, "gal"], bucket_time: [3, "min"] })],
    ["with a bucket that beats it", parts({}, { bucket_volume: [5, "gal"], bucket_time: [30, "s"] })],
    ["with a flow measured", parts({}, {}, { flow: [2, "gpm"] })],
    ["with a current measured", parts({}, {}, { current: [3, "A"] })],
    ["from a tested battery", parts({}, {}, { test_time: [2, "h"] })],
    ["from one that outlasts its label", parts({}, {}, { test_time: [25, "h"] }, 10)],
  ])("%s: every relation comes out at what was found, to a millionth", (_, whole) => {
    const ids = whole.graph.ids.filter((id) => {
      const { work } = nodeOf(whole.graph, id) ?? {};
      return (
        /^(bilge|hose|lead|cell)\./.test(id) &&
        work?.kind === "output" &&
        work.relations().length > 0 &&
        whole.results.get(id)?.state === "ready"
      );
    });
    expect(ids.length).toBeGreaterThan(3);
    for (const id of ids) for (const ratio of ratios(whole, id)) expect(ratio, id).toBeCloseTo(1, DIGITS);
  });

  test("its flow is shown by its curve, with the numbers put in, and its current too", () => {
    const whole = parts({}, {});
    expect(working(whole, "hose.flow")).toMatch(/gpm × the square root of .*1 − [\d.]+ ft ÷ .* = [\d.]+ gpm/);
    expect(working(whole, "hose.current")).toMatch(/1\.2 A \+ .*2 A − 1\.2 A.* = [\d.]+ A/);
    expect(working(whole, "lead.resistance")).toMatch(/Ω × .*0\.00393.* = [\d.]+ Ω/);
  });
});

const FOLDER = new URL("../../templates/", import.meta.url);

describe.each(readdirSync(FOLDER))("in the template %s", (name) => {
  const read = readWorksheetText(readFileSync(new URL(name, FOLDER), "utf8"));
  if (!read.ok) throw new Error(`${name} cannot be read`);
  const whole = workOut(read.worksheet, CARD_KINDS);

  test("every relation of the tables can be read, and is of its row's kind of quantity", () => {
    for (const { id, row, work } of whole.graph.nodes)
      if (work.kind === "output" && row?.row === "output")
        expect(work.relations(), id).toHaveLength(row.relations?.length ?? 0);
  });

  test("every relation shown beside a model's answer comes out at it, to a millionth", () => {
    const shown = whole.graph.ids.filter((id) => whole.results.get(id)?.state === "ready");
    const found = shown.flatMap((id) => {
      const { work } = nodeOf(whole.graph, id) ?? {};
      return work?.kind === "output" && work.relations().length > 0
        ? [{ id, ratios: ratios(whole, id) }]
        : [];
    });
    expect(found.length).toBeGreaterThan(0);
    for (const { id, ratios } of found) for (const ratio of ratios) expect(ratio, id).toBeCloseTo(1, DIGITS);
  });
});

test("a bed's need, how long a watering lasts and its soak are shown with the numbers put in", () => {
  const read = readWorksheetText(readFileSync(new URL("hillside-totes.json", FOLDER), "utf8"));
  if (!read.ok) throw new Error("the template cannot be read");
  const whole = workOut(read.worksheet, CARD_KINDS);
  for (const name of [
    "season_need",
    "watering_volume",
    "watering_interval",
    "soak_pass_volume",
    "soak_time",
  ]) {
    expect(working(whole, `long_bed.${name}`), name).toMatch(/\d.* [÷×] .*\d.* = \d/);
    expect(ratios(whole, `long_bed.${name}`), name).toEqual([expect.closeTo(1, 9)]);
  }
});
