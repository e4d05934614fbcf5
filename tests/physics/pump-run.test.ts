import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { type GravityLine, gravityFlow, gravityHead } from "../../src/physics/gravity-line.ts";
import { openingOf } from "../../src/physics/orifice.ts";
import {
  believedCurve,
  curveFromPoints,
  curveFromRatings,
  openFlow,
  type Pump,
  pumpCurrent,
  pumpHead,
} from "../../src/physics/pump-curve.ts";
import {
  flowByItself,
  greatestLift,
  type Lifting,
  outletKFromBucket,
  pumpRun,
  type Supply,
} from "../../src/physics/pump-run.ts";
import { toSi } from "../../src/units/unit.ts";
import { dutyAtSpeed } from "../oracles/pump-curve.ts";

const hose: GravityLine = {
  length: toSi(50, "ft"),
  bore: toSi(0.625, "in"),
  roughness: 1.5e-6,
  fittingsK: 2.5,
  opening: null,
  viscosity: 1.14e-6,
};
const pump: Pump = {
  ...curveFromRatings(toSi(500, "gph"), 4, 13.6),
  noFlowCurrent: 1.2,
  openFlowCurrent: 2,
};
const battery: Supply = { voltage: 12.8, resistance: 0.1 };

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Pumps, hoses, lifts and supplies of all sorts, with wells below and tanks above the outlet. */
const anyPump = fc
  .record({
    open: real(2e-5, 2e-3),
    head: real(0.5, 30),
    rated: fc.constantFrom(12, 13.6, 24),
    idle: real(0, 5),
    more: real(-0.5, 6),
  })
  .map(
    ({ open, head, rated, idle, more }): Pump => ({
      ...curveFromRatings(open, head, rated),
      noFlowCurrent: idle,
      openFlowCurrent: Math.max(0, idle + more),
    }),
  );
const anyHose = fc.record({
  length: real(0, 100),
  bore: real(0.008, 0.05),
  roughness: real(0, 1e-4),
  fittingsK: real(0, 40),
  opening: fc.option(real(1e-6, 1e-3)),
  viscosity: real(6e-7, 1.8e-6),
});
const anySupply = fc.record({ voltage: real(5, 30), resistance: real(0, 3) });
const anyLifting = fc.record({ pump: anyPump, line: anyHose, lift: real(-3, 20) });

describe("the curve of a pump", () => {
  test("goes through open flow and shut-off head, at any voltage in its own measure", () => {
    expect(pumpHead(pump, 0, 13.6)).toBeCloseTo(4, 12);
    expect(pumpHead(pump, openFlow(pump), 13.6)).toBeCloseTo(0, 12);
    expect(pumpHead(pump, 0, 6.8)).toBeCloseTo(1, 12);
    expect(pumpHead(pump, openFlow(pump, 6.8), 6.8)).toBeCloseTo(0, 12);
  });

  test("fitted to points that lie on a curve gives that curve back", () => {
    fc.assert(
      fc.property(anyPump, ({ shutoffHead, fall, ratedVoltage }) => {
        const open = Math.sqrt(shutoffHead / fall);
        const points = [0, 0.3, 0.6, 0.9].map((share) => ({
          flow: share * open,
          head: shutoffHead * (1 - share * share),
        }));
        const fitted = curveFromPoints(points, ratedVoltage);
        expect(fitted.shutoffHead / shutoffHead).toBeCloseTo(1, 9);
        expect(fitted.fall / fall).toBeCloseTo(1, 9);
      }),
      { verbose: 1 },
    );
  });

  test("refuses points that are no curve of a pump", () => {
    expect(() => curveFromPoints([{ flow: 1e-4, head: 2 }], 12)).toThrow(DomainError);
    const rising = [
      { flow: 1e-4, head: 1 },
      { flow: 2e-4, head: 2 },
    ];
    expect(() => curveFromPoints(rising, 12)).toThrow(/head must fall/);
    const same = [
      { flow: 1e-4, head: 1 },
      { flow: 1e-4, head: 2 },
    ];
    expect(() => curveFromPoints(same, 12)).toThrow(/different flows/);
  });

  test("of a label is believed for 0.8 of its flow, and the shut-off head stays", () => {
    const believed = believedCurve(pump);
    expect(openFlow(believed) / openFlow(pump)).toBeCloseTo(0.8, 12);
    expect(believed.shutoffHead).toBe(4);
    expect(() => believedCurve(pump, 0)).toThrow(DomainError);
    expect(() => believedCurve(pump, 1.2)).toThrow(DomainError);
  });

  test("draws its two rated currents, with the square of the voltage, and no more when driven by the water", () => {
    expect(pumpCurrent(pump, 0, 13.6)).toBeCloseTo(1.2, 12);
    expect(pumpCurrent(pump, openFlow(pump), 13.6)).toBeCloseTo(2, 12);
    expect(pumpCurrent(pump, openFlow(pump, 6.8), 6.8)).toBeCloseTo(0.5, 12);
    expect(pumpCurrent(pump, 3 * openFlow(pump), 13.6)).toBeCloseTo(2, 12);
    expect(pumpCurrent(pump, 0, 0)).toBe(0);
    expect(() => pumpCurrent(pump, -1e-5, 12)).toThrow(DomainError);
  });

  test("at another voltage is where the affinity laws take each of its duties", () => {
    fc.assert(
      fc.property(anyPump, real(0, 1), real(0.3, 2), (one, share, ratio) => {
        const flow = share * openFlow(one);
        const head = pumpHead(one, flow, one.ratedVoltage);
        const there = dutyAtSpeed({ flow, head, power: 1 }, ratio);
        expect(pumpHead(one, there.flow, ratio * one.ratedVoltage)).toBeCloseTo(there.head, 9);
      }),
      { verbose: 1 },
    );
  });
});

describe("one solved point", () => {
  test("makes just the head that lift and losses take, to 1e-9", () => {
    fc.assert(
      fc.property(anyLifting, anySupply, (lifting, supply) => {
        const run = pumpRun(lifting, supply);
        fc.pre(run.flow > 0);
        const made = pumpHead(lifting.pump, run.flow, run.arrivingVoltage);
        const taken = lifting.lift + gravityHead(lifting.line, run.flow);
        const scale = lifting.pump.shutoffHead + Math.abs(lifting.lift) + gravityHead(lifting.line, run.flow);
        expect(Math.abs(made - taken) / scale).toBeLessThan(1e-9);
        expect(Math.abs(run.head - taken) / scale).toBeLessThan(1e-9);
      }),
      { numRuns: 500, verbose: 1 },
    );
  });

  test("takes from the source what pump and wire use, to 1e-9", () => {
    fc.assert(
      fc.property(anyLifting, anySupply, (lifting, supply) => {
        const { arrivingVoltage, current } = pumpRun(lifting, supply);
        const used = arrivingVoltage * current + current * current * supply.resistance;
        expect(Math.abs(supply.voltage * current - used)).toBeLessThanOrEqual(
          1e-9 * supply.voltage * current,
        );
        expect(Math.abs(supply.voltage - arrivingVoltage - current * supply.resistance)).toBeLessThan(1e-9);
      }),
      { numRuns: 500, verbose: 1 },
    );
  });

  test("never gives less with thicker wire", () => {
    fc.assert(
      fc.property(anyLifting, anySupply, real(0, 1), (lifting, supply, share) => {
        const thicker = pumpRun(lifting, { ...supply, resistance: share * supply.resistance });
        expect(thicker.flow).toBeGreaterThanOrEqual(pumpRun(lifting, supply).flow * (1 - 1e-9));
      }),
      { numRuns: 500, verbose: 1 },
    );
  });

  test("never gives less with more volts, a lower outlet or a wider hose", () => {
    fc.assert(
      fc.property(anyLifting, anySupply, real(1, 2), (lifting, supply, more) => {
        const { flow } = pumpRun(lifting, supply);
        const least = flow * (1 - 1e-9);
        const { line, lift } = lifting;
        expect(pumpRun(lifting, { ...supply, voltage: more * supply.voltage }).flow).toBeGreaterThanOrEqual(
          least,
        );
        expect(pumpRun({ ...lifting, lift: lift - more }, supply).flow).toBeGreaterThanOrEqual(least);
        const wider = { ...line, bore: line.bore * more };
        expect(pumpRun({ ...lifting, line: wider }, supply).flow).toBeGreaterThanOrEqual(least);
      }),
      { numRuns: 300, verbose: 1 },
    );
  });

  test("moves water exactly up to its greatest lift", () => {
    fc.assert(
      fc.property(anyPump, anyHose, anySupply, (one, line, supply) => {
        const most = greatestLift(one, supply);
        expect(pumpRun({ pump: one, line, lift: most * 1.001 }, supply).flow).toBe(0);
        // A pump that draws less while it pumps has more to spare still.
        expect(pumpRun({ pump: one, line, lift: most * 0.999 }, supply).flow).toBeGreaterThan(0);
      }),
      { verbose: 1 },
    );
  });

  test("turns against a shut outlet with its no-flow current and gives nothing", () => {
    const run = pumpRun({ pump, line: { ...hose, opening: 0 }, lift: 0.5 }, battery);
    expect(run.flow).toBe(0);
    expect(run.current).toBeCloseTo(pumpCurrent(pump, 0, run.arrivingVoltage), 12);
    expect(run.head).toBeCloseTo(greatestLift(pump, battery), 12);
  });

  test("refuses a source of no voltage and a wire of negative resistance", () => {
    const lifting: Lifting = { pump, line: hose, lift: 1 };
    expect(() => pumpRun(lifting, { voltage: 0, resistance: 0 })).toThrow(DomainError);
    expect(() => pumpRun(lifting, { voltage: 12, resistance: -1 })).toThrow(DomainError);
    expect(() => pumpRun({ ...lifting, lift: Number.NaN }, battery)).toThrow(DomainError);
  });
});

describe("a garden hose", () => {
  const flowOf = (gph: number, bore: number, opening: number | null = null) => {
    const one: Pump = { ...pump, ...curveFromRatings(toSi(gph, "gph"), 4, 13.6) };
    const line = { ...hose, bore: toSi(bore, "mm"), opening };
    return pumpRun({ pump: one, line, lift: 1 }, { voltage: 13.6, resistance: 0 }).flow;
  };

  test("of 3/4 in gains more than a pump of 1100 gph, and less so with a rose", () => {
    const hoseGain = flowOf(500, 19.05) / flowOf(500, 15.9);
    expect(pumpRun({ pump, line: hose, lift: 1 }, battery).flow / openFlow(pump)).toBeLessThan(0.5);
    expect(hoseGain).toBeGreaterThan(flowOf(1100, 15.9) / flowOf(500, 15.9));
    const rose = 200 * openingOf(toSi(0.8, "mm"), 0.62);
    expect(flowOf(500, 19.05, rose) / flowOf(500, 15.9, rose)).toBeLessThan(hoseGain);
  });

  test("runs on downhill when the pump is off, slower than without a pump in the way, and not uphill", () => {
    const by = flowByItself({ pump, line: hose, lift: -0.5 });
    expect(by).toBeGreaterThan(0);
    expect(by).toBeLessThan(gravityFlow(hose, 0.5));
    expect(pumpHead(pump, by, 0)).toBeCloseTo(-0.5 + gravityHead(hose, by), 9);
    expect(flowByItself({ pump, line: hose, lift: 0.1 })).toBe(0);
  });
});

describe("a bucket and a clock", () => {
  test("teach the loss of a watering head, which then gives the bucket's flow back", () => {
    fc.assert(
      fc.property(real(0, 2), real(0, 1), real(0, 500), (lift, resistance, k) => {
        const supply = { voltage: 12.6, resistance };
        const withHead = { pump, line: { ...hose, fittingsK: hose.fittingsK + k }, lift };
        const { flow } = pumpRun(withHead, supply);
        fc.pre(flow > 0);
        const taught = outletKFromBucket({ pump, line: hose, lift }, supply, flow);
        expect(taught).toBeCloseTo(k, 5);
      }),
      { verbose: 1 },
    );
  });

  test("cannot show more than the pump gives without a watering head", () => {
    const lifting: Lifting = { pump, line: hose, lift: 1 };
    const { flow } = pumpRun(lifting, battery);
    expect(() => outletKFromBucket(lifting, battery, flow * 1.05)).toThrow(/no more than the pump gives/);
  });
});
