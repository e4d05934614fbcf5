import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellTemperature } from "../../src/physics/cell-temperature.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { type ChargingPanel, chargingPower, dailyCharge } from "../../src/physics/panel-charging.ts";
import {
  bestPoint,
  openCircuitVoltage,
  type PanelLabel,
  panelCurrent,
  panelCurve,
  panelHealth,
} from "../../src/physics/panel-curve.ts";
import { dayOnTilted } from "../../src/physics/tilted-sun.ts";
import { MEGAJOULE } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";
import { ratedPanelPower } from "../oracles/panel-curve.ts";
import { singleDiodePoints } from "../oracles/single-diode.ts";

const label: PanelLabel = {
  openVoltage: 21.6,
  bestVoltage: 18,
  shortCurrent: 6,
  bestCurrent: 5.56,
  powerCoefficient: -0.004,
};
const rated = { irradiance: 1000, cellTemperature: toSi(25, "degC") };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLabel = fc
  .record({ open: real(5, 80), share: real(0.7, 0.88), short: real(0.2, 15), best: real(0.85, 0.97) })
  .map(
    ({ open, share, short, best }): PanelLabel => ({
      openVoltage: open,
      bestVoltage: share * open,
      shortCurrent: short,
      bestCurrent: best * short,
      powerCoefficient: -0.004,
    }),
  );

describe("a panel's curve", () => {
  test("passes through the three points of its label", () => {
    fc.assert(
      fc.property(anyLabel, (of) => {
        const curve = panelCurve(of, rated);
        expect(panelCurrent(curve, 0)).toBeCloseTo(of.shortCurrent, 9);
        expect(panelCurrent(curve, of.bestVoltage) / of.bestCurrent).toBeCloseTo(1, 9);
        expect(openCircuitVoltage(curve) / of.openVoltage).toBeCloseTo(1, 9);
      }),
      { verbose: 1 },
    );
  });

  test("gives within 1 % of the label's power at best, for labels of real panels", () => {
    const sixty = { ...label, openVoltage: 37.5, bestVoltage: 30.5, shortCurrent: 8.8, bestCurrent: 8.2 };
    for (const of of [label, sixty]) {
      const { voltage, current } = bestPoint(panelCurve(of, rated));
      const power = voltage * current;
      expect(power).toBeGreaterThanOrEqual(of.bestVoltage * of.bestCurrent * (1 - 1e-12));
      expect(power / (of.bestVoltage * of.bestCurrent)).toBeLessThan(1.01);
    }
  });

  test("lies close to that of its equivalent circuit", () => {
    const cell = singleDiodePoints({
      lightCurrent: 6,
      saturationCurrent: 1e-9,
      seriesResistance: 0.2,
      shuntResistance: 300,
      thermalVoltage: 0.95,
    });
    const curve = panelCurve(
      {
        openVoltage: cell.openCircuitVoltage,
        bestVoltage: cell.best.voltage,
        shortCurrent: cell.shortCircuitCurrent,
        bestCurrent: cell.best.current,
        powerCoefficient: -0.004,
      },
      rated,
    );
    const { voltage, current } = bestPoint(curve);
    expect(Math.abs((voltage * current) / (cell.best.voltage * cell.best.current) - 1)).toBeLessThan(0.01);
  });

  test("loses power with heat as its coefficient says, at full light", () => {
    const hot = bestPoint(panelCurve(label, { irradiance: 1000, cellTemperature: toSi(60, "degC") }));
    const cool = bestPoint(panelCurve(label, rated));
    expect((hot.voltage * hot.current) / (cool.voltage * cool.current)).toBeCloseTo(1 - 0.004 * 35, 9);
  });

  test("gives no less in more light, and nothing in the dark", () => {
    fc.assert(
      fc.property(anyLabel, real(0, 1000), real(0, 200), real(0, 40), (of, light, more, voltage) => {
        const at = (irradiance: number) => panelCurrent(panelCurve(of, { ...rated, irradiance }), voltage);
        expect(at(light + more)).toBeGreaterThanOrEqual(at(light));
      }),
      { verbose: 1 },
    );
    expect(bestPoint(panelCurve(label, { ...rated, irradiance: 0 }))).toEqual({ voltage: 0, current: 0 });
    expect(openCircuitVoltage(panelCurve(label, rated, 0))).toBe(0);
  });

  test.each([
    ["more current at its best than at short circuit", { bestCurrent: 6.2 }],
    ["its best voltage above its open one", { bestVoltage: 22 }],
    ["a best point below the straight line between the others", { bestVoltage: 2, bestCurrent: 1 }],
    ["no voltage", { openVoltage: 0 }],
    ["a power that rises with heat", { powerCoefficient: 0.004 }],
  ])("refuses a label with %s", (_, change) => {
    expect(() => panelCurve({ ...label, ...change }, rated)).toThrow(DomainError);
  });

  test("of a second-hand panel is its label times the health that its short-circuit current shows", () => {
    const weak = panelCurve(label, { ...rated, irradiance: 850 }, 0.8);
    expect(panelHealth(panelCurrent(weak, 0), label.shortCurrent, 850)).toBeCloseTo(0.8, 9);
    expect(() => panelHealth(4, 6, 0)).toThrow(DomainError);
  });
});

describe("heat of the cells", () => {
  test("is the air's in the dark and the nominal one in nominal light", () => {
    expect(cellTemperature({ irradiance: 0, air: 290, noct: 319 })).toBe(290);
    const nominal = { irradiance: 800, air: toSi(20, "degC"), noct: toSi(46, "degC") };
    expect(cellTemperature(nominal)).toBeCloseTo(toSi(46, "degC"), 9);
  });
});

describe("charging", () => {
  const panel: ChargingPanel = {
    label,
    bank: 1,
    noct: toSi(46, "degC"),
    losses: 0.1,
    controller: "mppt",
    batteryVoltage: 13,
  };
  const day = dayOnTilted(
    {
      latitude: toSi(40, "deg"),
      day: 172,
      global: 22 * MEGAJOULE,
      plane: { tilt: 0.5, azimuth: Math.PI },
      albedo: 0.2,
    },
    48,
    "day",
  );
  const air = toSi(25, "degC");

  test("with a tracking controller gains over PWM, and more when cold", () => {
    const gain = (celsius: number) => {
      const curve = panelCurve(label, { irradiance: 1000, cellTemperature: toSi(celsius, "degC") });
      return chargingPower(curve, "mppt", 13) / chargingPower(curve, "pwm", 13);
    };
    expect(gain(10)).toBeGreaterThan(gain(50));
    expect(gain(25)).toBeGreaterThan(1.1);
    expect(gain(25)).toBeLessThan(1.4);
  });

  test("through a day is no less with more panel or fewer losses", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("none", "pwm", "mppt"),
        real(0, 3),
        real(0, 2),
        real(0, 0.5),
        (controller, bank, more, losses) => {
          const one = dailyCharge({ ...panel, controller, bank, losses }, day, air);
          const bigger = dailyCharge({ ...panel, controller, bank: bank + more, losses }, day, air);
          const cleaner = dailyCharge({ ...panel, controller, bank, losses: losses / 2 }, day, air);
          expect(bigger).toBeGreaterThanOrEqual(one * (1 - 1e-12));
          expect(cleaner).toBeGreaterThanOrEqual(one * (1 - 1e-12));
        },
      ),
      { numRuns: 50, verbose: 1 },
    );
  });

  test("never puts in more than the panel's rating over the sun's hours", () => {
    const sunny = day.reduce((sum, step) => {
      const cold = { irradiance: step.irradiance, cellTemperature: air };
      return sum + ratedPanelPower(100.08, cold, 0) * step.length;
    }, 0);
    expect(dailyCharge({ ...panel, losses: 0 }, day, air)).toBeLessThan(sunny);
    expect(dailyCharge(panel, day, air)).toBeGreaterThan(0.6 * sunny);
  });

  test("gives nothing into a battery above the panel's open voltage without a tracker", () => {
    expect(chargingPower(panelCurve(label, rated), "pwm", 25)).toBe(0);
  });
});
