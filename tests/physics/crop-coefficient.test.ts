import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  adjustedKc,
  adjustedKcEnd,
  type CropCurve,
  cropCoefficient,
  cropLife,
  intercropCoefficient,
  stretchedStages,
} from "../../src/physics/crop-coefficient.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { filmedCurve, mulchedCurve } from "../../src/physics/mulch.ts";

const kc = fc.double({ min: 0.1, max: 1.3, noNaN: true });
const days = fc.integer({ min: 1, max: 80 });
const curves = fc
  .record({ kcInitial: kc, kcMiddle: kc, kcEnd: kc, stages: fc.tuple(days, days, days, days) })
  .map((curve): CropCurve => curve);
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("cropCoefficient", () => {
  test("lives exactly as many days as its stages, and is null before and after", () => {
    fc.assert(
      fc.property(curves, (curve) => {
        const life = cropLife(curve.stages);
        expect(cropCoefficient(curve, -1)).toBeNull();
        expect(cropCoefficient(curve, 0)).not.toBeNull();
        expect(cropCoefficient(curve, life - 1)).toBe(curve.kcMiddle + (curve.kcEnd - curve.kcMiddle));
        expect(cropCoefficient(curve, life)).toBeNull();
      }),
    );
  });

  test("stays between the coefficients of its stages", () => {
    fc.assert(
      fc.property(curves, share, (curve, part) => {
        const value = cropCoefficient(curve, Math.floor(part * (cropLife(curve.stages) - 1))) ?? Number.NaN;
        const all = [curve.kcInitial, curve.kcMiddle, curve.kcEnd];
        expect(value).toBeGreaterThanOrEqual(Math.min(...all) - 1e-12);
        expect(value).toBeLessThanOrEqual(Math.max(...all) + 1e-12);
      }),
    );
  });

  test("holds for a crop without one of its stages", () => {
    const curve: CropCurve = { kcInitial: 0.5, kcMiddle: 1, kcEnd: 0.8, stages: [0, 0, 30, 0] };
    expect(cropCoefficient(curve, 0)).toBe(1);
    expect(cropCoefficient(curve, 29)).toBe(1);
    expect(cropCoefficient(curve, 30)).toBeNull();
  });

  test("refuses a stage of negative length and a life of no days", () => {
    const curve = { kcInitial: 0.5, kcMiddle: 1, kcEnd: 0.8 };
    expect(() => cropCoefficient({ ...curve, stages: [10, -1, 10, 10] }, 5)).toThrow(DomainError);
    expect(() => cropCoefficient({ ...curve, stages: [0, 0, 0, 0] }, 5)).toThrow(DomainError);
  });
});

test("stretched stages add up to the wanted life and keep their shares to a day", () => {
  fc.assert(
    fc.property(fc.tuple(days, days, days, days), fc.integer({ min: 4, max: 400 }), (stages, life) => {
      const stretched = stretchedStages(stages, life);
      expect(cropLife(stretched)).toBe(life);
      for (const [index, stage] of stretched.entries()) {
        expect(Math.abs(stage - (stages[index]! * life) / cropLife(stages))).toBeLessThanOrEqual(1);
      }
    }),
  );
});

test("the middle coefficient is that of the table in a sub-humid climate with 2 m/s of wind", () => {
  expect(adjustedKc({ coefficient: 1.15, wind: 2, lowestHumidity: 0.45, height: 0.6 })).toBe(1.15);
});

test("an end coefficient under 0.45 is left alone, one from there on is corrected", () => {
  const dry = { wind: 4, lowestHumidity: 0.2, height: 0.5 };
  expect(adjustedKcEnd({ ...dry, coefficient: 0.35 })).toBe(0.35);
  expect(adjustedKcEnd({ ...dry, coefficient: 0.45 })).toBeGreaterThan(0.45);
});

test("the correction refuses weather and heights outside its range", () => {
  const usual = { coefficient: 1, wind: 2, lowestHumidity: 0.45, height: 1 };
  for (const wrong of [
    { wind: 0.5 },
    { wind: 7 },
    { lowestHumidity: 0.1 },
    { lowestHumidity: 45 },
    { height: 11 },
  ]) {
    expect(() => adjustedKc({ ...usual, ...wrong })).toThrow(DomainError);
  }
});

test("crops in one bed share a coefficient that lies between theirs", () => {
  const crop = fc.record({
    share: fc.double({ min: 0.05, max: 1, noNaN: true }),
    height: fc.double({ min: 0.1, max: 3, noNaN: true }),
    coefficient: kc,
  });
  fc.assert(
    fc.property(fc.array(crop, { minLength: 1, maxLength: 5 }), (crops) => {
      const all = crops.map(({ coefficient }) => coefficient);
      expect(intercropCoefficient(crops)).toBeGreaterThanOrEqual(Math.min(...all) - 1e-12);
      expect(intercropCoefficient(crops)).toBeLessThanOrEqual(Math.max(...all) + 1e-12);
    }),
  );
  expect(() => intercropCoefficient([])).toThrow(DomainError);
});

describe("more mulch", () => {
  const least = (curve: CropCurve) => [curve.kcInitial, curve.kcMiddle, curve.kcEnd];

  test("of straw never needs more on any day, and never stops the plant from drinking", () => {
    fc.assert(
      fc.property(curves, kc, kc, share, share, share, (curve, middle, end, one, other, part) => {
        const day = Math.floor(part * (cropLife(curve.stages) - 1));
        const thin = mulchedCurve(curve, { middle, end }, Math.min(one, other), 0.5);
        const thick = mulchedCurve(curve, { middle, end }, Math.max(one, other), 0.5);
        const bare = cropCoefficient(curve, day) ?? Number.NaN;
        const [more, less] = [cropCoefficient(thin, day), cropCoefficient(thick, day)] as [number, number];
        expect(less).toBeLessThanOrEqual(more + 1e-12);
        expect(more).toBeLessThanOrEqual(bare + 1e-12);
        expect(thick.kcMiddle).toBeGreaterThanOrEqual(Math.min(middle, curve.kcMiddle) - 1e-12);
      }),
    );
  });

  test("of film never needs more", () => {
    fc.assert(
      fc.property(curves, fc.double({ min: 0, max: 0.5, noNaN: true }), (curve, cut) => {
        const filmed = least(filmedCurve(curve, cut, 0.1));
        for (const [index, value] of filmed.entries())
          expect(value).toBeLessThanOrEqual(least(curve)[index]!);
      }),
    );
  });
});

test("the season's need does not depend on the day of sowing when the days are alike", () => {
  fc.assert(
    fc.property(curves, fc.integer({ min: 0, max: 60 }), (curve, sown) => {
      const need = (start: number) => {
        let sum = 0;
        for (let day = 0; day < 400; day += 1) sum += (cropCoefficient(curve, day - start) ?? 0) * 0.005;
        return sum;
      };
      expect(need(sown)).toBeCloseTo(need(0), 12);
    }),
  );
});
