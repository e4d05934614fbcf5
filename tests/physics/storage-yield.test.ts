import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";

import { sequentPeak } from "../../src/physics/storage-yield.ts";
import { type TankRun, tankYield } from "../oracles/storage-yield.ts";

const series = fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 1, maxLength: 80 });
const run: fc.Arbitrary<TankRun> = fc
  .record({
    inflow: series,
    demand: fc.double({ min: 0, max: 3, noNaN: true }),
    capacity: fc.double({ min: 0, max: 20, noNaN: true }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    rule: fc.constantFrom("spill_first" as const, "use_first" as const),
  })
  .map(({ share, ...rest }) => ({ ...rest, start: rest.capacity * share }));

describe("tankYield", () => {
  test("accounts for every litre, and never holds more than it can", () => {
    fc.assert(
      fc.property(run, (tank) => {
        const all = tankYield(tank);
        expect(all.inflow + tank.start).toBeCloseTo(all.yield + all.spill + all.end, 9);
        for (const stored of all.stored) {
          expect(stored).toBeGreaterThanOrEqual(0);
          expect(stored).toBeLessThanOrEqual(tank.capacity);
        }
      }),
      { verbose: 1 },
    );
  });

  test("of a bigger tank is never less", () => {
    fc.assert(
      fc.property(run, fc.double({ min: 0, max: 10, noNaN: true }), (tank, more) => {
        const bigger = tankYield({ ...tank, capacity: tank.capacity + more });
        expect(bigger.yield).toBeGreaterThanOrEqual(tankYield(tank).yield - 1e-9);
      }),
      { verbose: 1 },
    );
  });

  test("with spilling first is never more than with using first", () => {
    fc.assert(
      fc.property(run, (tank) => {
        const cautious = tankYield({ ...tank, rule: "spill_first" }).yield;
        expect(cautious).toBeLessThanOrEqual(tankYield({ ...tank, rule: "use_first" }).yield + 1e-9);
      }),
      { verbose: 1 },
    );
  });

  test("is the same under both rules while nothing flows in", () => {
    const dry = { inflow: new Float64Array(30), demand: 0.05, capacity: 1, start: 1 };
    const [first, second] = (["spill_first", "use_first"] as const).map((rule) =>
      tankYield({ ...dry, rule }),
    );
    expect(first).toEqual(second);
    expect(first?.stepsMet).toBe(20);
  });

  test("takes a demand of its own for each step, and refuses a start over the brim", () => {
    const tank = { inflow: [1, 1], demand: [0, 2], capacity: 5, start: 0, rule: "use_first" } as const;
    expect(Array.from(tankYield(tank).given)).toEqual([0, 2]);
    expect(() => tankYield({ ...tank, start: 6 })).toThrow(DomainError);
    expect(() => tankYield({ ...tank, demand: [1] })).toThrow(DomainError);
  });
});

describe("sequentPeak", () => {
  test("is just enough: a full tank of it never fails, one a little smaller does", () => {
    fc.assert(
      fc.property(series, (inflow) => {
        const demand = (inflow.reduce((sum, value) => sum + value, 0) / inflow.length) * 0.95;
        const { capacity } = sequentPeak(inflow, demand);
        fc.pre(capacity > 1e-6);
        const twice = [...inflow, ...inflow];
        const with_ = (size: number) => {
          return tankYield({ inflow: twice, demand, capacity: size, start: size, rule: "use_first" }).yield;
        };
        expect(with_(capacity)).toBeCloseTo(demand * twice.length, 9);
        expect(with_(capacity * 0.99)).toBeLessThan(demand * twice.length - capacity * 0.009);
      }),
      { verbose: 1 },
    );
  });

  test("regression: supplies at the foot of the numbers are not refused for their rounding", () => {
    expect(sequentPeak([3.5e-323, 0], 2e-323).capacity).toBeLessThan(1e-300);
  });

  test("is nothing where every step brings what it takes, and refuses more demand than supply", () => {
    expect(sequentPeak([2, 2, 2], 2).capacity).toBe(0);
    expect(() => sequentPeak([1, 1], 2)).toThrow(DomainError);
    expect(sequentPeak([1, 1], 2, 1).capacity).toBe(2);
  });
});
