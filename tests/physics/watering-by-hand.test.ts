import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cansFor, tripsFor } from "../../src/physics/carrying.ts";
import { DomainError } from "../../src/physics/domain-error.ts";

import { firstSoakVolume, soakPasses, wettedDepth } from "../../src/physics/infiltration.ts";

const positive = fc.double({ min: 1e-4, max: 1, noNaN: true });

describe("soakPasses", () => {
  test("never gives more at once than allowed, gives it all, and with one pass less could not", () => {
    fc.assert(
      fc.property(positive, positive, positive, (depth, mostAtOnce, intakeRate) => {
        const { passes, depthOfPass, wait, time } = soakPasses({ depth, mostAtOnce, intakeRate });
        expect(depthOfPass).toBeLessThanOrEqual(mostAtOnce * (1 + 1e-9));
        expect(passes * depthOfPass).toBeCloseTo(depth, 12);
        expect((passes - 1) * mostAtOnce).toBeLessThan(depth);
        expect(wait * intakeRate).toBeCloseTo(depthOfPass, 12);
        expect(time).toBeCloseTo(depth / intakeRate, 6);
      }),
    );
  });

  test("needs no pass for no water, and no extra one for a whole number of passes", () => {
    expect(soakPasses({ depth: 0, mostAtOnce: 0.006, intakeRate: 1e-6 }).passes).toBe(0);
    expect(soakPasses({ depth: 0.1 * 3, mostAtOnce: 0.1, intakeRate: 1e-6 }).passes).toBe(3);
  });

  test("refuses a soil that takes no water", () => {
    expect(() => soakPasses({ depth: 0.02, mostAtOnce: 0.006, intakeRate: 0 })).toThrow(DomainError);
  });
});

test("what the first soak brings to the roots wets just the depth it was meant for", () => {
  fc.assert(
    fc.property(positive, positive, positive, (held, depth, dryness) => {
      const volume = firstSoakVolume({ area: 5, wettedShare: 0.5, held, depth, dryness, efficiency: 0.75 });
      expect(wettedDepth((volume * 0.75) / 2.5, held, dryness)).toBeCloseTo(depth, 10);
    }),
  );
});

test("a first soak at no efficiency is refused", () => {
  const bed = { area: 5, wettedShare: 1, held: 0.15, depth: 0.3, dryness: 1 };
  expect(() => firstSoakVolume({ ...bed, efficiency: 0 })).toThrow(DomainError);
  expect(() => firstSoakVolume({ ...bed, efficiency: 75 })).toThrow(DomainError);
});

describe("cans and trips", () => {
  test("always hold the water, and one less would not", () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 0.001, max: 0.03, noNaN: true }), (volume, can) => {
        const cans = cansFor(volume, can);
        expect(cans * can).toBeGreaterThanOrEqual(volume * (1 - 1e-9));
        expect((cans - 1) * can).toBeLessThan(volume);
        expect(tripsFor(volume, can, 2)).toBe(Math.ceil(cans / 2));
      }),
    );
  });

  test("are none for no water, and refuse a can of no size", () => {
    expect(tripsFor(0, 0.0076, 2)).toBe(0);
    expect(() => tripsFor(0.02, 0, 2)).toThrow(DomainError);
  });
});
