import { describe, expect, test } from "vitest";
import { monthlyIn, monthlyUnit, roundedMonthly, shownMonthly } from "../../src/units/monthly.ts";

describe("monthly figures", () => {
  test("a US sheet has inches and Fahrenheit, whatever they were stored in; counts have no unit", () => {
    expect(monthlyUnit("rain", "mm", "us")).toBe("in");
    expect(monthlyUnit("temperature", "degC", "us")).toBe("degF");
    expect(monthlyUnit("evaporation", "mm/day", "us")).toBe("in/day");
    expect(monthlyUnit("rain", "in", "metric")).toBe("mm");
    expect(monthlyUnit("count", "", "us")).toBe("");
  });

  test("turned into another unit and shown: 25.4 mm are an inch, 10 °C are 50 °F, by definition", () => {
    expect(monthlyIn(25.4, "mm", "in")).toBe(1);
    expect(monthlyIn(10, "degC", "degF")).toBe(50);
    expect(shownMonthly(monthlyIn(60, "mm", "in"), "in")).toBe(2.36);
    expect(shownMonthly(monthlyIn(2.5, "mm/day", "in/day"), "in/day")).toBe(0.098);
  });

  test("what was typed stands as it was typed", () => {
    expect(monthlyIn(2.1257, "in", "in")).toBe(2.1257);
    expect(shownMonthly(2.1257, "in")).toBe(2.1257);
    expect(roundedMonthly(2.1257, "in")).toBe(2.13);
  });

  test("there and back a figure is the same to the twelfth figure", () => {
    for (let mm = 0; mm < 400; mm += 0.7) {
      const back = monthlyIn(monthlyIn(mm, "mm", "in"), "in", "mm");
      expect(Math.abs(back - mm)).toBeLessThanOrEqual(1e-11 * mm);
    }
  });
});
