import { describe, expect, test } from "vitest";
import { formulaDimension } from "../../src/formula/dimensions.ts";
import { dimensionOf } from "../../src/units/unit.ts";
import { dimensionOfText, formula, markedIn, problemOf, worldDimension } from "./world.ts";

describe("the kind of an answer", () => {
  test.each([
    ["footprint * rain", "m3"],
    ["tank.capacity / rain", "m2"],
    ["20 gal / 2 day", "m3/s"],
    ["footprint ^ 0.5", "m"],
    ["footprint ^ (1/2) + h", "m"],
    ["h ^ -1", "1/m"],
    ["h ^ 2 + footprint", "m2"],
    ["sqrt(2 * 9.80665 m/s2 * h)", "m/s"],
    ["a ^ b", "1"],
    ["a ^ 1.852", "1"],
    ["max(0, tank.capacity)", "m3"],
    ["max(0, 0, h)", "m"],
    ["abs(h - 2 ft)", "m"],
    ["clamp(h, 0, 2 m)", "m"],
    ["a > b ? 0 : h", "m"],
    ["a > b ? h : 0", "m"],
    ["0 + h", "m"],
    ["h > 0", "1"],
    ["(h > 0) * tank.capacity", "m3"],
    ["floor(h / 1 ft)", "1"],
    ["sin(30 deg)", "1"],
    ["80 Ah * 12 V", "J"],
    ["water_density(site.water_temperature)", "kg/m3"],
    ["circle_area(3/4 in)", "m2"],
    ["atmospheric_head(100 m, 15 degC)", "m"],
    ["$35 / 20 gal", "money/m3"],
  ])("%s is in %s", (text, unit) => {
    expect(dimensionOfText(text)).toEqual(dimensionOf(unit));
  });

  test("a bare 0 alone fits any kind, and says so", () => {
    const any = formulaDimension(formula("max(0, -0)"), worldDimension);
    expect(any.ok && any.fitsAny).toBe(true);
    const one = formulaDimension(formula("0 * h"), worldDimension);
    expect(one.ok && one.fitsAny).toBe(false);
  });
});

describe("temperatures", () => {
  test("a point less a point is a difference, a point and a difference are a point", () => {
    expect(dimensionOfText("site.water_temperature - elsewhere")).toEqual(dimensionOf("delta K"));
    expect(dimensionOfText("site.water_temperature + warmer")).toEqual(dimensionOf("K"));
    expect(dimensionOfText("warmer + site.water_temperature")).toEqual(dimensionOf("K"));
    expect(dimensionOfText("site.water_temperature - 9 delta degF")).toEqual(dimensionOf("K"));
    expect(dimensionOfText("(site.water_temperature - elsewhere) * 2")).toEqual(dimensionOf("delta K"));
    expect(dimensionOfText("max(site.water_temperature, 4 degC)")).toEqual(dimensionOf("K"));
    expect(dimensionOfText("site.water_temperature > 4 degC")).toEqual(dimensionOf("1"));
  });

  test.each([
    ["site.water_temperature + elsewhere", "Two temperatures cannot be added"],
    ["site.water_temperature * 2", "cannot be multiplied"],
    ["2 / site.water_temperature", "cannot be divided"],
    ["-site.water_temperature", "no opposite"],
    ["site.water_temperature ^ 2", "raised to a power"],
    ["sqrt(elsewhere)", "no square root"],
    ["warmer - elsewhere", "This takes a temperature (elsewhere) from a temperature difference (warmer)"],
    ["site.water_temperature > 0", "Write 0 degC"],
    ["max(0, elsewhere)", "Write 0 degC"],
    ["elsewhere > warmer", "compares a temperature (elsewhere) with a temperature difference (warmer)"],
    ["water_density(warmer)", "takes a temperature; this is a temperature difference"],
    ["water_density(0)", "takes a temperature; this is a plain 0"],
  ])("%s is refused", (text, reason) => {
    expect(problemOf(text)?.message).toContain(reason);
  });
});

describe("what does not belong together is refused, both sides named and the place marked", () => {
  test.each([
    ["1 + (2 ft + 20 gal) * 3", "This adds a length (2 ft) to a volume (20 gal).", "2 ft + 20 gal"],
    [
      "tank.capacity - footprint",
      "This takes an area (footprint) from a volume (tank.capacity).",
      "tank.capacity - footprint",
    ],
    ["a * (h + h) + a", "This adds a length (a * (h + h)) to a plain number (a).", "a * (h + h) + a"],
    ["h > 3 gal", "This compares a length (h) with a volume (3 gal).", "h > 3 gal"],
    ["h + 1", "This adds a length (h) to a plain number (1).", "h + 1"],
    [
      "a > b ? h : 3 gal",
      "Both answers must be of one kind: here a length (h), there a volume (3 gal).",
      "a > b ? h : 3 gal",
    ],
    [
      "max(h, 2, 3 ft)",
      "max needs one kind of quantity: here a length (h), there a plain number (2).",
      "max(h, 2, 3 ft)",
    ],
    ["80 Ah + 12 Wh", "This adds a charge (80 Ah) to an energy (12 Wh).", "80 Ah + 12 Wh"],
    ["14 psi + h", "This adds a pressure (14 psi) to a length (h).", "14 psi + h"],
    ["exp(h)", "exp takes a plain number; this is a length (h).", "h"],
    ["sin(1)", "sin takes an angle; this is a plain number (1).", "1"],
    ["round(20 gal)", "round takes a plain number; this is a volume (20 gal).", "20 gal"],
    [
      "atmospheric_head(h, 3 m)",
      "atmospheric_head takes a temperature in place 2; this is a length (3 m).",
      "3 m",
    ],
    ["a ^ h", "A power must be a plain number; this is a length (h).", "h"],
    ["h ^ a", "The power of a length (h) must be written as a whole or half number, such as 2 or 0.5.", "a"],
    [
      "h ^ 1.852",
      "The power of a length (h) must be written as a whole or half number, such as 2 or 0.5.",
      "1.852",
    ],
    ["h * nowhere.x + 1", 'There is no quantity "nowhere.x".', "nowhere.x"],
    ["h * m + 1", "This adds a quantity in m kg (h * m) to a plain number (1).", "h * m + 1"],
  ])("%s", (text, message, marked) => {
    expect(problemOf(text)?.message).toBe(message);
    expect(markedIn(text)).toBe(marked);
  });
});
