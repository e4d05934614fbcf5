import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { placeOn, roundAt, roundStep, roundValuesOf, scaleBetween, scaleIn } from "../../src/units/scale.ts";

const sized = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
/** Any scale that somebody could turn a number over: even or in ratios, of whole numbers or not. */
const scales = fc
  .tuple(fc.double({ min: -1e5, max: 1e5, noNaN: true }), sized, fc.boolean(), fc.boolean())
  .map(([start, size, whole, positive]) =>
    positive
      ? scaleBetween(size / 1e3, (size / 1e3) * (2 + Math.abs(start)), "gal", whole)
      : scaleBetween(start, start + size, "gal", whole),
  )
  .filter(({ low, high, whole }) => !whole || high - low >= 2);

const places = fc.double({ min: 0, max: 1, noNaN: true });

const isMultiple = (value: number, step: number) =>
  Math.abs(value / step - Math.round(value / step)) <= 1e-6 * Math.max(1, Math.abs(value / step));

describe("round steps", () => {
  test.each([
    [20, 5000, "gal", 275, 300, 250],
    [20, 5000, "gal", 500, 525, 475],
    [20, 5000, "gal", 1000, 1050, 975],
    [20, 5000, "gal", 55, 56, 54],
    [0, 90, "deg", 35, 36, 34],
    [0, 6, "ft", 0, 0.1, 0],
    [1, 12, "1", 2, 3, 1],
    [0.375, 1.5, "in", 0.625, 0.63, 0.62],
  ])("from %d to %d %s, %d goes up to %d and down to %d", (low, high, unit, from, up, down) => {
    const scale = scaleBetween(low, high, unit, unit === "1");
    expect(roundStep(scale, from, 1)).toBe(up);
    expect(roundStep(scale, from, -1)).toBe(down);
  });

  test.each([
    [0, 900, "s", 300, 315, 285],
    [1, 3600, "s", 20, 25, 19],
    [1, 3600, "s", 60, 75, 55],
    [1, 240, "min", 5, 6, 4.75],
    [1, 240, "min", 60, 75, 55],
    [0, 24, "h", 19, 19.25, 18.75],
  ])("of the clock from %d to %d %s, %d goes up to %d and down to %d", (low, high, unit, from, up, down) => {
    const scale = scaleBetween(low, high, unit);
    expect(roundStep(scale, from, 1)).toBe(up);
    expect(roundStep(scale, from, -1)).toBe(down);
  });

  it("of the clock lead up and back down to the same value", () => {
    const clocks = fc
      .tuple(fc.constantFrom("s", "min", "h"), fc.double({ min: 0.01, max: 60, noNaN: true }), sized)
      .map(([unit, low, times]) => scaleBetween(low, low * (2 + (times % 200)), unit));
    fc.assert(
      fc.property(clocks, places, fc.constantFrom(1, -1), (scale, place, by) => {
        const from = roundStep(scale, roundAt(scale, place), by as 1 | -1);
        const there = roundStep(scale, from, by as 1 | -1);
        if (there !== from) expect(roundStep(scale, there, by === 1 ? -1 : 1)).toBeCloseTo(from, 9);
      }),
    );
  });

  it("are always round, and never leave the ends", () => {
    fc.assert(
      fc.property(scales, places, fc.constantFrom(1, -1), fc.boolean(), (scale, place, by, coarse) => {
        const from = roundAt(scale, place);
        const next = roundStep(scale, from, by as 1 | -1, coarse);
        expect(next).toBeGreaterThanOrEqual(scale.low);
        expect(next).toBeLessThanOrEqual(scale.high);
        if (next === from) return;
        expect(Math.sign(next - from)).toBe(by);
        // No finer than a sixtieth of a fifth of what is turned through: a number that a grower would say.
        const finest = scale.ratio ? next / 200 : (scale.high - scale.low) / 300;
        const exponent = Math.floor(Math.log10(finest));
        expect(isMultiple(next, 10 ** exponent)).toBe(true);
        if (scale.whole) expect(Number.isInteger(next)).toBe(true);
      }),
    );
  });

  it("lead up and back down to the same round value", () => {
    fc.assert(
      fc.property(scales, places, fc.constantFrom(1, -1), (scale, place, by) => {
        const from = roundStep(scale, roundAt(scale, place), by as 1 | -1);
        const there = roundStep(scale, from, by as 1 | -1);
        if (there !== from) expect(roundStep(scale, there, by === 1 ? -1 : 1)).toBe(from);
      }),
    );
  });

  it("come back to the scale from off it, and by tens from one ten to the next", () => {
    const scale = scaleBetween(0, 90, "deg");
    expect(roundStep(scale, 200, 1)).toBe(90);
    expect(roundStep(scale, 35, 1, true)).toBe(45);
    expect(roundStep(scale, 45, -1, true)).toBe(35);
    expect(roundStep(scale, 85, 1, true)).toBe(90);
  });
});

describe("a place on the slider", () => {
  it("is a round value within the ends, the nearest there is, and rises with the place", () => {
    fc.assert(
      fc.property(scales, places, places, (scale, one, other) => {
        const [a, b] = [roundAt(scale, Math.min(one, other)), roundAt(scale, Math.max(one, other))];
        expect(a).toBeLessThanOrEqual(b);
        expect(a).toBeGreaterThanOrEqual(scale.low);
        expect(b).toBeLessThanOrEqual(scale.high);
        const off = (value: number) => Math.abs(placeOn(scale, value) - Math.min(one, other));
        for (const by of [1, -1] as const)
          expect(off(a)).toBeLessThanOrEqual(off(roundStep(scale, a, by)) + 1e-3);
      }),
    );
  });

  it("has at the most so many round values for a curve, rising", () => {
    fc.assert(
      fc.property(scales, fc.integer({ min: 2, max: 25 }), (scale, count) => {
        const values = roundValuesOf(scale, count);
        expect(values.length).toBeLessThanOrEqual(count);
        expect([...values].sort((a, b) => a - b)).toEqual(values);
      }),
    );
    expect(roundValuesOf(scaleBetween(20, 5000, "gal"), 5)).toEqual([20, 80, 325, 1250, 5000]);
  });
});

test("a scale in another unit is the same span", () => {
  const there = scaleIn(scaleBetween(1, 12, "ft"), "in");
  expect([there.low, there.high, there.unit]).toEqual([12, 144, "in"]);
  expect(scaleIn(there, "in")).toBe(there);
});
