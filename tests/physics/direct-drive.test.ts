import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { directDay, directRun } from "../../src/physics/direct-drive.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { gravityHead } from "../../src/physics/gravity-line.ts";
import { curveInAir } from "../../src/physics/panel-charging.ts";
import { type PanelLabel, panelCurrent, panelCurve } from "../../src/physics/panel-curve.ts";
import { curveFromRatings, type Pump, pumpCurrent, pumpHead } from "../../src/physics/pump-curve.ts";
import { flowByItself, type Lifting } from "../../src/physics/pump-run.ts";
import { dayOnTilted } from "../../src/physics/tilted-sun.ts";
import { MEGAJOULE } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";

const pump: Pump = {
  ...curveFromRatings(toSi(800, "gph"), 4, 12),
  noFlowCurrent: 1.8,
  openFlowCurrent: 3,
};
const line = {
  length: 15,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 2.5,
  opening: null,
  viscosity: 1.14e-6,
};
const lifting: Lifting = { pump, line, lift: 1 };
/** 36 cells, two and a half times the 27 W or so that the pump draws at work. */
const label: PanelLabel = {
  openVoltage: 21.6,
  bestVoltage: 18,
  shortCurrent: 4,
  bestCurrent: 3.7,
  powerCoefficient: -0.004,
};
const sixty: PanelLabel = {
  ...label,
  openVoltage: 37.5,
  bestVoltage: 30.5,
  shortCurrent: 8.8,
  bestCurrent: 8.2,
};
const air = toSi(22, "degC");
const curveAt = (irradiance: number, bank = 1) =>
  curveInAir({ label, bank, noct: toSi(46, "degC"), losses: 0 }, irradiance, air);
const dayOf = (megajoules: number) =>
  dayOnTilted(
    {
      latitude: toSi(40, "deg"),
      day: 172,
      global: megajoules * MEGAJOULE,
      plane: { tilt: toSi(25, "deg"), azimuth: Math.PI },
      albedo: 0.2,
    },
    48,
    "day",
  );
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a pump straight on a panel", () => {
  test("draws just what the panel gives at that voltage, and makes just the head it takes, to 1e-9", () => {
    fc.assert(
      fc.property(real(1, 1200), real(0, 5), real(-1, 3.5), real(0, 2), (light, bank, lift, resistance) => {
        const curve = curveAt(light, bank);
        const run = directRun({ ...lifting, lift }, resistance, curve);
        const given = panelCurrent(curve, run.arrivingVoltage + run.current * resistance);
        fc.pre(run.current > 0);
        expect(Math.abs(given - run.current)).toBeLessThan(1e-9 * (1 + curve.short));
        expect(run.current).toBeCloseTo(pumpCurrent(pump, run.flow, run.arrivingVoltage), 9);
        const made = pumpHead(pump, run.flow, run.arrivingVoltage);
        expect(Math.abs(made - run.head)).toBeLessThan(1e-9 * (4 + Math.abs(lift)));
        if (run.flow > 0) expect(run.head).toBeCloseTo(lift + gravityHead(line, run.flow), 9);
      }),
      { numRuns: 300, verbose: 1 },
    );
  });

  test("never gives less with more light, more panel or thicker wire", () => {
    fc.assert(
      fc.property(real(0, 1000), real(0, 200), real(0.1, 3), real(0, 2), (light, more, bank, resistance) => {
        const cell = { irradiance: light, cellTemperature: air };
        const { flow } = directRun(lifting, resistance, panelCurve(label, cell, bank));
        const least = flow * (1 - 1e-9);
        const lit = panelCurve(label, { ...cell, irradiance: light + more }, bank);
        expect(directRun(lifting, resistance, lit).flow).toBeGreaterThanOrEqual(least);
        const bigger = panelCurve(label, cell, bank + more);
        expect(directRun(lifting, resistance, bigger).flow).toBeGreaterThanOrEqual(least);
        const thick = directRun(lifting, resistance / 2, panelCurve(label, cell, bank));
        expect(thick.flow).toBeGreaterThanOrEqual(least);
      }),
      { numRuns: 200, verbose: 1 },
    );
  });

  test("stands still in the dark, and water runs through it only downhill", () => {
    expect(directRun(lifting, 0.1, curveAt(0))).toMatchObject({ flow: 0, current: 0, arrivingVoltage: 0 });
    const downhill = { ...lifting, lift: -0.5 };
    expect(directRun(downhill, 0.1, curveAt(0)).flow).toBe(flowByItself(downhill));
    // The first light adds to what runs by itself.
    expect(directRun(downhill, 0.1, curveAt(5)).flow).toBeGreaterThanOrEqual(
      flowByItself(downhill) * (1 - 1e-9),
    );
  });

  test("gives nothing in light too weak to lift, and still turns", () => {
    const run = directRun(lifting, 0.1, curveAt(40));
    expect(run.flow).toBe(0);
    expect(run.current).toBeGreaterThan(0);
    expect(() => directRun(lifting, -0.1, curveAt(40))).toThrow(DomainError);
  });
});

describe("a day straight on a panel", () => {
  const clear = directDay(lifting, 0.1, dayOf(28), (light) => curveAt(light));
  const dull = directDay(lifting, 0.1, dayOf(6), (light) => curveAt(light));

  test("gives full flow about noon under a clear sky and little under cloud", () => {
    const noon = clear.steps[24];
    expect(noon?.share).toBeGreaterThan(0.95);
    expect(clear.fullTime).toBeGreaterThan(toSi(3, "h"));
    expect(dull.fullTime).toBe(0);
    expect(dull.volume).toBeLessThan(clear.volume / 3);
    expect(clear.pumpingTime).toBeGreaterThan(clear.fullTime);
  });

  test("gives less early and late than at noon, alike on both sides of it", () => {
    const shares = clear.steps.map(({ share }) => share);
    expect(shares[2]).toBeLessThan(0.5);
    expect(shares[2]).toBeCloseTo(shares[45] ?? -1, 6);
  });

  test("gives full flow near noon with twice the pump's watts, and never with as many", () => {
    // Common practice, no source: a panel alone wants about twice the pump's watts.
    const watts = pump.openFlowCurrent * pump.ratedVoltage;
    const hours = (ratio: number) => {
      const bank = (ratio * watts) / (label.bestVoltage * label.bestCurrent);
      return directDay(lifting, 0.05, dayOf(28), (light) => curveAt(light, bank)).fullTime / toSi(1, "h");
    };
    expect(hours(1)).toBe(0);
    expect(hours(2)).toBeGreaterThan(3);
    expect(hours(3)).toBeGreaterThan(hours(2));
  });

  test("shows the voltage that a panel of 60 cells drives into a 12 V pump", () => {
    const roof = (light: number) => panelCurve(sixty, { irradiance: light, cellTemperature: air });
    const high = directDay(lifting, 0.1, dayOf(28), roof);
    expect(high.highestVoltage).toBeGreaterThan(1.4 * 12);
  });

  test("has no full flow for a pump that cannot lift at its rated voltage", () => {
    const tooHigh = directDay({ ...lifting, lift: 20 }, 0.1, dayOf(28), (light) => curveAt(light));
    expect(tooHigh).toMatchObject({ pumpingTime: 0, fullTime: 0, volume: 0 });
  });
});
