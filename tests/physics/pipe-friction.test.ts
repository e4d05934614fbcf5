import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  frictionFactor,
  type PipeRun,
  pipeHeadLoss,
  reynoldsNumber,
} from "../../src/physics/pipe-friction.ts";
import { colebrook, hazenWilliams, swameeJain } from "../oracles/pipe-friction.ts";

const run: PipeRun = {
  flow: 1e-4,
  length: 30,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 3.5,
  viscosity: 1.14e-6,
};
const logReynolds = fc.double({ min: -6, max: 8, noNaN: true });
const roughness = fc.double({ min: 0, max: 0.05, noNaN: true });

describe("frictionFactor", () => {
  test("is 64/Re up to Reynolds 1000, at any roughness", () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 3, noNaN: true }), roughness, (log, rough) => {
        expect((frictionFactor(10 ** log, rough) * 10 ** log) / 64).toBeCloseTo(1, 9);
      }),
      { verbose: 1 },
    );
  });

  test("makes loss rise with every flow, through all regimes, so that a line has one answer", () => {
    fc.assert(
      fc.property(logReynolds, roughness, (log, rough) => {
        const [low, high] = [10 ** log, 10 ** log * 1.001];
        expect(frictionFactor(high, rough) * high ** 2).toBeGreaterThan(
          frictionFactor(low, rough) * low ** 2,
        );
      }),
      { numRuns: 500, verbose: 1 },
    );
  });

  test("rises with roughness where flow is turbulent", () => {
    expect(frictionFactor(1e5, 0.01)).toBeGreaterThan(frictionFactor(1e5, 0.001));
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses Reynolds %s", (reynolds) => {
    expect(() => frictionFactor(reynolds, 0)).toThrow(DomainError);
  });
});

describe("colebrook", () => {
  test("solves its own equation", () => {
    fc.assert(
      fc.property(fc.double({ min: 3.6, max: 8, noNaN: true }), roughness, (log, rough) => {
        const root = 1 / Math.sqrt(colebrook(10 ** log, rough));
        expect(root + 2 * Math.log10(rough / 3.7 + (2.51 * root) / 10 ** log)).toBeCloseTo(0, 10);
      }),
      { verbose: 1 },
    );
  });

  test("is within 3 % of Swamee and Jain in their range", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log10(5000), max: 8, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.05, noNaN: true }),
        (log, rough) => {
          expect(Math.abs(swameeJain(10 ** log, rough) / colebrook(10 ** log, rough) - 1)).toBeLessThan(0.03);
        },
      ),
      { verbose: 1 },
    );
  });

  test("refuses laminar flow", () => {
    expect(() => colebrook(100, 0)).toThrow(DomainError);
    expect(() => swameeJain(100, 0)).toThrow(DomainError);
  });
});

describe("pipeHeadLoss", () => {
  test("is none without flow and proportional to flow when creeping", () => {
    const bare = { ...run, fittingsK: 0 };
    expect(pipeHeadLoss({ ...run, flow: 0 })).toBe(0);
    expect(pipeHeadLoss({ ...bare, flow: 2e-12 }) / pipeHeadLoss({ ...bare, flow: 1e-12 })).toBeCloseTo(
      2,
      12,
    );
    expect(pipeHeadLoss({ ...bare, flow: 1e-200 })).toBeGreaterThan(0);
  });

  test("without length is the fittings' share of the speed's head", () => {
    const speed = run.flow / ((Math.PI / 4) * run.bore ** 2);
    expect(pipeHeadLoss({ ...run, length: 0 })).toBeCloseTo((3.5 * speed ** 2) / (2 * 9.80665), 12);
  });

  test("joins the two regimes at Reynolds 1 without a step", () => {
    const flow = (Math.PI * run.bore * run.viscosity) / 4;
    expect(reynoldsNumber(flow, run.bore, run.viscosity)).toBeCloseTo(1, 12);
    const [below, above] = [1 - 1e-9, 1 + 1e-9].map((share) => pipeHeadLoss({ ...run, flow: flow * share }));
    expect((above as number) / (below as number)).toBeCloseTo(1, 8);
  });

  test.each(["flow", "length", "bore", "roughness", "fittingsK", "viscosity"] as const)(
    "refuses a negative %s",
    (name) => {
      expect(() => pipeHeadLoss({ ...run, [name]: -1 })).toThrow(DomainError);
      expect(() => pipeHeadLoss({ ...run, [name]: Number.NaN })).toThrow(DomainError);
    },
  );
});

describe("hazenWilliams", () => {
  test("gives less than half of the true loss at half a litre a minute in a hose", () => {
    const slow = { ...run, flow: 0.5 / 60_000, fittingsK: 0 };
    expect(hazenWilliams({ ...slow, coefficient: 150 })).toBeLessThan(pipeHeadLoss(slow) / 2);
  });

  test("grows by 2^1.852 when flow doubles", () => {
    const hose = { flow: 1e-4, length: 30, bore: 0.0159, coefficient: 140 };
    expect(hazenWilliams({ ...hose, flow: 2e-4 }) / hazenWilliams(hose)).toBeCloseTo(2 ** 1.852, 10);
  });
});
