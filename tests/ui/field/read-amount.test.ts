// What is typed to be noted is read as it was meant, or refused with a reason: never taken as another amount.
import { describe, expect, test } from "vitest";
import { type Least, readAmount } from "../../../src/ui/field/read-amount.ts";
import type { MeasureName } from "../../../src/units/measures.ts";

const read = (
  text: string,
  measure: MeasureName,
  defaultUnit: string,
  least: Least = "some",
  locale = "en-US",
) => readAmount(text, { measure, defaultUnit, locale }, least);

const GALLON = 0.003785411784;
const INCH = 0.0254;

describe("is read in the unit it was typed in", () => {
  const cases: readonly (readonly [string, MeasureName, string, number])[] = [
    ["40", "volume", "gal", 40 * GALLON],
    ["40 gal", "volume", "gal", 40 * GALLON],
    ["40 L", "volume", "gal", 0.04],
    ["13 1/2", "depth", "in", 13.5 * INCH],
    ["13½", "depth", "in", 13.5 * INCH],
    ["1/2", "depth", "in", INCH / 2],
    ["30 cm", "depth", "in", 0.3],
    ["1 ft 2 in", "depth", "in", 14 * INCH],
    ["12 mm", "rain", "in", 0.012],
    ["0.4", "rain", "in", 0.4 * INCH],
    ["1,5", "depth", "in", 1.5 * INCH],
    ["2 min 5 s", "duration", "s", 125],
    ["20", "duration", "min", 1200],
  ];
  test.each(cases)("%s as a %s in %s", (text, measure, unit, si) => {
    const found = read(text, measure, unit);
    expect(found.ok && found.si).toBeCloseTo(si, 9);
  });

  test("with either decimal sign where the sheet writes a comma", () => {
    for (const text of ["1,5", "1.5"])
      expect(read(text, "depth", "cm", "some", "de-DE")).toMatchObject({ ok: true, value: 1.5, unit: "cm" });
  });

  test("a dip of nothing, but no watering of nothing", () => {
    expect(read("0", "depth", "in", "none")).toMatchObject({ ok: true, si: 0 });
    expect(read("0", "volume", "gal")).toMatchObject({ ok: false });
  });
});

describe("is refused with a reason", () => {
  test.each(["", "  ", "abc", "-5", "40 in", "40 x", "20 psi", "1e999", "NaN", "1/0"])("%j", (text) => {
    const found = read(text, "volume", "gal");
    expect(found).toMatchObject({ ok: false });
    expect(!found.ok && found.message).toMatch(/\w.*\.$/);
  });
});
