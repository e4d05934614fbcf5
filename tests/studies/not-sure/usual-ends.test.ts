// Ends about a number of which nothing is known: about it, apart, round and on the axis.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type NumberAxis, usualEnds } from "../../../src/studies/not-sure/usual-ends.ts";
import { scaleBetween } from "../../../src/units/scale.ts";

const axis = (low: number, high: number, whole: boolean): NumberAxis => ({
  form: "number",
  scale: scaleBetween(low, high, "m", whole),
});

test("lie on the axis, apart, and about the number to within a step of the axis", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom([0, 10], [20, 5000], [1, 12], [-10, 30]),
      fc.boolean(),
      (share, [low = 0, high = 1], whole) => {
        const raw = low + share * (high - low);
        const value = whole ? Math.round(raw) : raw;
        const ends = usualEnds(axis(low, high, whole), value);
        expect(ends.low).toBeLessThan(ends.high);
        expect(ends.low).toBeGreaterThanOrEqual(low);
        expect(ends.high).toBeLessThanOrEqual(high);
        const step = (high - low) / 12;
        expect(ends.low).toBeLessThanOrEqual(value + step);
        expect(ends.high).toBeGreaterThanOrEqual(value - step);
        if (whole) expect(Number.isInteger(ends.low) && Number.isInteger(ends.high)).toBe(true);
      },
    ),
  );
  expect(usualEnds(axis(20, 5000, false), 250)).toEqual({ low: 200, high: 300 });
});
