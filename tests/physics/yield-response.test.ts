// Thirst by stages: the season's factor where it comes evenly, more where a stage is tender.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { yieldLoss } from "../../src/physics/soil-water.ts";
import { stageResponses, stagewiseYieldLoss } from "../../src/physics/yield-response.ts";

const depth = fc.double({ min: 0.001, max: 0.3, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const response = fc.double({ min: 0.05, max: 1.5, noNaN: true });

describe("loss of harvest by stages", () => {
  test("of tomatoes short by a fifth in the middle stage alone (worked out by hand from the additive form of Stewart et al. 1977)", () => {
    // Potentials 60, 120, 200, 80 mm; weights 0.4, 0.4, 0.95, 0.4: 0.95 x 40 of 294 mm, times 1.05.
    const stages = [60, 120, 200, 80].map((mm, stage) => ({
      response: stageResponses("tomato")[stage] as number,
      potential: mm / 1000,
      use: ((stage === 2 ? 0.8 : 1) * mm) / 1000,
    }));
    expect(stagewiseYieldLoss(1.05, stages)).toBeCloseTo((1.05 * 0.95 * 40) / 294, 12);
  });

  test("is FAO-56 Eq. 90 where all stages lack the same share, whatever their factors", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(response, depth), { minLength: 1, maxLength: 4 }),
        share,
        (stages, met) => {
          const used = stages.map(([factor, potential]) => ({
            response: factor,
            potential,
            use: potential * met,
          }));
          expect(stagewiseYieldLoss(1.15, used)).toBeCloseTo(yieldLoss(1.15, met), 9);
        },
      ),
    );
  });

  test("a depth short in a tender stage costs more than in another; with no tables all stages are alike", () => {
    const lossWith = (crop: string, thirsty: number) =>
      stagewiseYieldLoss(
        1,
        [0.1, 0.1, 0.1, 0.1].map((potential, stage) => ({
          response: stageResponses(crop)[stage] as number,
          potential,
          use: stage === thirsty ? 0.05 : 0.1,
        })),
      );
    expect(lossWith("bean_green", 2)).toBeGreaterThan(4 * lossWith("bean_green", 0));
    expect(lossWith("no such crop", 2)).toBe(lossWith("no such crop", 0));
  });

  test("is none with nothing to use, and never more than all", () => {
    expect(stagewiseYieldLoss(1.2, [{ response: 1, use: 0, potential: 0 }])).toBe(0);
    expect(stagewiseYieldLoss(1.2, [{ response: 1, use: 0, potential: 0.1 }])).toBe(1);
  });

  test("refuses a use above the potential, and a factor below zero", () => {
    expect(() => stagewiseYieldLoss(1, [{ response: 1, use: 0.2, potential: 0.1 }])).toThrow(DomainError);
    expect(() => stagewiseYieldLoss(-1, [])).toThrow(DomainError);
    expect(() => stagewiseYieldLoss(1, [{ response: -1, use: 0, potential: 0.1 }])).toThrow(DomainError);
  });
});
