import { describe, expect, test } from "vitest";
import { argumentBounds, FUNCTIONS } from "../../src/formula/functions.ts";
import { parseUnit } from "../../src/units/unit.ts";
import { answerOf } from "./world.ts";

describe("the table of functions", () => {
  test.each([...FUNCTIONS.values()].map((row) => [row.name, row] as const))(
    "%s has a name to type, words to show, a source and units that can be read",
    (name, row) => {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(row.shown.length).toBeGreaterThan(3);
      expect(row.source).not.toBe("");
      const { least, most } = argumentBounds(row.signature);
      expect(least).toBeGreaterThan(0);
      expect(most).toBeGreaterThanOrEqual(least);
      const units = row.signature.rule === "fixed" ? [...row.signature.takes, row.signature.gives] : [];
      for (const unit of units) {
        // Numbers pass in SI, so a declared unit must be a coherent one.
        expect(parseUnit(unit)).toMatchObject({ factor: 1, offset: 0 });
      }
    },
  );

  test("no two functions are shown by the same words", () => {
    const words = [...FUNCTIONS.values()].map((row) => row.shown);
    expect(new Set(words).size).toBe(words.length);
  });

  // Values of textbook mathematics.
  test.each([
    ["sqrt(16)", 4],
    ["floor(2.7) + ceil(2.1) + round(2.5)", 8],
    ["ln(exp(2))", 2],
    ["log10(1000)", 3],
    ["sin(30 deg)", 0.5],
    ["cos(60 deg)", 0.5],
    ["tan(45 deg)", 1],
    ["clamp(9, 1, 5) + clamp(-9, 1, 5) + clamp(3, 1, 5)", 9],
    ["abs(-3) + min(4, 2, 9) + max(4, 2, 9)", 14],
  ])("%s is %d", (text, value) => {
    expect(answerOf(text)).toBeCloseTo(value, 12);
  });

  test("a physics function outside its range throws for the graph to catch", () => {
    expect(() => answerOf("water_density(90 degC)")).toThrow(/water temperature/);
  });
});
