// A fuse that is offered protects once it is fitted; where none protects, that is said, with what to do.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import { buildGraph } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { cautionIds, type Givens, numberAt, sheetOf, workedOut } from "./made-up-sheets.ts";
import { light, rig, TUB } from "./power-rig.ts";

type Sheet = ReturnType<typeof rig>;

function resultsOf(sheet: Sheet) {
  return evaluate(buildGraph(sheet, CARD_KINDS), sheet, { answers: new Map(), records: new Map() });
}

/** Fits what is offered; what then stands, or the reason why none is offered. */
function fitted(sheet: Sheet): { readonly state: unknown } | { readonly none: string } {
  const offered = resultsOf(sheet).get("lead.fuse_size");
  if (offered?.state === "none") return { none: offered.reason };
  if (offered?.state !== "ready") throw new Error(JSON.stringify(offered));
  const with_it = resultsOf(setGiven(sheet, "lead", "fuse", { value: Number(offered.value), unit: "A" }));
  const state = with_it.get("lead.fuse_state");
  return { state: state?.state === "ready" ? state.value : state };
}

const GAUGES = ["18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "0.75 mm2", "1.5 mm2", "2.5 mm2"];
const rigFor = (size: string, gauge: string, feet: number, volts: number, pump: Givens = {}) =>
  rig({
    pump: { size, ...pump },
    wire: { gauge, one_way_length: [feet, "ft"] },
    battery: { nominal_voltage: [volts, "V"] },
  });

describe("the fuse offered", () => {
  const SIZES = ["gph_500", "gph_800", "gph_1100", "gph_2000"];
  const RIGS = SIZES.flatMap((size) =>
    ["18 AWG", "16 AWG", "14 AWG", "12 AWG"].flatMap((gauge) =>
      [5, 25, 60].map((feet) => [size, gauge, feet] as const),
    ),
  );

  test.each(RIGS)(
    "for a pump of %s on %s of %d ft is right once fitted, or none is offered",
    (size, gauge, feet) => {
      const answer = fitted(rigFor(size, gauge, feet, 12));
      if ("state" in answer) expect(answer.state).toBe("right");
      else expect(answer.none).toMatch(/thicker/);
    },
  );

  test("is never called unsafe, whatever the rig", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SIZES),
        fc.constantFrom(...GAUGES),
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 6, max: 30, noNaN: true }),
        fc.double({ min: 0.2, max: 20, noNaN: true }),
        fc.option(fc.constantFrom(1.5, 2.5, 3, 5, 10), { nil: null }),
        fc.constantFrom("agm", "lifepo4", "flooded"),
        fc.constantFrom("blade", "mrbf"),
        (size, gauge, feet, volts, amperes, maker, chemistry, kind) => {
          const sheet = rigFor(size, gauge, feet, volts, {
            rated_current: [amperes, "A"],
            maker_fuse: maker === null ? null : [maker, "A"],
          });
          const of = setGiven(sheet, "cell", "chemistry", { value: chemistry, unit: "" });
          const answer = fitted(setGiven(of, "lead", "fuse_kind", { value: kind, unit: "" }));
          if ("state" in answer) expect(answer.state).toBe("right");
        },
      ),
      { numRuns: 60, seed: 20261128 },
    );
  });

  test("is judged by the larger of label and what is drawn here: 24 V on a 12 V pump draws three times as much", () => {
    const wire: Givens = { gauge: "10 AWG", one_way_length: [3, "ft"], fuse: [3, "A"] };
    const high = workedOut(
      rig({ pump: { rated_current: [2, "A"] }, wire, battery: { nominal_voltage: [24, "V"] } }),
    );
    expect(numberAt(high, "bilge.running_current")).toBeGreaterThan(3);
    expect(cautionIds(high)).toContain("lead: under_running_current");
    const offered = high.results.get("lead.fuse_size");
    if (offered?.state === "ready")
      expect(offered.value).toBeGreaterThanOrEqual(1.25 * numberAt(high, "bilge.running_current"));
  });

  test("on lithium without anything that breaks its short is none, with what to do; behind a post fuse it is a blade", () => {
    const at = (post: string) =>
      fitted(rig({ battery: { chemistry: "lifepo4" }, wire: { post_fuse: post } }));
    expect(at("none")).toMatchObject({ none: expect.stringContaining("MRBF or class T") });
    expect(at("mrbf")).toEqual({ state: "right" });
  });
});

describe("behind a panel alone", () => {
  const alone = (wire: Givens, panel: Givens = {}) =>
    workedOut(
      sheetOf({
        tub: ["tank", TUB],
        bilge: ["pump", { powered_by: "sun" }],
        hose: ["delivery", { from: "tub", pump: "bilge" }],
        sun: ["panel", panel],
        lead: ["wire", { feeds: "bilge", ...wire }],
      }),
    );

  test("no fuse can blow, no post is spoken of, and the wire must bear 1.56 times the shorted current", () => {
    const whole = alone({ fuse: [3, "A"], fuse_from_battery: [30, "in"], gauge: "14 AWG" });
    const said = cautionIds(whole).filter((id) => id.startsWith("lead:"));
    expect(said.filter((id) => /fuse|stall|over_/.test(id))).toEqual([]);
    expect(whole.results.get("lead.fuse_size")).toMatchObject({ state: "none" });
    expect(whole.results.get("lead.fuse_state")).toMatchObject({ value: "idle" });
    // Three of 8.8 A shorted: 41 A against the 20 A of 14 AWG.
    const thick = alone({ gauge: "14 AWG" }, { isc: [8.8, "A"], count: [3, "1"] });
    expect(cautionIds(thick)).toContain("lead: panel_over_wire");
    expect(thick.results.get("lead.fuse_state")).toMatchObject({ value: "unsafe" });
  });
});

describe("a wire", () => {
  // 33 CFR 183.425(d)(e) (read): 16 AWG singly, 18 AWG only inside a sheath with others.
  test.each([
    ["18 AWG", "single", true],
    ["1 mm2", "single", true],
    ["16 AWG", "single", false],
    ["18 AWG", "pair", false],
  ] as const)("of %s run as %s is flagged: %j", (gauge, laid, isFlagged) => {
    const said = cautionIds(workedOut(rig({ wire: { gauge, laid } })));
    expect(said.includes("lead: too_thin_alone")).toBe(isFlagged);
  });

  test("carries no current that it cannot: 200 A through 100 ft of 18 AWG is refused, 30 A through it flagged", () => {
    const through = (amperes: number, feet: number) =>
      workedOut(
        rig({
          measured: { current: [amperes, "A"] },
          wire: { gauge: "18 AWG", one_way_length: [feet, "ft"] },
        }),
      );
    const no = through(200, 100);
    expect(no.results.get("lead.drop")).toMatchObject({ state: "none" });
    expect(no.results.get("hose.arriving_voltage")).toMatchObject({ state: "failed" });
    expect(cautionIds(through(30, 2))).toContain("lead: over_carry");
    expect(light(rig({}))("hose.arriving_voltage")).toBeGreaterThan(0);
  });
});
