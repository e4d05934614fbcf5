import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  bareGroundLoss,
  evaporableWater,
  partlyWettedCoefficient,
} from "../../src/physics/dual-coefficient.ts";
import {
  coefficientBetween,
  topSoilOfFigure,
  wettingCoefficient,
} from "../../src/physics/wetting-coefficient.ts";
import { coveredShare, exposedShare, topSoilDay } from "../oracles/dual-coefficient.ts";

const depth = fc.double({ min: 0, max: 0.06, noNaN: true });
const part = fc.double({ min: 0.05, max: 1, noNaN: true });

describe("topSoilDay", () => {
  test("accounts for the water of the top soil and never dries it past what can be lost", () => {
    fc.assert(
      fc.property(
        part,
        depth,
        depth,
        part,
        part,
        fc.double({ min: 0, max: 0.012, noNaN: true }),
        (dry, rain, irrigation, wetted, exposed, reference) => {
          const total = 0.02;
          const day = topSoilDay({
            depletion: dry * total,
            total,
            readily: 0.009,
            rain,
            irrigation,
            wetted,
            exposed,
            basal: 0.3,
            most: 1.2,
            reference,
          });
          const lost = (day.evaporationCoefficient * reference) / exposed;
          const balance = dry * total - rain - irrigation / wetted + day.drained + lost;
          expect(day.depletion).toBeCloseTo(balance, 12);
          expect(day.depletion).toBeLessThanOrEqual(total + 1e-12);
          expect(day.depletion).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test("a covered or narrow wet strip loses less than an open one", () => {
    expect(exposedShare(0.5, 0.3, true)).toBeLessThan(exposedShare(0.5, 0.3, false));
    expect(exposedShare(0.9, 1, false)).toBeCloseTo(0.1, 12);
  });

  test("refuses coefficients and shares outside their relation", () => {
    expect(() => coveredShare(0.1, 1.2, 0.3)).toThrow(DomainError);
    expect(() => coveredShare(1.3, 1.2, 0.3)).toThrow(DomainError);
    expect(() => exposedShare(1, 1, false)).toThrow(DomainError);
    expect(() => evaporableWater(0.1, 0.2, 0.1)).toThrow(DomainError);
  });
});

test("the top of a loam of FAO-56 Table 19 can lose what the table lists for it", () => {
  // Field capacity .20 to .30 and wilting point .07 to .17 over 0.10 m give the table's 16 to 22 mm within its rounding.
  expect(evaporableWater(0.2, 0.07, 0.1)).toBeCloseTo(0.0165, 12);
  expect(evaporableWater(0.3, 0.17, 0.1)).toBeCloseTo(0.0215, 12);
});

describe("wettingCoefficient", () => {
  const days = fc.double({ min: 0.2, max: 30, noNaN: true });
  const reference = fc.double({ min: 0.0005, max: 0.012, noNaN: true });
  const event = fc.constantFrom("light" as const, "heavy_coarse" as const, "heavy_fine" as const);

  test("is at most 1.15 and falls as wettings grow rarer", () => {
    fc.assert(
      fc.property(days, days, reference, event, (one, other, eto, kind) => {
        const soil = topSoilOfFigure(kind, eto);
        const often = wettingCoefficient(Math.min(one, other), eto, soil);
        const seldom = wettingCoefficient(Math.max(one, other), eto, soil);
        expect(often).toBeLessThanOrEqual(1.15);
        expect(seldom).toBeLessThanOrEqual(often + 1e-12);
        expect(seldom).toBeGreaterThan(0);
      }),
    );
  });

  test("never lets more leave between two wettings than the top soil can lose", () => {
    fc.assert(
      fc.property(days, reference, event, (wait, eto, kind) => {
        const soil = topSoilOfFigure(kind, eto);
        expect(wettingCoefficient(wait, eto, soil) * wait * eto).toBeLessThanOrEqual(soil.total + 1e-12);
      }),
    );
  });

  test("lies on the nearer figure outside 10 to 40 mm", () => {
    expect(coefficientBetween(0.005, 0.5, 0.8)).toBe(0.5);
    expect(coefficientBetween(0.025, 0.5, 0.8)).toBeCloseTo(0.65, 12);
    expect(coefficientBetween(0.06, 0.5, 0.8)).toBe(0.8);
  });
});

describe("bareGroundLoss", () => {
  test("dries bare loam day by day as FAO-56 example 31 does: ETo 4.5 mm, TEW 20, REW 9, Ke max 1.05", () => {
    // FAO-56 example 31, p. 146: depletion at the end of each of ten days without rain [mm], the first day's water all there.
    const book = [4.73, 9.45, 13.98, 16.57, 18.04, 18.88, 19.36, 19.64, 19.79, 19.88];
    let depletion = 0;
    const ends = book.map(() => {
      depletion += bareGroundLoss(depletion, { total: 0.02, readily: 0.009 }, 0.0045, 1.05);
      return depletion * 1000;
    });
    for (const [place, end] of ends.entries()) expect(end).toBeCloseTo(book[place] as number, 1);
  });

  test("is the book's whole day of the top soil (Eq. 71, 74, 77 and 79) where no crop stands and all lies open", () => {
    const reference = fc.double({ min: 0.0001, max: 0.012, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0.1, max: 0.9, noNaN: true }), reference, (dry, readily, eto) => {
        const soil = { total: 0.02, readily: readily * 0.02 };
        const bare = { rain: 0, irrigation: 0, wetted: 1, exposed: 1, basal: 0, most: 1.15 };
        const day = topSoilDay({ ...soil, ...bare, depletion: dry * 0.02, reference: eto });
        expect(dry * 0.02 + bareGroundLoss(dry * 0.02, soil, eto)).toBeCloseTo(day.depletion, 15);
      }),
    );
  });

  test("never takes more than is left, and nothing from a layer that is dry", () => {
    expect(bareGroundLoss(0.02, { total: 0.02, readily: 0.009 }, 0.005)).toBe(0);
    expect(bareGroundLoss(0, { total: 0.002, readily: 0.001 }, 0.005)).toBe(0.002);
    expect(() => bareGroundLoss(-0.001, { total: 0.02, readily: 0.009 }, 0.005)).toThrow(DomainError);
    expect(() => bareGroundLoss(0, { total: 0.02, readily: 0.02 }, 0.005)).toThrow(DomainError);
  });
});

describe("partlyWettedCoefficient", () => {
  const tomato = { coefficient: 1.15, basal: 1.1 };

  test("leaves the plants their thirst and the ground between them its wetted share", () => {
    expect(partlyWettedCoefficient({ ...tomato, wetted: 0.3, canopy: 1 })).toBeCloseTo(1.1 + 0.05 * 0.3, 12);
    expect(partlyWettedCoefficient({ ...tomato, wetted: 0.3, canopy: 0.5 })).toBeCloseTo(0.55 + 0.015, 12);
    expect(partlyWettedCoefficient({ ...tomato, wetted: 1, canopy: 1 })).toBe(1.15);
  });

  test("counts a basal coefficient above the whole one, as under a film, as equal to it", () => {
    expect(partlyWettedCoefficient({ coefficient: 0.7, basal: 1.1, wetted: 0.2, canopy: 1 })).toBe(0.7);
    expect(() => partlyWettedCoefficient({ ...tomato, wetted: 1.1, canopy: 1 })).toThrow(DomainError);
  });
});
