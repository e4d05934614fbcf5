// A drop that was measured stands for the one of the cards' heights, for every reader of it: the season too.

import { describe, expect, test } from "vitest";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

function place(tubGround: number, line: Givens, measured: Givens): Whole {
  return workedOut(
    sheetOf({
      shed: ["roof", { footprint: [300, "ft2"], drains_to: "upper" }],
      upper: ["tank", { capacity: [800, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"] }],
      tub: [
        "tank",
        {
          capacity: [50, "gal"],
          water_height: [24, "in"],
          outlet_height: [0, "in"],
          ground_height: [tubGround, "ft"],
        },
      ],
      feed: ["line", { from: "upper", to: "tub", length: [150, "ft"], ...line }, measured],
      cans: ["carry", { from: "tub" }],
      plot: ["bed", { watered_by: ["cans"], length: [30, "ft"] }],
    }),
  );
}

const ROWS = [
  "feed.head",
  "feed.flow",
  "feed.refill_time",
  "feed.last_flow_height",
  "upper.reachable",
  "upper.mean_yearly_spill",
  "upper.lowest_level",
  "tub.lowest_level",
  "season.got",
  "season.reachable",
];

/** Heights that measuring does not move, so that the two places are told by other heights of the same tanks. */
const AS_HIGH = new Set(["feed.last_flow_height"]);

describe.each([
  ["a float", 3.5, {}],
  ["an open end", 4.5, { valve_bore: null, check_valve: "yes" }],
  ["an open end that runs both ways", 4.5, { valve_bore: null }],
] as const)("with %s", (_, wrongBy: number, line: Givens) => {
  // In truth the far tank stands this many feet higher than was written down.
  const surveyed = place(wrongBy, line, {});
  const drop = numberAt(surveyed, "feed.head");
  const measured = place(0, line, { head: [drop, "m"] });

  test("a measured drop does to flow, refill and season what tanks that much nearer in height do", () => {
    for (const id of ROWS) {
      if (surveyed.results.get(id)?.state === "none")
        expect(measured.results.get(id)?.state, id).toBe("none");
      else if (!AS_HIGH.has(id)) expect(numberAt(measured, id), id).toBeCloseTo(numberAt(surveyed, id), 6);
    }
    expect(numberAt(measured, "feed.last_flow_height")).toBeCloseTo(
      numberAt(surveyed, "feed.last_flow_height"),
      9,
    );
    expect(Math.abs(numberAt(measured, "season.balance_error"))).toBeLessThan(1e-9);
  });

  test("and moves the season that the heights alone would give", () => {
    const heights = place(0, line, {});
    expect(numberAt(heights, "feed.head")).toBeGreaterThan(drop + 0.5);
    expect(numberAt(heights, "upper.reachable")).toBeGreaterThan(numberAt(measured, "upper.reachable"));
    expect(numberAt(heights, "season.got")).not.toBeCloseTo(numberAt(measured, "season.got"), 3);
  });
});

test("a drop measured as none stops the line, and the season says so", () => {
  const whole = place(0, {}, { head: [-2, "ft"] });
  expect(numberAt(whole, "upper.reachable")).toBeLessThan(numberAt(place(0, {}, {}), "upper.reachable"));
  const wholly = place(0, {}, { head: [-20, "ft"] });
  expect(wholly.results.get("feed.blocked")).toMatchObject({ state: "ready" });
});
