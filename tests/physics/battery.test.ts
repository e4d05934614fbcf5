import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  coldMultiplier,
  dischargedCharge,
  dischargeTime,
  healthFromTest,
} from "../../src/physics/battery.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { HOUR } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";
import { peukertExponent } from "../oracles/battery.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyDischarge = fc.record({
  capacity: real(toSi(5, "Ah"), toSi(200, "Ah")),
  ratingTime: fc.constantFrom(5 * HOUR, 20 * HOUR),
  current: real(0.1, 60),
  exponent: real(1, 1.4),
});

describe("discharge", () => {
  test("gives less charge the faster it is, and never more than is rated", () => {
    fc.assert(
      fc.property(anyDischarge, real(1, 3), (discharge, faster) => {
        const slow = dischargedCharge(discharge);
        expect(slow).toBeLessThanOrEqual(discharge.capacity * (1 + 1e-12));
        expect(dischargedCharge({ ...discharge, current: discharge.current * faster })).toBeLessThanOrEqual(
          slow * (1 + 1e-12),
        );
      }),
      { verbose: 1 },
    );
  });

  test("shows its own exponent in two tests", () => {
    const of = (current: number) => ({
      current,
      time: dischargeTime({ capacity: 360_000, ratingTime: 20 * HOUR, current, exponent: 1.23 }),
    });
    expect(peukertExponent(of(6), of(25))).toBeCloseTo(1.23, 10);
    expect(() => peukertExponent(of(6), of(6))).toThrow(DomainError);
  });
});

describe("a test with a known load and a clock", () => {
  test("teaches the health with which the battery gives the time that was seen", () => {
    fc.assert(
      fc.property(anyDischarge, real(0.05, 1.2), (label, health) => {
        const time = dischargeTime({ ...label, capacity: health * label.capacity });
        expect(healthFromTest(time, label)).toBeCloseTo(health, 9);
      }),
      { numRuns: 300, verbose: 1 },
    );
  });

  test("of two hours at 5 A shows a 20 Ah lithium battery at half", () => {
    const label = { capacity: toSi(20, "Ah"), ratingTime: 5 * HOUR, current: 5, exponent: 1 };
    expect(healthFromTest(2 * HOUR, label)).toBeCloseTo(0.5, 12);
  });
});

describe("cold", () => {
  test("never makes a lead battery better, and has no jump", () => {
    fc.assert(
      fc.property(real(-6.7, 49), real(0, 1), (celsius, warmer) => {
        const [at, after] = [
          coldMultiplier(toSi(celsius, "degC")),
          coldMultiplier(toSi(celsius + warmer, "degC")),
        ];
        expect(after).toBeLessThanOrEqual(at);
        expect(at - after).toBeLessThanOrEqual(0.035 * warmer + 1e-9);
      }),
      { verbose: 1 },
    );
  });

  test("is refused below what was tabulated", () => {
    expect(() => coldMultiplier(toSi(-10, "degC"))).toThrow(DomainError);
  });
});
