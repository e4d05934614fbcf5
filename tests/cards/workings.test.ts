// What a solver answers is shown with a relation that the answer satisfies: the sum must come out, with a pencil too.

import { describe, expect, test } from "vitest";
import { explain } from "../../src/graph/explain.ts";
import { nodeOf } from "../../src/graph/network.ts";
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
  const { numbers, shown } = explain(whole.graph, whole.worksheet, whole.results, id, US);
  return `${numbers} = ${shown}`.replaceAll(/[\u00a0\u202f]/g, " ");
}

const SHEETS: readonly (readonly [string, Whole])[] = [
  ["with a valve", fed({ valve_bore: [6.4, "mm"] })],
  ["with an open end", fed({ valve_bore: null })],
  ["too slow to be turbulent", fed({ valve_bore: [0.2, "mm"] })],
];

describe("a line's working", () => {
  test.each(SHEETS)("%s: every relation comes out at what the solver found, to 1e-9", (_, whole) => {
    const values = whole.results.inside.values;
    for (const name of ["flow", "velocity", "reynolds", "friction_head"]) {
      const node = nodeOf(whole.graph, `feed.${name}`);
      const relations = node?.work.kind === "output" ? node.work.relations : [];
      const known = relations.filter((step) =>
        step.sources.every(
          (source) => source.node !== null && whole.results.get(source.node.id)?.state === "ready",
        ),
      );
      expect(known.length, name).toBeGreaterThan(0);
      for (const step of known)
        expect(step.run(values) / numberAt(whole, `feed.${name}`), name).toBeCloseTo(1, 6);
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
      /× .*9\.80665 m\/s2 × \(5 ft − [\d.]+ (ft|in)\).* = [\d.]+ gpm/,
    );
    const open = fed({ valve_bore: null });
    expect(working(open, "feed.flow")).toMatch(/ft\/s × 0\.785398 × .* = [\d.]+ gpm/);
  });
});
