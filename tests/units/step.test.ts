import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sliderRange, stepFor } from "../../src/units/step.ts";

describe("the step of an arrow key", () => {
  it.each([
    [20, "gal", 1],
    [55, "gal", 2],
    [275, "gal", 10],
    [0.75, "in", 0.02],
    [0, "ft", 1],
    [68, "degF", 1],
    [0, "degC", 1],
    [90, "%", 1],
    [0.5, "%", 0.02],
    [-20, "ft", 1],
  ])("of %d %s is %d", (value, unit, step) => {
    expect(stepFor(value, unit)).toBe(step);
  });

  it("is 1, 2 or 5 times a power of ten and between a fiftieth and a twentieth of the value", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
        const step = stepFor(value, "gal");
        expect(step.toExponential(6)).toMatch(/^[125]\.000000e/);
        expect(step / value).toBeLessThanOrEqual(0.05 * (1 + 1e-8));
        expect(step / value).toBeGreaterThan(0.0199);
      }),
    );
  });
});

describe("the slider around a value", () => {
  it.each([
    [20, "gal", 0, 40],
    [90, "%", 0, 100],
    [68, "degF", 48, 88],
    [0, "ft", 0, 10],
    [-3, "ft", -5, 0],
    [55, "gal", 0, 100],
  ])("of %d %s runs from %d to %d", (value, unit, min, max) => {
    expect(sliderRange(value, unit)).toMatchObject({ min, max });
  });

  it("holds the value, keeps to the limits where the value does, and has a step", () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (value, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const { min, max, step } = sliderRange(value, "gal", low, high);
        expect(min).toBeLessThanOrEqual(value);
        expect(max).toBeGreaterThanOrEqual(value);
        expect(step).toBeGreaterThan(0);
        if (value >= low && value <= high) {
          expect(min).toBeGreaterThanOrEqual(low);
          expect(max).toBeLessThanOrEqual(high);
        }
      }),
    );
  });
});
