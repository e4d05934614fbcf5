import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { curveFromRatings, type Pump } from "../../src/physics/pump-curve.ts";
import { greatestLift, pumpRun } from "../../src/physics/pump-run.ts";
import { levelAt, type Vessel, volumeAt } from "../../src/physics/vessel.ts";
import { type PumpedTank, watering } from "../../src/physics/watering-time.ts";
import { toSi } from "../../src/units/unit.ts";

const pump: Pump = {
  ...curveFromRatings(toSi(500, "gph"), 2, 13.6),
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
const supply = { voltage: 12.8, resistance: 0.1 };
const runAt = (lift: number) => pumpRun({ pump, line, lift }, supply);
const drum: Vessel = { form: "upright", height: 0.85, volume: 0.208 };

const tank = (change: Partial<PumpedTank> = {}): PumpedTank => ({
  vessel: drum,
  floor: 0,
  level: 0.8,
  lowest: 0.02,
  outletHeight: 1,
  greatestLift: greatestLift(pump, supply),
  ...change,
});

/** The same by small equal steps of time. */
function stepped(of: PumpedTank, volume: number, step: number): { time: number; charge: number } {
  const start = volumeAt(of.vessel, of.level);
  let [time, charge, out] = [0, 0, 0];
  while (out < volume) {
    const { flow, current } = runAt(of.outletHeight - of.floor - levelAt(of.vessel, start - out));
    const share = Math.min(1, (volume - out) / (flow * step));
    [time, charge, out] = [time + share * step, charge + share * step * current, out + share * step * flow];
  }
  return { time, charge };
}

describe("a watering", () => {
  test.each([drum, { form: "lying", height: 0.85, volume: 0.208 } as const])(
    "takes as long, and as much charge, as stepping through it second by second ($form)",
    (vessel) => {
      const of = tank({ vessel });
      const whole = watering(of, runAt, 0.1);
      const slow = stepped(of, 0.1, 0.5);
      expect(whole.end).toBe("done");
      expect(whole.time / slow.time).toBeCloseTo(1, 3);
      expect(whole.charge / slow.charge).toBeCloseTo(1, 3);
    },
  );

  test("in two parts takes as long as in one", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.09, noNaN: true }), (first) => {
        const one = watering(tank(), runAt, first);
        const two = watering(tank({ level: one.level }), runAt, 0.1 - first);
        const whole = watering(tank(), runAt, 0.1);
        expect((one.time + two.time) / whole.time).toBeCloseTo(1, 8);
        expect((one.charge + two.charge) / whole.charge).toBeCloseTo(1, 8);
        expect(two.level).toBeCloseTo(whole.level, 12);
      }),
      { numRuns: 25, verbose: 1 },
    );
  });

  test("takes longer per litre the lower the water", () => {
    const [high, low] = [watering(tank(), runAt, 0.05), watering(tank({ level: 0.4 }), runAt, 0.05)];
    expect(low.time).toBeGreaterThan(high.time);
  });

  test("ends at the pump's lowest water and leaves the dead water", () => {
    const all = watering(tank(), runAt);
    expect(all.end).toBe("dry");
    expect(all.level).toBeCloseTo(0.02, 12);
    expect(all.volume).toBeCloseTo(volumeAt(drum, 0.8) - volumeAt(drum, 0.02), 12);
    expect(watering(tank(), runAt, 0.3)).toEqual(all);
  });

  test("ends where the lift grows beyond the pump, in finite time", () => {
    const of = tank({ outletHeight: 2.1 });
    const all = watering(of, runAt);
    expect(all.end).toBe("too_low");
    expect(all.level).toBeCloseTo(2.1 - of.greatestLift + 0.001, 9);
    expect(all.time).toBeGreaterThan(watering(of, runAt, all.volume * 0.99).time);
    expect(all.time).toBeLessThan(24 * 3600);
  });

  test("gives nothing where the outlet is out of reach or the water too low from the start", () => {
    expect(watering(tank({ outletHeight: 5 }), runAt)).toMatchObject({ end: "too_low", volume: 0, time: 0 });
    expect(watering(tank({ level: 0.01 }), runAt)).toMatchObject({ end: "dry", volume: 0, level: 0.01 });
    expect(watering(tank(), runAt, 0)).toMatchObject({ end: "done", volume: 0, time: 0 });
  });

  test("refuses a negative volume", () => {
    expect(() => watering(tank(), runAt, -1)).toThrow(DomainError);
  });
});
