import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BASE_KINDS,
  dimension,
  isPlain,
  PLAIN,
  powerOf,
  productOf,
  quotientOf,
  sameDimension,
} from "../../src/units/dimension.ts";

const anyDimension = fc
  .array(fc.integer({ min: -4, max: 4 }), { minLength: BASE_KINDS.length, maxLength: BASE_KINDS.length })
  .map((powers) => ({ powers, point: false }));

describe("dimensions", () => {
  it("multiply and divide back to where they came from", () => {
    fc.assert(
      fc.property(anyDimension, anyDimension, (a, b) => {
        expect(sameDimension(quotientOf(productOf(a, b), b), a)).toBe(true);
        expect(sameDimension(productOf(a, b), productOf(b, a))).toBe(true);
        expect(isPlain(quotientOf(a, a))).toBe(true);
        expect(sameDimension(powerOf(a, 2), productOf(a, a))).toBe(true);
        expect(isPlain(powerOf(a, 0))).toBe(true);
      }),
    );
  });

  it("tell a reading of a thermometer from a difference", () => {
    expect(sameDimension(dimension({ temperature: 1 }, true), dimension({ temperature: 1 }))).toBe(false);
    expect(isPlain(dimension({}, true))).toBe(false);
  });

  it("tell an angle and money from a plain number", () => {
    expect(isPlain(dimension({ angle: 1 }))).toBe(false);
    expect(isPlain(dimension({ money: 1 }))).toBe(false);
    expect(isPlain(PLAIN)).toBe(true);
  });

  it("never hold a negative zero, which would look different when compared as text", () => {
    expect(powerOf(dimension({ length: 1 }), -1).powers.some((power) => Object.is(power, -0))).toBe(false);
  });
});
