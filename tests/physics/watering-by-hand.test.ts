import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cansFor,
  carryingPower,
  liftFrequencyFactor,
  recommendedWeightLimit,
  roundTime,
  tripsFor,
} from "../../src/physics/carrying.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  effectiveRainDependable,
  effectiveRainScs,
  effectiveRainUsda,
} from "../../src/physics/effective-rain.ts";
import { emitterFlow, firstSoakVolume, soakPasses, wettedDepth } from "../../src/physics/infiltration.ts";

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

test("an emitter passes its rated flow at its rated head and nothing without head", () => {
  const emitter = { ratedFlow: 1e-6, ratedHead: 5.6, exponent: 0.5 };
  expect(emitterFlow({ ...emitter, head: 5.6 })).toBe(1e-6);
  expect(emitterFlow({ ...emitter, head: 0 })).toBe(0);
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

  test("take filling and pouring of each can and the way there and back once", () => {
    const round = roundTime({ distance: 20, pace: 1, fillTime: 30, pourTime: 45, cansAtOnce: 2 });
    expect(round).toBe(2 * (30 + 45) + 40);
  });
});

describe("lifting", () => {
  const best = { reach: 0.25, height: 0.75, travel: 0.25, twist: 0, frequencyFactor: 1, gripFactor: 1 };

  test("allows 23 kg at best, and never more for a worse posture", () => {
    expect(recommendedWeightLimit(best)).toBe(23);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.63, noNaN: true }),
        fc.double({ min: 0, max: 1.75, noNaN: true }),
        fc.double({ min: 0, max: 1.75, noNaN: true }),
        fc.double({ min: 0, max: 2.3, noNaN: true }),
        (reach, height, travel, twist) => {
          const limit = recommendedWeightLimit({ ...best, reach, height, travel, twist });
          expect(limit).toBeLessThanOrEqual(23);
          expect(limit).toBeGreaterThan(0);
        },
      ),
    );
  });

  test("refuses a reach beyond the arms and more lifts than the table has", () => {
    expect(() => recommendedWeightLimit({ ...best, reach: 0.7 })).toThrow(DomainError);
    expect(() => liftFrequencyFactor(7 / 60)).toThrow(DomainError);
  });

  test("allows less the oftener it is done", () => {
    const factors = [0.1, 0.3, 0.7, 1.5, 2.5, 4.5, 5.9].map((perMinute) =>
      liftFrequencyFactor(perMinute / 60),
    );
    expect(factors).toEqual([...factors].sort((a, b) => b - a));
    expect(new Set(factors.slice(1)).size).toBe(6);
  });
});

test("carrying more, faster or uphill never takes less power", () => {
  const walk = { body: 80, load: 15, pace: 1, grade: 0, terrain: 1.1 };
  const power = carryingPower(walk);
  for (const more of [{ load: 30 }, { pace: 1.3 }, { grade: 0.05 }, { terrain: 1.5 }]) {
    expect(carryingPower({ ...walk, ...more })).toBeGreaterThan(power);
  }
});

test("the rain of a month that counts is never more than fell, by any of the three forms", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.6, noNaN: true }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
      (rain, use) => {
        for (const counted of [
          effectiveRainScs(rain, use, 0.0762),
          effectiveRainUsda(rain),
          effectiveRainDependable(rain),
        ]) {
          expect(counted).toBeGreaterThanOrEqual(0);
          // Inches and back costs a last bit.
          expect(counted).toBeLessThanOrEqual(rain * (1 + 1e-12));
        }
      },
    ),
  );
});
