import fc from "fast-check";
import { expect, test } from "vitest";
import { fixedNumber } from "../../src/units/show-number.ts";
import { tries } from "../tries.ts";

test("English numbers written by hand are those that the machine writes, to the last sign", () => {
  const number = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.double({ min: -1e13, max: 1e13, noNaN: true }),
    fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    fc.double({ min: -1e-5, max: 1e-5, noNaN: true }),
    fc.integer(),
    fc.constantFrom(0, -0, 0.5, 1.005, 2.5, -0.04, 999.5, 999_999.5, 1e-6, 9.9e-7, 1e12, 123_456_789.123),
  );
  const tag = fc.constantFrom(
    "en",
    "en-US",
    "en-GB",
    "en-CA",
    "en-AU",
    "en-NZ",
    "en-IE",
    "en-IN",
    "de-DE",
    "es-ES",
  );
  const places = fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 2 }));
  fc.assert(
    fc.property(number, places, tag, (value, [most, least], locale) => {
      fc.pre(least <= most);
      const machine = new Intl.NumberFormat(locale, {
        numberingSystem: "latn",
        minimumFractionDigits: least,
        maximumFractionDigits: most,
      });
      expect(fixedNumber(value, most, locale, least)).toBe(machine.format(Number(value.toFixed(most)) + 0));
    }),
    { numRuns: tries(3000) },
  );
});
