import { describe, expect, test } from "vitest";
import { readFormula } from "../../src/formula/read.ts";
import { dimensionOf } from "../../src/units/unit.ts";
import { answerOf, dimensionOfText, formula, markedIn, problemOf } from "./world.ts";

const INCH = 0.0254;
const GALLON = 231 * INCH ** 3;

describe("literals", () => {
  // Exact by definition: inch 25.4 mm (1959), US gallon 231 in3, imperial gallon 4.54609 L (UK 1985), °F scale, pound
  // 0.45359237 kg with 9.80665 m/s2.
  test.each([
    ["20 gal", 20 * GALLON, "m3"],
    ["20gal", 20 * GALLON, "m3"],
    ["20 imp gal", 0.0909218, "m3"],
    ["1 1/2 in", 1.5 * INCH, "m"],
    ["3/4 in", 0.75 * INCH, "m"],
    ['3/4"', 0.75 * INCH, "m"],
    ["0.5 mm", 0.0005, "m"],
    [".5 mm", 0.0005, "m"],
    ["14 psi", (14 * 0.45359237 * 9.80665) / INCH ** 2, "Pa"],
    ["90 %", 0.9, "1"],
    ["90%", 0.9, "1"],
    ["$35", 35, "money"],
    ["$0.50/L", 500, "money/m3"],
    ["35 USD", 35, "money"],
    ["3 m2", 3, "m2"],
    ["3 m²", 3, "m2"],
    ["3 kg/m3", 3, "kg/m3"],
    ["2 Pa s", 2, "Pa s"],
    ["9.80665 m/s2", 9.80665, "m/s2"],
    ["40 degF", ((40 + 459.67) * 5) / 9, "K"],
    ["15 degC", 288.15, "K"],
    ["9 delta degF", 5, "delta K"],
    ["1e-3 m", 0.001, "m"],
    ["5 in", 5 * INCH, "m"],
    ["1 day", 86_400, "s"],
    ["1 1/2", 1.5, "1"],
  ])("%s is read to its exact size and kind", (text, si, unit) => {
    expect(answerOf(text)).toBeCloseTo(si, 12 - Math.ceil(Math.log10(Math.max(1, Math.abs(si)))));
    expect(dimensionOfText(text)).toEqual(dimensionOf(unit));
  });

  test("a unit stands only directly after a number, so a name may look like one", () => {
    expect(answerOf("20 gal / h")).toBeCloseTo((20 * GALLON) / 1.5, 12);
    expect(answerOf("gal * h / m")).toBe((5 * 1.5) / 4);
    expect(answerOf("2 m * m")).toBe(8);
    expect(answerOf("20 L-gal")).toBeCloseTo(0.02 - 5, 12);
  });

  test("units end where the language goes on", () => {
    expect(answerOf("20 gal / 2 day")).toBeCloseTo((10 * GALLON) / 86_400, 15);
    expect(answerOf("2 * 55 gal")).toBeCloseTo(110 * GALLON, 12);
    expect(answerOf("rain > 5 in or rain < 1 in and a > 1")).toBe(1);
    expect(answerOf("rain > 5 in ? 1 : 2")).toBe(2);
    expect(answerOf("max(2 min, 5 s)")).toBe(120);
  });

  test.each([
    ["1,200 gal", ",", "No commas"],
    ["5 wombats", "wombats", "wombats"],
    ["5 m^2", "m^", "two ways"],
    ["a / 3/4 in", "3/4 in", "brackets around this fraction"],
    ["1/0 in", "1/0", "0 below"],
    ["6 ft 3 in", "3 in", "sign such as +"],
    ["€35", "€", "not used"],
    ["1e999", "1e999", "too large"],
  ])("%s is refused at %s", (text, marked, reason) => {
    expect(problemOf(text)?.message).toContain(reason);
    expect(markedIn(text)).toBe(marked);
  });

  test("the minus before a thermometer's number belongs to it, since there are frosts", () => {
    expect(answerOf("-5 degC")).toBeCloseTo(268.15, 12);
    expect(answerOf("site.water_temperature - -5 degC")).toBeCloseTo(20, 12);
    expect(answerOf("max(-40 degF, -40 degC)")).toBeCloseTo(233.15, 12);
    expect(dimensionOfText("-5 degC")).toEqual(dimensionOf("K"));
    expect(answerOf("site.water_temperature - 5 degC")).toBeCloseTo(10, 12);
    expect(problemOf("-300 degC")?.message).toBe("That is colder than absolute zero.");
    expect(markedIn("-300 degC")).toBe("-300 degC");
  });

  test("money of another currency is refused, the worksheet's own is read", () => {
    expect(readFormula("€35", { currency: "€" }).ok).toBe(true);
    const other = readFormula("35 €", { currency: "$" });
    expect(other.ok ? "" : other.problem.message).toBe("This worksheet counts money in $, not in €.");
  });
});

describe("order of working", () => {
  test.each([
    ["-2^2", -4],
    ["2^3^2", 512],
    ["2^-1", 0.5],
    ["a / b * c", (7 / 3) * 2],
    ["a - b - c", 2],
    ["a - -b", 10],
    ["--a", 7],
    ["a + b * c ^ 2", 19],
    ["(a + b) * c", 20],
    ["-a * b", -21],
    ["a > b and b > c or a < c", 1],
    ["a < c or b > c and c > a", 0],
    ["not (a > b)", 0],
    ["a > b ? 1 : 2", 1],
    ["a < b ? 1 : a < c ? 2 : 3", 3],
    ["a > b ? b > c ? 1 : 2 : 3", 1],
    ["(a > b) + (b > c)", 2],
    ["a == 7", 1],
    ["a != 7", 0],
    ["a >= 7 and a <= 7", 1],
    ["min(a, b, c) + max(a, b)", 9],
    ["clamp(a, b, 5) + abs(-c)", 7],
    ["3 × a ÷ b − c²", 3],
  ])("%s is %d", (text, value) => {
    expect(answerOf(text)).toBe(value);
  });
});

describe("what a formula tells", () => {
  test("every name read, with its columns, each time it appears", () => {
    const text = "max(footprint, site.latitude) - 2 footprint_of";
    const { names } = formula("max(footprint, site.latitude) * footprint");
    expect(names).toEqual([
      { name: "footprint", start: 4, end: 13 },
      { name: "site.latitude", start: 15, end: 28 },
      { name: "footprint", start: 32, end: 41 },
    ]);
    expect(readFormula(text).ok).toBe(false);
  });

  test("measured.flow is a name like any other", () => {
    expect(formula("measured.flow").names.map(({ name }) => name)).toEqual(["measured.flow"]);
  });

  test("whether it is a condition", () => {
    expect(formula("a > b").isCondition).toBe(true);
    expect(formula("not (a > b)").isCondition).toBe(true);
    expect(formula("a > b ? a < c : b < c").isCondition).toBe(true);
    expect(formula("a > b ? a : b").isCondition).toBe(false);
    expect(formula("a + b").isCondition).toBe(false);
  });

  test("it is frozen through and through", () => {
    const frozen = (value: unknown): boolean =>
      typeof value !== "object" ||
      value === null ||
      (Object.isFrozen(value) && Object.values(value).every(frozen));
    expect(frozen(formula("a > b ? max(a, 2 gal / gal) : -(b + 1)^2"))).toBe(true);
  });
});

describe("a text out of order is refused with its place marked", () => {
  test.each([
    ["", ""],
    ["   ", ""],
    ["a +", "+"],
    ["* a", "*"],
    ["a * / b", "/"],
    ["a b", "b"],
    ["2 x", "x"],
    ["(a", "("],
    ["a)", ")"],
    ["()", ")"],
    ["max(a, ", ","],
    ["max(a, b", "max("],
    ["max(a,, b)", ","],
    ["(a, b)", ","],
    ["a > b ? 1", "?"],
    ["a : b", ":"],
    ["(a > b ? 1) : 2", "?"],
    ["5(a)", "("],
    ["(a)(b)", "("],
    ["a not b", "not"],
    ["+a", "+"],
    ["a = 5", "="],
    ["a . b", "."],
    ["a.b.c", "a.b.c"],
    ["Footprint * 2", "Footprint"],
    ["not a", "a"],
    ["a and b > c", "a"],
    ["a ? b : c", "a"],
    ["1 < a < 5", "1 < a < 5"],
    ["pump(3)", "pump"],
    ["tank.capacity(3)", "tank.capacity"],
    ["min(1)", "min(1)"],
    ["sqrt(1, 2)", "sqrt(1, 2)"],
    ["sqrt()", "sqrt()"],
  ])("%s", (text, marked) => {
    expect(markedIn(text)).toBe(marked);
    expect(problemOf(text)?.message).toMatch(/^[\p{L}"0-9].*\.$/u);
  });
});
