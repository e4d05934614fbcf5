import { describe, expect, test } from "vitest";
import { airPressure } from "../../src/physics/air.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  atmosphericHead,
  siphonLimit,
  vapourPressure,
  waterDensity,
  waterViscosity,
} from "../../src/physics/water.ts";
import { toSi } from "../../src/units/unit.ts";

const celsius = (degrees: number) => toSi(degrees, "degC");
const steps = Array.from({ length: 50 }, (_, index) => index);

describe("water", () => {
  test("is densest near 4 °C", () => {
    const densest = steps.reduce(
      (best, t) => (waterDensity(celsius(t)) > waterDensity(celsius(best)) ? t : best),
      0,
    );
    expect(densest).toBe(4);
  });

  test("gets thinner and nearer to boiling as it warms", () => {
    for (const t of steps) {
      expect(waterViscosity(celsius(t + 1))).toBeLessThan(waterViscosity(celsius(t)));
      expect(vapourPressure(celsius(t + 1))).toBeGreaterThan(vapourPressure(celsius(t)));
    }
  });

  test("weighs about 8 lb a US gallon, as the trade has it (common practice, no source)", () => {
    expect((waterDensity(celsius(15)) * toSi(1, "gal")) / toSi(1, "lb")).toBeCloseTo(8.3, 1);
  });

  test.each([-0.1, 50.1, Number.NaN])("%s °C is refused, naming the limit's source", (degrees) => {
    for (const property of [waterDensity, waterViscosity, vapourPressure]) {
      expect(() => property(celsius(degrees))).toThrow(DomainError);
    }
  });
});

describe("the air's weight", () => {
  // FAO-56 Eq. 7 and its Table 2.1 (from memory): 101.3 kPa at the sea, 90.0 kPa at 1,000 m, 79.8 kPa at 2,000 m.
  test("is that of FAO-56 at the sea and less with every metre up", () => {
    expect(airPressure(0)).toBe(101_300);
    expect(airPressure(1000) / 1000).toBeCloseTo(90, 1);
    expect(airPressure(2000) / 1000).toBeCloseTo(79.8, 1);
    for (const z of [0, 100, 1000, 3000]) expect(airPressure(z + 1)).toBeLessThan(airPressure(z));
  });

  test("balances 10.3 m of water at the sea, and a siphon lifts less by the vapour pressure", () => {
    expect(atmosphericHead(0, celsius(15))).toBeCloseTo(10.34, 2);
    expect(siphonLimit(0, celsius(15))).toBeLessThan(atmosphericHead(0, celsius(15)));
  });

  test("is refused above where people garden", () => {
    expect(() => airPressure(9500)).toThrow(DomainError);
  });
});
