import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { bracketedRoot } from "../../src/physics/root.ts";

describe("bracketedRoot", () => {
  test("finds the root of any rising power, from far off, to 1e-12", () => {
    const root = fc.double({ min: 1e-9, max: 1e3, noNaN: true });
    const power = fc.double({ min: 0.3, max: 9, noNaN: true });
    fc.assert(
      fc.property(root, power, (at, exponent) => {
        const found = bracketedRoot((x) => x ** exponent - at ** exponent, 0, at * 50);
        expect(Math.abs(found / at - 1)).toBeLessThan(1e-12);
      }),
      { verbose: 1 },
    );
  });

  test("takes a root that stands on either end, and a bracket in either order", () => {
    expect(bracketedRoot((x) => x - 2, 2, 5)).toBe(2);
    expect(bracketedRoot((x) => x - 5, 2, 5)).toBe(5);
    expect(bracketedRoot((x) => 3 - x, 5, 2)).toBeCloseTo(3, 12);
  });

  test("closes in on a step, where no point is zero", () => {
    expect(bracketedRoot((x) => (x < Math.E ? -1 : 1), 0, 10)).toBeCloseTo(Math.E, 10);
  });

  test("refuses a bracket without a change of sign", () => {
    expect(() => bracketedRoot((x) => x + 1, 0, 1)).toThrow(DomainError);
  });
});
