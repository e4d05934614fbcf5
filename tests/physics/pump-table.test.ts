import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { curveFromRatings, type Pump } from "../../src/physics/pump-curve.ts";
import { greatestLift, pumpRun } from "../../src/physics/pump-run.ts";
import { pumpTable } from "../../src/physics/pump-table.ts";
import { watering } from "../../src/physics/watering-time.ts";
import { toSi } from "../../src/units/unit.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pump: Pump = {
  ...curveFromRatings(toSi(500, "gph"), 4, 13.6),
  noFlowCurrent: 1.2,
  openFlowCurrent: 2,
};
const line = {
  length: 15,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 2.5,
  opening: null,
  viscosity: 1.14e-6,
};
const supply = { voltage: 12.8, resistance: 0.2 };

describe("a table of a pump", () => {
  test("is within 1e-4 of the solved point at any lift, beyond its ends too", () => {
    const lines = [0.0095, 0.0159, 0.03].map((bore) => ({ ...line, bore }));
    const tables = lines.map((one) => pumpTable({ pump, line: one }, supply, -0.5));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 }), real(-2, 4.5), (which, lift) => {
        const solved = pumpRun({ pump, line: lines[which] ?? line, lift }, supply);
        const looked = tables[which]?.(lift) ?? solved;
        expect(Math.abs(looked.flow - solved.flow)).toBeLessThanOrEqual(1e-4 * solved.flow);
        expect(Math.abs(looked.current - solved.current)).toBeLessThanOrEqual(1e-4 * solved.current);
        expect(Math.abs(looked.arrivingVoltage - solved.arrivingVoltage)).toBeLessThanOrEqual(1e-4 * 12.8);
      }),
      { numRuns: 1000, verbose: 1 },
    );
  });

  test("gives the same watering to 2e-4", () => {
    const tank = {
      vessel: { form: "upright", height: 0.85, volume: 0.208 },
      floor: 0,
      level: 0.8,
      lowest: 0.02,
      outletHeight: 1,
      greatestLift: greatestLift(pump, supply),
    } as const;
    const looked = watering(tank, pumpTable({ pump, line }, supply, 0.1), 0.12, 1e-4);
    const solved = watering(tank, (lift) => pumpRun({ pump, line, lift }, supply), 0.12);
    expect(Math.abs(looked.time / solved.time - 1)).toBeLessThan(2e-4);
    expect(Math.abs(looked.charge / solved.charge - 1)).toBeLessThan(2e-4);
  });

  test("is refused where the pump lifts nowhere", () => {
    expect(() => pumpTable({ pump, line }, supply, 10)).toThrow(DomainError);
  });
});
