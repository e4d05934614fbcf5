import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { MeasureName } from "../../src/units/measures.ts";
import { type ReadOptions, readQuantity } from "../../src/units/read.ts";
import { dimensionOf, toSi } from "../../src/units/unit.ts";

type Typed = [text: string, value: number, unit: string, options?: ReadOptions];

const german = { locale: "de-DE", currency: "€" };
const NBSP = "\u00a0";

const TYPED: readonly Typed[] = [
  ["20 gal", 20, "gal", { measure: "volume" }],
  ["75L", 75, "L", { measure: "volume" }],
  ["1 1/2 in", 1.5, "in", { measure: "bore" }],
  ['3/4"', 0.75, "in", { measure: "bore" }],
  ["3/4″", 0.75, "in"],
  ['1-1/2"', 1.5, "in"],
  ["1½ in", 1.5, "in"],
  ["½ in", 0.5, "in"],
  ["2 ¾ in", 2.75, "in"],
  ["1,200 gal", 1200, "gal"],
  ["1,234,567.5 gal", 1_234_567.5, "gal"],
  ["6 ft 3 in", 6.25, "ft", { measure: "height" }],
  ["6'3\"", 6.25, "ft"],
  ["6′ 3″", 6.25, "ft"],
  ["6 ft 4 in", 76, "in"],
  ["6' 3 1/2\"", 75.5, "in"],
  ["-6 ft 3 in", -6.25, "ft"],
  ["5 gpm", 5, "gpm", { measure: "flow" }],
  ["5 gal/min", 5, "gal/min", { measure: "flow" }],
  ["5 gallons per minute", 5, "gal/min"],
  ["14 psi", 14, "psi", { measure: "pressure" }],
  ["80 Ah", 80, "Ah", { measure: "charge" }],
  ["12.8V", 12.8, "V", { measure: "voltage" }],
  ["0.6 in/h", 0.6, "in/h", { measure: "rain_rate" }],
  [".5 in", 0.5, "in"],
  ["5. in", 5, "in"],
  ["40 degF", 40, "degF", { measure: "temperature" }],
  ["40 °F", 40, "degF", { measure: "temperature" }],
  ["40°F", 40, "degF"],
  ["20 C", 20, "degC", { measure: "temperature" }],
  ["68F", 68, "degF", { measure: "temperature" }],
  ["−5 °C", -5, "degC", { measure: "temperature" }],
  ["-5 degC", -5, "degC"],
  ["20 degC + 5 delta degC", 25, "degC", { measure: "temperature" }],
  ["68 degF - 50 degF", 18, "delta degF"],
  ["90 %", 90, "%", { measure: "share" }],
  ["90%", 90, "%", { measure: "share" }],
  ["0.9", 0.9, "1", { measure: "share" }],
  ["90", 90, "%", { measure: "share", defaultUnit: "%" }],
  ["$35", 35, "money", { measure: "money" }],
  ["$1,200.50", 1200.5, "money"],
  ["-$35", -35, "money"],
  ["35 USD", 35, "money", { measure: "money" }],
  ["USD 35", 35, "money", { measure: "money", currency: "USD" }],
  ["$35", 35, "money", { currency: "USD" }],
  ["$0.01/gal", 0.01, "money/gal", { measure: "money_per_volume" }],
  ["€35", 35, "money", { currency: "EUR" }],
  ["35 €", 35, "money", german],
  ["40 CHF", 40, "money", { currency: "CHF" }],
  ["7 h 40 min", 460, "min", { measure: "duration" }],
  ["7 h 30 min", 7.5, "h", { measure: "duration" }],
  ["3 days 4 h", 76, "h", { measure: "span" }],
  ["5 lb 4 oz", 5.25, "lb", { measure: "mass" }],
  ["2*55 gal", 110, "gal", { measure: "volume" }],
  ["2 x 55 gal", 110, "gal"],
  ["2 × 55 gal", 110, "gal"],
  ["(3+4) ft", 7, "ft"],
  ["2*(3 ft + 4 ft)", 14, "ft"],
  ["10 ft - 2 in", 118, "in"],
  ["10 ft-2 in", 118, "in"],
  ["10 ft + 6 in", 10.5, "ft"],
  ["1/2 * 3 m", 1.5, "m"],
  ["0.1 m + 0.2 m", 0.3, "m"],
  ["10 gal/2", 5, "gal"],
  ["10 gal / 2 min", 5, "gal/min", { measure: "flow" }],
  ["5 gpm * 10 min", 50, "gal", { measure: "volume", defaultUnit: "gal" }],
  ["90 % * 55 gal", 49.5, "gal", { measure: "volume" }],
  ["4 ft x 8 ft", 32, "ft2", { measure: "area" }],
  ["1 gal / 100 ft2", 0.01, "gal/ft2"],
  ['0.25"/hr', 0.25, "in/h", { measure: "rain_rate" }],
  ["55-gallon", 55, "gal", { measure: "volume" }],
  ["1/4-in", 0.25, "in"],
  ["80 Ah * 12 V", 960, "Wh", { measure: "energy" }],
  ["50 W * 3 h", 150, "Wh", { measure: "energy" }],
  ["20", 20, "gal", { measure: "volume", defaultUnit: "gal" }],
  ["2*55", 110, "gal", { measure: "volume", defaultUnit: "gal" }],
  ["12", 12, "1", { measure: "count" }],
  ["2026", 2026, "1", { measure: "year" }],
  ["3+4", 7, "1"],
  ["1.5e-6 m", 1.5e-6, "m"],
  ["1e3 L", 1000, "L"],
  [`20${NBSP}gal`, 20, "gal"],
  [`1${NBSP}200${NBSP}gal`, 1200, "gal"],
  ["  20   gallons  ", 20, "gal"],
  ["20 imp gal", 20, "imp gal", { measure: "volume" }],
  ["1.200,5 L", 1200.5, "L", german],
  ["0,5 m", 0.5, "m", german],
  ["1/2 m", 0.5, "m", german],
  ["1 200,5 L", 1200.5, "L", { locale: "fr-FR" }],
  ["1,200.5 L", 1200.5, "L", { locale: "en-GB" }],
  ["1’200.5 L", 1200.5, "L", { locale: "de-CH" }],
  ["2 acre-ft", 2, "acre-ft"],
  ["3 L/mm", 3, "L/mm", { measure: "catch_rate" }],
  ["0.004 1/K", 0.004, "1/K"],
  ["62.4 lb/ft2", 62.4, "lb/ft2", { measure: "ground_pressure" }],
];

describe("what a grower types", () => {
  it.each(TYPED)("%j is %d %s %j", (text, value, unit, options = {}) => {
    const reading = readQuantity(text, options);
    expect(reading).toMatchObject({ ok: true, value, unit, si: toSi(value, unit) });
  });

  it("is stored so that its SI number is that of what was typed", () => {
    const reading = readQuantity("10 ft * 4 ft * 2 in", { measure: "volume", defaultUnit: "gal" });
    expect(reading).toMatchObject({ ok: true, unit: "gal" });
    // 80/12 ft3 of 1728/231 gal each.
    expect(reading.ok && reading.value).toBeCloseTo(((80 / 12) * 1728) / 231, 12);
  });
});

describe("a pressure typed for a head", () => {
  it("becomes a height of water of 1000 kg/m3 and says so", () => {
    const reading = readQuantity("14 psi", { measure: "head" });
    expect(reading).toMatchObject({ ok: true, value: 14, unit: "psi" });
    // 14 lbf/in2 over 1000 kg/m3 and 9.80665 m/s2, by hand: 96,526.6 Pa / 9806.65 Pa/m.
    expect(reading.ok && reading.si).toBeCloseTo(9.84297, 5);
    expect(reading.ok && reading.note).toContain("1000 kg/m3");
  });

  it("is no surprise where it was typed as a head", () => {
    const reading = readQuantity("12 m head", { measure: "head" });
    expect(reading).toMatchObject({ ok: true, unit: "mH2O", si: 12 });
    expect(reading).not.toHaveProperty("note");
  });
});

describe("notes", () => {
  it.each<readonly [string, ReadOptions, string]>([
    ["1.200 L", german, "Read 1.200 as 1200."],
    ["0.9", { measure: "share", defaultUnit: "%" }, "less than one in a hundred"],
    ["90", { measure: "share" }, "90 times the whole"],
    ["20 gal", { measure: "volume", defaultUnit: "imp gal" }, "US gallons"],
  ])("%j with %j says %j", (text, options, part) => {
    const reading = readQuantity(text, options);
    expect(reading.ok && reading.note).toContain(part);
  });
});

type Refused = [text: string, marked: string, part: string, options?: ReadOptions];

const asked = (measure: MeasureName): ReadOptions => ({ measure });

const REFUSED: readonly Refused[] = [
  ["", "", "Type a number"],
  ["   ", "   ", "Type a number"],
  ["gal", "gal", "A number is missing"],
  ["5 * gal", "gal", "A number is missing"],
  ["20 galons", "galons", "Did you mean gal?"],
  ["5 gal/minn", "minn", "Did you mean min?"],
  ["20 gal of water", "of water", "I cannot read"],
  ["20 MA", "MA", "mA"],
  ["5 M", "M", "min for minutes"],
  ["2 ton", "ton", "short ton"],
  ["2+3 gal", "2", "no unit"],
  ["2 gal + 3", "3", "no unit"],
  ["2 gal + 3 ft", "2 gal + 3 ft", "a volume and a length"],
  ["20 degC + 5 degC", "20 degC + 5 degC", "thermometer"],
  ["2 * 20 degC", "2 * 20 degC", "thermometer"],
  ["1,200/4 gal", "1,200/4 gal", "brackets"],
  ["5 gal/0", "0", "zero"],
  ["3 in)", ")", "I cannot read"],
  ["(3 in", "(", "not closed"],
  ["5 gal +", "+", "missing at the end"],
  ["--3 m", "-3 m", "I cannot read"],
  ["6 in 3 ft", "3 ft", "cannot follow"],
  ["20 gal 3", "3", "Add a unit"],
  ["1 200 gal", "200 gal", "I cannot read"],
  ["1,5 m", "1,5", "Write 1.5"],
  ["1,20 gal", "1,20", "decimal sign"],
  ["1.234.567 L", "1.234.567", "Write 1234567"],
  ["3..5 m", "3..5", "decimal sign"],
  ["1.5 m", "1.5", "Write 1,5", german],
  ["1e999 L", "1e999", "too large"],
  ["€35", "€", "not in €"],
  ["35 EUR", "EUR", "not in EUR"],
  ["€35", "€", "not in €", { currency: "USD" }],
  ["20", "20", "Add a unit, such as gal", asked("volume")],
  ["35", "35", "Add a unit, such as $", asked("money")],
  ["80 Ah", "80 Ah", "voltage", asked("energy")],
  ["960 Wh", "960 Wh", "voltage", asked("charge")],
  ["50 W", "50 W", "Watts run for a time", asked("energy")],
  ["20 gal", "20 gal", "in what time", asked("flow")],
  ["5 gpm", "5 gpm", "how long", asked("volume")],
  ["8 oz", "8 oz", "fl oz", asked("volume")],
  ["5 m", "5 m", "min for minutes", asked("duration")],
  ["5 min", "5 min", "metres", asked("length")],
  ["14 psi", "14 psi", "a length is wanted", asked("height")],
  ["20°", "20°", "degF or degC", asked("temperature")],
  ["20 C", "20 C", "a charge", asked("voltage")],
  ["18 delta degF", "18 delta degF", "thermometer", asked("temperature")],
  ["-460 degF", "-460 degF", "absolute zero", asked("temperature")],
  ["5 %", "5 %", "plain number", asked("count")],
  ["5 gal", "5 gal", "plain number", asked("count")],
  ["x", "x", "I cannot read"],
  ["constructor", "constructor", "I cannot read"],
  ["5 toString", "toString", "toString"],
];

describe("what cannot be read", () => {
  it.each(REFUSED)("%j marks %j and says %j", (text, marked, part, options = {}) => {
    const reading = readQuantity(text, options);
    if (reading.ok) expect.fail(`read as ${reading.value} ${reading.unit}`);
    expect(text.slice(reading.start, reading.end)).toBe(marked);
    expect(reading.message).toContain(part);
  });

  it("never throws and always marks a place inside the text, whatever is typed", () => {
    const piece = fc.constantFrom(
      ..."0123456789.,+-*/()'\"%$€½ °²",
      " gal",
      " ft",
      "in",
      " min",
      "1/2",
      "degF",
      "per",
      "x",
      "m2",
      "\u00a0",
    );
    const anything = fc.oneof(
      fc.string(),
      fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join("")),
    );
    const locale = fc.constantFrom("en-US", "de-DE", "fr-FR", "de-CH", "en-GB", "not a locale");
    fc.assert(
      fc.property(anything, locale, (text, tag) => {
        const reading = readQuantity(text, { locale: tag });
        if (reading.ok) {
          expect(Number.isFinite(reading.value) && Number.isFinite(reading.si)).toBe(true);
          return;
        }
        expect(reading.message.length).toBeGreaterThan(5);
        expect(reading.start).toBeGreaterThanOrEqual(0);
        expect(reading.end).toBeGreaterThanOrEqual(reading.start);
        expect(reading.end).toBeLessThanOrEqual(text.length);
      }),
      { numRuns: 3000 },
    );
  });

  it("refuses a very long or very deep text instead of working on it", () => {
    expect(readQuantity(`${"(".repeat(90)}1${")".repeat(90)}`, {}).ok).toBe(false);
    expect(readQuantity("1+".repeat(5000), {}).ok).toBe(false);
  });
});

describe("the sides of a roof or bed", () => {
  it.each([
    ["20 x 30 ft", 600, "ft2"],
    ["20 ft x 30 ft", 600, "ft2"],
    ["6.5 × 4 m", 26, "m2"],
    ["20 by 30 ft", 600, "ft2"],
    ["20 ft * 15 ft + 3 ft2", 303, "ft2"],
  ])("%s is %d %s", (text, value, unit) => {
    expect(readQuantity(text, { measure: "area", defaultUnit: "ft2" })).toMatchObject({
      ok: true,
      value,
      unit,
    });
  });

  it("are read of an area alone, and only with a unit of length", () => {
    // Of a length it is what it was: twenty times thirty feet.
    expect(readQuantity("20 x 30 ft", { measure: "length" })).toMatchObject({ value: 600, unit: "ft" });
    expect(readQuantity("20 x 30 gal", { measure: "area", defaultUnit: "ft2" }).ok).toBe(false);
    // Without a unit it is a product like any other, in the unit of the field.
    expect(readQuantity("20 x 30", { measure: "area", defaultUnit: "ft2" })).toMatchObject({ value: 600 });
  });
});

describe("as growers type in a hurry", () => {
  const value = (text: string, options: ReadOptions): unknown => {
    const read = readQuantity(text, options);
    return read.ok ? [read.value, read.unit] : read.message;
  };

  test.each([
    ["20x30", { measure: "area", defaultUnit: "ft2" }, [600, "ft2"]],
    ["20x30 ft", { measure: "area", defaultUnit: "ft2" }, [600, "ft2"]],
    ["20X30", { measure: "area", defaultUnit: "ft2" }, [600, "ft2"]],
    ["2x55 gal", { measure: "volume", defaultUnit: "gal" }, [110, "gal"]],
    ["100+150 gal", { measure: "volume", defaultUnit: "gal" }, [250, "gal"]],
    ["100 gal + 150", { measure: "volume", defaultUnit: "gal" }, [250, "gal"]],
    ["100 + 150 + 20 gal", { measure: "volume", defaultUnit: "gal" }, [270, "gal"]],
    // A bare number would be gallons here: what is meant is not plain.
    [
      "100+150 L",
      { measure: "volume", defaultUnit: "gal" },
      "This number has no unit, but the other one has.",
    ],
  ] as const)("%s of %j", (text, options, expected) => {
    expect(value(text, options)).toEqual(expected);
  });

  test("no unit of another kind is offered for a word that is none", () => {
    expect(value("3 totes", { measure: "volume", defaultUnit: "gal" })).toBe(
      'I do not know the unit "totes".',
    );
    expect(value("3 galons", { measure: "volume", defaultUnit: "gal" })).toBe(
      'I do not know "galons". Did you mean gal?',
    );
    expect(value("20 metrs", { measure: "volume", defaultUnit: "gal" })).toContain("Did you mean m?");
    expect(value("5 gal/minn", { measure: "flow" })).toContain("Did you mean min?");
  });

  test("whatever word is typed, what is offered makes a volume, alone or three times over", () => {
    const words = fc.string({ unit: fc.constantFrom(..."aegilmnorstu"), minLength: 3, maxLength: 8 });
    const may = [dimensionOf("m3"), dimensionOf("m")];
    fc.assert(
      fc.property(words, (word) => {
        const read = readQuantity(`3 ${word}`, { measure: "volume", defaultUnit: "gal" });
        const offered = read.ok ? null : (/Did you mean (.+)\?$/.exec(read.message)?.[1] ?? null);
        if (offered !== null) expect(may, `${word}: ${offered}`).toContainEqual(dimensionOf(offered));
      }),
      { numRuns: 1000 },
    );
  });
});
