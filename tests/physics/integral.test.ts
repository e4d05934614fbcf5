import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { integral } from "../../src/physics/integral.ts";

describe("integral", () => {
  test("is exact for polynomials up to the nineteenth power", () => {
    for (let power = 0; power < 20; power++) {
      expect(integral((x) => x ** power, 0, 2) / (2 ** (power + 1) / (power + 1))).toBeCloseTo(1, 12);
    }
  });

  test("of two parts is that of the whole, turned round it is the opposite", () => {
    const point = fc.double({ min: 0.1, max: 3, noNaN: true });
    fc.assert(
      fc.property(point, point, (a, b) => {
        const curve = (x: number) => 1 / x + Math.sin(x);
        expect(integral(curve, 0.1, a) + integral(curve, a, b)).toBeCloseTo(integral(curve, 0.1, b), 7);
        expect(integral(curve, b, a)).toBeCloseTo(-integral(curve, a, b), 7);
      }),
      { verbose: 1 },
    );
  });

  test("refines towards an end where the curve runs off", () => {
    expect(integral((x) => 1 / Math.sqrt(x), 0, 1)).toBeCloseTo(2, 4);
  });
});
