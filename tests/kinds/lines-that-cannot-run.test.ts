// A line that cannot run carries nothing anywhere, whatever the cause: the same place with the line laid uphill, over a hump
// that no siphon lifts or that nobody primes, and with a hose of no length, tells the same of its water.

import { describe, expect, test } from "vitest";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { baseOf } from "../../src/studies/ask.ts";
import { givesOut } from "../../src/studies/gives-out.ts";
import { toSi } from "../../src/units/unit.ts";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const BED: Givens = {
  length: [20, "ft"],
  width: [4, "ft"],
  watered_by: ["cans"],
  contents: [[{ crop: "tomato", planted: "05-15", share: 1 }], ""],
};

/** A big tank under a roof, a tub with a little roof of its own, a hose between them, a bed watered from the tub. */
function sheet(hose: Givens, upper: Givens = {}): Worksheet {
  return sheetOf({
    barn: ["roof", { footprint: [600, "ft2"], drains_to: "upper" }],
    shed: ["roof", { footprint: [40, "ft2"], drains_to: "tub" }],
    upper: ["tank", { capacity: [1000, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"], ...upper }],
    tub: ["tank", { capacity: [50, "gal"], water_height: [24, "in"], outlet_height: [0, "in"] }],
    feed: ["line", { from: "upper", to: "tub", length: [150, "ft"], shut_level: [20, "in"], ...hose }],
    cans: ["carry", { from: "tub" }],
    bed_one: ["bed", BED],
  });
}

const place = (hose: Givens, upper: Givens = {}): Whole => workedOut(sheet(hose, upper));

const over = (feet: number): Givens["route"] => [
  [
    [0, 4],
    [20, feet],
    [150, 1],
  ],
  "ft, ft",
];

const ANSWERS = [
  "upper.reachable",
  "upper.days_of_autonomy",
  "tub.reachable",
  "tub.days_of_autonomy",
  "season.reachable",
  "season.days_of_autonomy",
  "season.binding",
  "season.days_short",
  "season.share_met",
];

function told(whole: Whole): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    ANSWERS.map((id) => {
      const result = whole.results.get(id);
      return [id, result?.state === "ready" ? result.value : result?.state];
    }),
  );
}

describe("a line that cannot run", () => {
  // The upper tank stands so low that its brim is under the tub's float.
  const uphill = place({}, { ground_height: [-10, "ft"] });
  const running = place({});

  test.each([
    ["over a hump that no siphon lifts", place({ route: over(60), primed: "yes" })],
    ["over a hump above the brim that nobody primes", place({ route: over(9) })],
    ["of no length", place({ length: [0, "ft"] })],
  ])("%s leaves the water as the same line laid uphill does", (_name, whole) => {
    expect(told(whole)).toEqual(told(uphill));
  });

  test("gives out first where it is all that water lacks, of no length as laid uphill", () => {
    const firstOf = (one: Worksheet) => {
      const answer = givesOut(baseOf(one, CARD_KINDS));
      if ("failed" in answer || answer.state !== "first") throw new Error(JSON.stringify(answer));
      return answer;
    };
    const laid = firstOf(sheet({}, { ground_height: [-10, "ft"] }));
    const none = firstOf(sheet({ length: [0, "ft"] }));
    expect(none.short).toEqual(laid.short);
    expect(none.first.map(({ bounds }) => bounds)).toEqual([["line"]]);
    expect(none.first).toEqual(laid.first);
  });

  test("makes none of the upper tank's water reachable, and counts in no autonomy", () => {
    expect(numberAt(uphill, "upper.reachable")).toBe(0);
    expect(numberAt(uphill, "upper.days_of_autonomy")).toBe(0);
    // 50 gal of the tub alone.
    expect(numberAt(uphill, "season.reachable")).toBeCloseTo(toSi(50, "gal"), 12);
    expect(numberAt(uphill, "season.days_of_autonomy")).toBe(numberAt(uphill, "tub.days_of_autonomy"));
    expect(numberAt(running, "season.reachable")).toBeGreaterThan(toSi(900, "gal"));
  });
});

describe("a line that leaves a joint", () => {
  const joined = (main: Givens) =>
    workedOut(
      sheetOf({
        upper: ["tank", { capacity: [1000, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"] }],
        joint: ["tee", { height: [2, "ft"] }],
        tub: ["tank", { capacity: [50, "gal"], water_height: [24, "in"], outlet_height: [0, "in"] }],
        main: ["line", { from: "upper", to: "joint", length: [150, "ft"], valve_bore: null, ...main }],
        branch: ["line", { from: "joint", to: "tub" }],
        cans: ["carry", { from: "tub" }],
        bed_one: ["bed", BED],
      }),
    );

  test("carries nothing where nothing fills the joint, and the tank behind it serves no bed by it", () => {
    const [dry, wet] = [joined({ route: over(60), primed: "yes" }), joined({})];
    expect(numberAt(wet, "season.reachable")).toBeGreaterThan(toSi(900, "gal"));
    expect(numberAt(dry, "season.reachable")).toBeCloseTo(toSi(50, "gal"), 12);
    expect(numberAt(dry, "upper.reachable")).toBe(0);
    expect(dry.results.get("joint.head")).toMatchObject({ state: "none" });
  });
});
