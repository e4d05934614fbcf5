import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { MEASURES, type MeasureName } from "../../src/units/measures.ts";
import { readQuantity } from "../../src/units/read.ts";
import {
  displayParts,
  editText,
  fieldText,
  type ShowOptions,
  showNumber,
  showQuantity,
  unitFor,
  unitLabel,
} from "../../src/units/show.ts";
import { UNIT_TABLE } from "../../src/units/table.ts";
import { toSi } from "../../src/units/unit.ts";

const us: ShowOptions = { units: "us", locale: "en-US", currency: "$" };
const metric: ShowOptions = { units: "metric", locale: "de-DE", currency: "€" };
const imperial: ShowOptions = { units: "imperial", locale: "en-GB", currency: "£" };

/** The text with its non-breaking spaces as plain ones. */
const plain = (text: string) => text.replaceAll("\u00a0", " ");

type Shown = readonly [si: number, measure: MeasureName, options: ShowOptions, text: string];

const SHOWN: readonly Shown[] = [
  [31.24, "yearly_volume", us, "8,253 gal"],
  [31.24, "yearly_volume", metric, "31.240 L"],
  [31.24, "yearly_volume", imperial, "6,872 imp gal"],
  [toSi(7, "h") + toSi(40, "min"), "duration", us, "7 h 40 min"],
  [toSi(12, "min"), "duration", us, "12 min"],
  [toSi(150, "s"), "duration", us, "2 min 30 s"],
  [45, "duration", us, "45 s"],
  [0.25, "duration", us, "0.25 s"],
  [0, "duration", us, "0 min"],
  [59.7, "duration", us, "1 min"],
  [toSi(59.8, "min"), "duration", us, "1 h"],
  [toSi(23, "h") + toSi(59.9, "min"), "duration", us, "1 day"],
  [toSi(76, "h"), "duration", us, "3 days 4 h"],
  [toSi(26, "h"), "duration", us, "1 day 2 h"],
  [toSi(400, "day"), "duration", us, "400 days"],
  [-toSi(90, "min"), "duration", us, "-1 h 30 min"],
  [toSi(460, "min"), "duration", { ...us, unit: "min" }, "7 h 40 min"],
  [toSi(19, "day"), "span", us, "19 days"],
  [toSi(1, "day"), "span", us, "1 day"],
  [toSi(4.5, "day"), "span", metric, "4,5 days"],
  [toSi(10, "year"), "span", { ...us, unit: "years" }, "10 years"],
  [toSi(1, "week"), "span", { ...us, unit: "week" }, "1 week"],
  [0.9, "share", us, "90 %"],
  [0.333_333, "share", us, "33.3 %"],
  // Nearly all is not all.
  [0.999_98, "share", us, "99.9 %"],
  [1, "share", us, "100 %"],
  [35, "money", us, "$35"],
  [35.5, "money", us, "$35.50"],
  [-35, "money", us, "-$35"],
  [12_345.6, "money", us, "$12,346"],
  [35, "money", metric, "35 €"],
  [35, "money", { ...us, currency: "USD" }, "35 USD"],
  [toSi(0.0095, "money/gal"), "money_per_volume", us, "$0.0095/gal"],
  [2024, "year", us, "2024"],
  [1461, "count", us, "1,461"],
  [toSi(40, "degF"), "temperature", us, "40 °F"],
  [toSi(20, "degC"), "temperature", metric, "20 °C"],
  [toSi(0.6, "in/h"), "rain_rate", us, "0.6 in/h"],
  [toSi(150, "ft2"), "area", us, "150 ft²"],
  [toSi(93.5, "gal/in"), "catch_rate", us, "93.5 gal/in"],
  [toSi(62.428, "lb/ft3"), "density", us, "62.428 lb/ft³"],
  [toSi(1.002, "mPa s"), "viscosity", us, "1.002 mPa s"],
  [toSi(30, "deg"), "angle", us, "30°"],
  [toSi(6.25, "ft"), "height", { ...metric, unit: "ft" }, "6,25 ft"],
  [toSi(20, "imp gal"), "volume", { ...us, unit: "imperial gallons" }, "20 imp gal"],
  [5, "length", { ...us, unit: "psi" }, "16.4 ft"],
  [-1e-18, "factor", us, "-1 × 10⁻¹⁸"],
  [3e15, "factor", us, "3 × 10¹⁵"],
  [0, "length", us, "0 ft"],
  [-0, "factor", us, "0"],
  [Number.NaN, "length", us, "–"],
];

describe("a quantity on the screen", () => {
  it.each(SHOWN)("%d as %s", (si, measure, options, text) => {
    expect(plain(showQuantity(si, measure, options))).toBe(text);
  });

  it("shows a head in the pressure it was typed as", () => {
    const reading = readQuantity("14 psi", { measure: "head" });
    expect(reading.ok && plain(showQuantity(reading.si, "head", { ...us, unit: "psi" }))).toBe("14 psi");
  });

  it("keeps number and unit on one line", () => {
    expect(showQuantity(31.24, "volume", us)).toBe("8,253\u00a0gal");
    expect(showQuantity(27_600, "duration", us)).not.toContain(" ");
  });

  it("comes apart into number and unit", () => {
    expect(displayParts(31.24, "volume", us)).toEqual({ number: "8,253", unit: "gal" });
    expect(displayParts(35, "money", us)).toEqual({ number: "$35", unit: "" });
  });

  it("has a unit in each system", () => {
    expect([unitFor("rain", "us"), unitFor("rain", "imperial"), unitFor("rain", "metric")]).toEqual([
      "in",
      "mm",
      "mm",
    ]);
  });

  it("shows something for any finite number of any measure, and never a minus before nothing", () => {
    const measures = fc.constantFrom(...(Object.keys(MEASURES) as MeasureName[]));
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), measures, (si, measure) => {
        const text = showQuantity(si, measure, us);
        expect(text).not.toMatch(/NaN|undefined|Infinity/);
        expect(text).not.toMatch(/^-[$]?0(?:[^.\d]|$)/);
      }),
    );
  });
});

describe("a number on the screen", () => {
  it.each([
    [1234.56, 3, "en-US", "1,235"],
    [0.000_123_45, 3, "en-US", "0.000123"],
    [9.996, 3, "en-US", "10"],
    [0.5, 4, "en-US", "0.5"],
    [1234.5, 5, "de-DE", "1.234,5"],
    [-0.000_001, 3, "en-US", "-1 × 10⁻⁶"],
    [99.999_99, 3, "en-GB", "100"],
  ])("%d with %d figures in %s", (value, figures, locale, text) => {
    expect(plain(showNumber(value, figures, locale))).toBe(text);
  });
});

describe("the label of a unit", () => {
  it.each([
    ["gal", "gal"],
    ["ft2", "ft²"],
    ["degF", "°F"],
    ["gal/in", "gal/in"],
    ["m3/s", "m³/s"],
    ["1/K", "1/K"],
    ["1", ""],
    ["ohm", "Ω"],
    ["unknown thing", "unknown thing"],
  ])("%s is %j", (unit, label) => {
    expect(unitLabel(unit)).toBe(label);
  });
});

describe("the text of an edit field", () => {
  it("reads back as exactly the same number and unit, in every unit and locale", () => {
    const names = [
      ...UNIT_TABLE.map(({ name }) => name),
      "gal/min",
      "MJ/m2/day",
      "ft2",
      "money/gal",
      "1/K",
      "Pa s",
    ];
    const unit = fc.constantFrom(...names);
    const tag = fc.constantFrom("en-US", "de-DE", "en-GB", "fr-FR", "de-CH");
    const money = fc.constantFrom("$", "€", "USD", "CHF", "Kč");
    const number = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer(),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    );
    fc.assert(
      fc.property(number, unit, tag, money, (value, name, locale, currency) => {
        const si = toSi(value, name);
        fc.pre(Number.isFinite(si));
        const text = editText(value, name, locale, currency);
        const reading = readQuantity(text, { locale, currency });
        expect(reading, text).toMatchObject({ ok: true, value: value + 0, unit: name });
      }),
      { numRuns: 3000 },
    );
  });

  it.each([
    [6.25, "ft", "en-US", "6.25 ft"],
    [6.25, "ft", "de-DE", "6,25 ft"],
    [35, "money", "en-US", "$35"],
    [12, "1", "en-US", "12"],
    [90, "%", "en-US", "90 %"],
  ])("%d %s in %s", (value, unit, locale, text) => {
    expect(editText(value, unit, locale, "$")).toBe(text);
  });

  it("few figures are shown where a sentence asks for them; whole numbers and minutes stay whole", () => {
    const few = { units: "us", locale: "en-US", currency: "$", figures: 2 } as const;
    const gallon = 0.003785411784;
    expect(showQuantity(17.16 * gallon, "volume", few)).toBe("17\u00a0gal");
    expect(showQuantity(118.4 * gallon, "volume", few)).toBe("118\u00a0gal");
    expect(showQuantity(0.963, "share", few)).toBe("96\u00a0%");
    expect(showQuantity(0.997, "share", few)).toBe("99.7\u00a0%");
    expect(showQuantity(118, "count", few)).toBe("118");
    expect(showQuantity(41, "count", few)).toBe("41");
    expect(showQuantity(235, "duration", few)).toBe("4\u00a0min");
    expect(showQuantity(95, "duration", few)).toBe("1\u00a0min\u00a035\u00a0s");
  });
});

describe("a number that was worked out, as a grower says it", () => {
  const said = (si: number, measure: MeasureName, options = us): string =>
    plain(showQuantity(si, measure, { ...options, rounded: true }));

  // The steps are those of the screen's design, "Precision".
  it.each<Shown>([
    [toSi(53.56, "gal"), "volume", us, "53.6 gal"],
    [toSi(2.5, "gal"), "volume", us, "2.5 gal"],
    [toSi(102.4, "gal"), "volume", us, "100 gal"],
    [toSi(263, "gal"), "volume", us, "265 gal"],
    [toSi(702.2, "gal"), "yearly_volume", us, "700 gal"],
    [toSi(8253, "gal"), "yearly_volume", us, "8,250 gal"],
    [toSi(103_266, "gal"), "yearly_volume", us, "103,000 gal"],
    [toSi(1041, "L"), "volume", metric, "1.040 L"],
    [toSi(263, "L"), "volume", metric, "265 L"],
    [toSi(6872, "imp gal"), "yearly_volume", imperial, "6,870 imp gal"],
    [0.333_333, "share", us, "33 %"],
    [0.9959, "share", us, "99 %"],
    [0.999_99, "share", us, "99 %"],
    [1, "share", us, "100 %"],
    [1 - 1e-12, "share", us, "100 %"],
    [0.0043, "share", us, "0.4 %"],
    [1.534, "share", us, "153 %"],
    [1.0001, "share", us, "101 %"],
    [0, "share", us, "0 %"],
    [toSi(24.3, "day"), "span", us, "24 days"],
    [toSi(8.58, "day"), "span", us, "8.5 days"],
    [toSi(1.1, "day"), "span", us, "1 day"],
    [toSi(9.9, "day"), "span", us, "10 days"],
    [toSi(2.5, "h"), "span", us, "2 h 30 min"],
    [10.5, "count", us, "11"],
    [3.4, "count", us, "3.5"],
    [0.05, "count", us, "0.05"],
    [7305, "count", us, "7,305"],
    [toSi(380, "s"), "duration", us, "6 min"],
    [toSi(150, "s"), "duration", us, "2 min 30 s"],
    [toSi(6528, "s"), "duration", us, "1 h 49 min"],
    [toSi(8341, "lb"), "mass", us, "8,340 lb"],
    [toSi(62.428, "lb/ft3"), "density", us, "62.4 lb/ft³"],
    [1234.56, "money", us, "$1,235"],
  ])("%d as %s", (si, measure, options, text) => {
    expect(said(si, measure, options)).toBe(text);
  });

  const number = (text: string): number => Number(/-?[\d.,]+/.exec(text)?.[0]?.replaceAll(",", "") ?? "0");
  const gallons = fc.double({ min: 1, max: 1e6, noNaN: true });

  it("has three figures at the most, and is never further off than a fortieth", () => {
    fc.assert(
      fc.property(gallons, fc.constantFrom("gal", "L", "imp gal"), (value, unit) => {
        const text = said(toSi(value, unit), "volume", { ...us, unit });
        const figures = text
          .replace(/[^\d.]/g, "")
          .replace(".", "")
          .replace(/^0+/, "")
          .replace(/0+$/, "");
        expect(figures.length).toBeLessThanOrEqual(3);
        expect(Math.abs(number(text) - value)).toBeLessThanOrEqual(value / 40 + 1e-9);
      }),
    );
  });

  it("never shows more as less", () => {
    fc.assert(
      fc.property(gallons, gallons, fc.constantFrom("gal", "L"), (a, b, unit) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((value) =>
          number(said(toSi(value, unit), "volume", { ...us, unit })),
        );
        expect(low).toBeLessThanOrEqual(high ?? 0);
      }),
    );
  });

  it("is 100 % exactly where all is met, and nothing only where there is none", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const text = said(share, "share");
        // A share is a quotient of long sums: within a part in a thousand million it is all.
        expect(text === "100 %").toBe(share > 1 - 1e-9);
        if (share > 1e-9) expect(text).not.toBe("0 %");
      }),
    );
  });

  it("of days and counts is whole from ten, and some of them are never none", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 400, noNaN: true }), (days) => {
        const shown = number(said(days, "count"));
        expect(shown).toBeGreaterThan(0);
        if (days >= 10) expect(Number.isInteger(shown)).toBe(true);
        else if (shown >= 0.5) expect(Number.isInteger(shown * 2)).toBe(true);
      }),
    );
  });

  it("of a usual value is as its table has it, and elsewhere no finer than that", () => {
    const usual = (si: number, measure: MeasureName, units: "us" | "metric") =>
      plain(showQuantity(si, measure, { ...us, units, rounded: true, usual: true }));
    expect(usual(toSi(0.625, "in"), "bore", "us")).toBe("0.625 in");
    expect(usual(toSi(0.625, "in"), "bore", "metric")).toBe("16 mm");
    expect(usual(toSi(0.5, "mm"), "rain", "us")).toBe("0.02 in");
    expect(usual(toSi(12, "in"), "depth", "metric")).toBe("300 mm");
    expect(usual(toSi(59, "degF"), "temperature", "us")).toBe("59 °F");
    expect(usual(toSi(4, "in/h"), "rain_rate", "metric")).toBe("100 mm/h");
    expect(usual(0, "length", "us")).toBe("0 ft");
  });
});

describe("what stands in a field", () => {
  test.each([
    [1_000_000_000, "gal", "en-US", "1,000,000,000 gal"],
    [12_345.678, "gal", "de-DE", "12.345,678 gal"],
    [1234.5, "gal", "en-US", "1234.5 gal"],
    [35, "deg", "en-US", "35°"],
    [600, "ft2", "en-US", "600 ft2"],
    [15, "degC", "en-US", "15 °C"],
    [0.5, "1", "en-US", "0.5"],
  ])("%f %s in %s", (value, unit, locale, text) => {
    expect(fieldText(value, unit, locale).replaceAll("\u00a0", " ")).toBe(text);
  });

  test("is read as the number and the unit that it is of, whatever the unit and the locale", () => {
    const values = fc.double({ min: -1e12, max: 1e12, noNaN: true });
    const units = fc.constantFrom(
      ...UNIT_TABLE.map(({ name }) => name),
      "gal/min",
      "imp gal",
      "L/mm",
      "lb/ft2",
    );
    fc.assert(
      fc.property(
        values,
        units,
        fc.constantFrom("en-US", "de-DE", "fr-FR", "de-CH"),
        (value, unit, locale) => {
          const text = fieldText(value, unit, locale, "$").replaceAll("\u00a0", " ");
          const was = readQuantity(editText(value, unit, locale, "$"), { locale, currency: "$" });
          const read = readQuantity(text, { locale, currency: "$" });
          if (was.ok) expect(read, text).toMatchObject({ ok: true, value: was.value, unit: was.unit });
        },
      ),
      { numRuns: 1000 },
    );
  });
});
