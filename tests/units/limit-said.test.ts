import { expect, test } from "vitest";
import { limitSaid } from "../../src/units/limit-said.ts";
import { fromSi } from "../../src/units/unit.ts";

const said = (si: number, unit: string, least: boolean): string => {
  const near = limitSaid(si, unit, least);
  return `${Number(fromSi(near.si, near.unit).toPrecision(12))} ${near.unit}`;
};

test("a limit that is round in meters is said round in feet, gallons or inches, on its allowed side", () => {
  // 0.05 m are 1.97 in, -450 m are -1,476 ft, 0.1 m3 are 26.4 gal, 0.002 m are 0.0787 in: by 0.3048 and 3.785 411 784.
  expect(said(0.05, "ft", true)).toBe("2 in");
  expect(said(-450, "ft", true)).toBe("-1400 ft");
  expect(said(0.1, "gal", false)).toBe("26 gal");
  expect(said(0.002, "in", true)).toBe("0.079 in");
});

test("one that is round already stays as it is", () => {
  expect(said(0.05, "cm", true)).toBe("5 cm");
  expect(said(0.05, "m", true)).toBe("0.05 m");
  expect(said(0, "ft", true)).toBe("0 ft");
  expect(said(5000, "m", false)).toBe("5000 m");
  expect(said(365 * 86_400, "day", false)).toBe("365 day");
});
