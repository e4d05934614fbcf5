import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  depletionFraction,
  rainThatCounts,
  rootDepth,
  stress,
  yieldLoss,
} from "../../src/physics/soil-water.ts";
import { availableWater, heldWater, soilDay } from "../oracles/soil-water.ts";

const depth = fc.double({ min: 0, max: 0.2, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("stress", () => {
  test("stays within 0 and 1, is 1 while water is readily there and 0 when all is gone", () => {
    fc.assert(
      fc.property(depth, fc.double({ min: 0.001, max: 0.3, noNaN: true }), share, (missing, total, part) => {
        const readily = part * total;
        const ks = stress(missing, total, readily);
        expect(ks).toBeGreaterThanOrEqual(0);
        expect(ks).toBeLessThanOrEqual(1);
        if (missing <= readily) expect(ks).toBe(1);
        else if (missing >= total) expect(ks).toBe(0);
        else if (missing > readily + 1e-9) expect(ks).toBeLessThan(1);
      }),
    );
  });

  test("never rises as the soil dries", () => {
    fc.assert(
      fc.property(depth, depth, share, (one, other, part) => {
        const [wetter, drier] = one < other ? [one, other] : [other, one];
        expect(stress(drier, 0.1, part * 0.1)).toBeLessThanOrEqual(stress(wetter, 0.1, part * 0.1));
      }),
    );
  });

  test("refuses a readily available water above the total, and what is no number", () => {
    expect(() => stress(0.01, 0.1, 0.2)).toThrow(DomainError);
    expect(() => stress(Number.NaN, 0.1, 0.05)).toThrow(DomainError);
  });
});

describe("soilDay", () => {
  const orders = fc.constantFrom("early" as const, "late" as const);

  test("accounts for every drop, whichever comes first", () => {
    fc.assert(
      fc.property(
        depth,
        share,
        depth,
        depth,
        depth,
        share,
        depth,
        orders,
        (total, part, rain, given, use, off, rise, order) => {
          const depletion = part * total;
          const runoff = off * rain;
          const day = soilDay(
            { depletion, total, rain, irrigation: given, cropUse: use, runoff, rise },
            order,
          );
          const gained = rain - runoff + given + rise;
          expect(depletion - gained + day.use + day.drained).toBeCloseTo(day.depletion, 14);
          expect(day.depletion).toBeGreaterThanOrEqual(0);
          expect(day.depletion).toBeLessThanOrEqual(total + 1e-15);
          expect(day.use).toBeLessThanOrEqual(use);
          expect(day.drained).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test("drains no less when the water comes before the crop's use than after it", () => {
    fc.assert(
      fc.property(share, depth, depth, (part, rain, cropUse) => {
        const given = { depletion: part * 0.1, total: 0.1, rain, irrigation: 0, cropUse };
        expect(soilDay(given, "early").drained).toBeGreaterThanOrEqual(
          soilDay(given, "late").drained - 1e-15,
        );
      }),
    );
  });

  test("refuses a negative depth, more runoff than rain, and more missing than there can be", () => {
    const day = { depletion: 0.01, total: 0.1, rain: 0.005, irrigation: 0, cropUse: 0.004 };
    expect(() => soilDay({ ...day, rain: -0.001 }, "early")).toThrow(DomainError);
    expect(() => soilDay({ ...day, runoff: 0.006 }, "early")).toThrow(DomainError);
    expect(() => soilDay({ ...day, depletion: 0.11 }, "late")).toThrow(DomainError);
    expect(() => soilDay({ ...day, cropUse: Number.POSITIVE_INFINITY }, "late")).toThrow(DomainError);
  });
});

describe("a bed left dry", () => {
  test("never uses more than its soil held, and dries ever more slowly", () => {
    const { total, readily } = availableWater({ held: 0.155, rootDepth: 0.3, depletion: 0.4 });
    let depletion = 0;
    let used = 0;
    let before = Number.POSITIVE_INFINITY;
    for (let day = 0; day < 200; day += 1) {
      const cropUse = 0.005 * stress(depletion, total, readily);
      const after = soilDay({ depletion, total, rain: 0, irrigation: 0, cropUse }, "early");
      expect(after.use).toBeLessThanOrEqual(before);
      [depletion, used, before] = [after.depletion, used + after.use, after.use];
    }
    expect(used).toBeCloseTo(depletion, 12);
    expect(used).toBeLessThanOrEqual(total);
    expect(used).toBeGreaterThan(0.99 * total);
  });
});

test("rain below a fifth of the reference does not count, from there on all of it does", () => {
  expect(rainThatCounts(0.00099, 0.005)).toBe(0);
  expect(rainThatCounts(0.001, 0.005)).toBe(0.001);
  expect(rainThatCounts(0.02, 0.005)).toBe(0.02);
});

test("roots grow in a straight line, and neither before planting nor past their end", () => {
  expect(rootDepth(0.1, 0.5, 0, 40)).toBe(0.1);
  expect(rootDepth(0.1, 0.5, 20, 40)).toBeCloseTo(0.3, 12);
  expect(rootDepth(0.1, 0.5, 90, 40)).toBe(0.5);
  expect(() => rootDepth(0.1, 0.5, -1, 40)).toThrow(DomainError);
});

test("a thirstier day leaves a smaller share to be used without stress", () => {
  fc.assert(
    fc.property(
      share,
      fc.double({ min: 0, max: 0.015, noNaN: true }),
      fc.double({ min: 0, max: 0.015, noNaN: true }),
      (p, a, b) => {
        expect(depletionFraction(p, Math.max(a, b))).toBeLessThanOrEqual(
          depletionFraction(p, Math.min(a, b)),
        );
      },
    ),
  );
});

test("a soil that holds nothing at field capacity above wilting is refused", () => {
  expect(() => heldWater(0.1, 0.1)).toThrow(DomainError);
  expect(() => heldWater(1.2, 0.1)).toThrow(DomainError);
});

test("harvest lost is the response times the share of use that was missed, to all of it at most", () => {
  // FAO-33: 1 - Ya/Ym = Ky (1 - ETa/ETm). Tomato, Ky 1.05, at 80 % of its use: 1.05 x 0.2.
  expect(yieldLoss(1.05, 0.8)).toBeCloseTo(0.21, 12);
  expect(yieldLoss(1.05, 1)).toBe(0);
  expect(yieldLoss(1.5, 0)).toBe(1);
});
