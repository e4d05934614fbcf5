// Numbers that somebody is not sure of, as typed, and spans of answers as read.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readQuantity } from "../../src/units/read.ts";
import { readSpan } from "../../src/units/read-span.ts";
import { showSpan, toldEnds } from "../../src/units/show-span.ts";
import { toSi } from "../../src/units/unit.ts";

const read = (
  text: string,
  measure: "volume" | "area" | "count" | "share" | "temperature" | "length" = "volume",
) => {
  const span = readSpan(text, { measure });
  return span?.ok ? [span.low, span.high, span.value, span.unit] : span;
};

describe("a span as it is typed", () => {
  test.each([
    ["225 to 300 gal", [225, 300, 262.5, "gal"]],
    ["225 gal to 300 gal", [225, 300, 262.5, "gal"]],
    ["300 to 225 gal", [225, 300, 262.5, "gal"]],
    ["between 225 and 300 gal", [225, 300, 262.5, "gal"]],
    ["225–300 gal", [225, 300, 262.5, "gal"]],
    ["225..300 gal", [225, 300, 262.5, "gal"]],
    ["250 gal give or take 25", [225, 275, 250, "gal"]],
    ["250 gal, give or take 25 gal", [225, 275, 250, "gal"]],
    ["250 gal give or take 10 %", [225, 275, 250, "gal"]],
    ["250 gal +/- 10 gal", [240, 260, 250, "gal"]],
    ["250 gal ± 10 gal", [240, 260, 250, "gal"]],
  ])("%s", (text, wanted) => {
    expect(read(text)).toEqual(wanted);
  });

  test("ends of two units are kept in the first", () => {
    expect(read("12 in to 2 ft", "length")).toEqual([12, 24, 18, "in"]);
  });

  test("percent of a share are points, of a warmth degrees", () => {
    expect(read("80 % give or take 10 %", "share")).toEqual([70, 90, 80, "%"]);
    expect(read("20 degC give or take 2 degC", "temperature")).toEqual([18, 22, 20, "degC"]);
  });

  test("of a count the middle is whole", () => {
    expect(read("2 to 5", "count")).toEqual([2, 5, 4, "1"]);
  });

  test("sides of a rectangle stay one number, and so does arithmetic", () => {
    for (const text of ["20 x 30 ft", "20 by 30 ft", "300 - 25 gal", "1 1/2 in", "250 gal", "toad"]) {
      expect(readSpan(text, { measure: "volume" })).toBeNull();
    }
  });

  test("what cannot be read is marked where it stands", () => {
    const text = "225 to 300 toads";
    const span = readSpan(text, { measure: "volume" });
    expect(span?.ok).toBe(false);
    if (span && !span.ok) expect(text.slice(span.start, span.end)).toContain("toads");
    expect(readSpan("250 to 250 gal", { measure: "volume" })?.ok).toBe(false);
    expect(readSpan("250 gal give or take 0", { measure: "volume" })?.ok).toBe(false);
  });

  test("each end is what it would be alone", () => {
    const end = fc.integer({ min: 1, max: 100_000 }).map((whole) => whole / 100);
    fc.assert(
      fc.property(end, end, fc.constantFrom("gal", "L", "m3"), (one, other, unit) => {
        fc.pre(one !== other);
        const span = readSpan(`${one} to ${other} ${unit}`, { measure: "volume" });
        const alone = [one, other].map((value) => {
          const reading = readQuantity(`${value} ${unit}`, { measure: "volume" });
          return reading.ok ? reading.value : Number.NaN;
        });
        expect(span?.ok && [span.low, span.high]).toEqual([Math.min(...alone), Math.max(...alone)]);
      }),
    );
  });
});

describe("a span as it is read", () => {
  const options = { units: "us", locale: "en-US", currency: "$" } as const;
  const plain = (text: string) => text.replaceAll("\u00a0", " ");
  const gallons = (low: number, high: number) =>
    plain(showSpan(toSi(low, "gal"), toSi(high, "gal"), "volume", options));

  test.each([
    [223.7, 301.2, "220 to 310 gal"],
    [1073.3, 2000.9, "1,000 to 2,200 gal"],
    [1073.3, 1100.9, "1,070 to 1,110 gal"],
    [34.2, 34.21, "34.2 gal"],
    [0, 12, "0 to 12 gal"],
    // Inward it would leave out a low end of 44.
    [44, 68, "40 to 70 gal"],
  ])("%f to %f gal", (low, high, text) => {
    expect(gallons(low, high)).toBe(text);
  });

  test("counts, days, hours and shares", () => {
    expect(showSpan(32, 38, "count", options)).toBe("32 to 38");
    expect(plain(showSpan(toSi(20, "day"), toSi(26.3, "day"), "span", options))).toBe("20 to 27 days");
    expect(plain(showSpan(toSi(0.8, "1"), toSi(0.926, "1"), "share", options))).toBe("80 to 94 %");
    expect(plain(showSpan(toSi(100, "min"), toSi(190, "min"), "duration", options))).toBe(
      "1 h 30 min to 3 h 15 min",
    );
  });

  test("what is not all is never told as all, what is not nothing never as nothing", () => {
    expect(plain(showSpan(0.6, 0.999, "share", options))).toBe("60 to 99 %");
    expect(plain(showSpan(0.6, 1, "share", options))).toBe("60 to 100 %");
    expect(gallons(0.4, 30)).toBe("0.4 to 30 gal");
  });

  test("no end is told further off than a quarter of the doubt between them", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (low, by) => {
          const high = low * (1 + by);
          const told =
            gallons(low, high)
              .replaceAll(",", "")
              .match(/[\d.]+/g)
              ?.map(Number) ?? [];
          const [first = Number.NaN, last = first] = told;
          expect(Math.abs(first - low)).toBeLessThanOrEqual((high - low) / 4 + 0.005 * high);
          expect(Math.abs(last - high)).toBeLessThanOrEqual((high - low) / 4 + 0.005 * high);
          // What lies between the ends lies between those that are told.
          const [least, most] = toldEnds(toSi(low, "gal"), toSi(high, "gal"), "volume", options);
          expect(least).toBeLessThanOrEqual(toSi(low, "gal") * (1 + 1e-9));
          expect(most).toBeGreaterThanOrEqual(toSi(high, "gal") * (1 - 1e-9));
        },
      ),
    );
  });
});
