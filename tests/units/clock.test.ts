import { describe, expect, test } from "vitest";
import { readQuantity } from "../../src/units/read.ts";
import { showQuantity } from "../../src/units/show.ts";

const hours = (text: string): number | string => {
  const read = readQuantity(text, { measure: "clock", defaultUnit: "h" });
  return read.ok ? read.si / 3600 : read.message;
};

describe("a time of day", () => {
  test.each([
    ["7 pm", 19],
    ["7pm", 19],
    ["7:30 p.m.", 19.5],
    ["19:30", 19.5],
    ["19.30", 19.5],
    ["6 am", 6],
    ["12 am", 0],
    ["12:15 pm", 12.25],
    ["noon", 12],
    ["19", 19],
    ["19 h", 19],
    ["19.5 h", 19.5],
    ["90 min", 1.5],
  ])("%s is read", (text, expected) => {
    expect(hours(text)).toBe(expected);
  });

  test.each(["13 pm", "7:75", "25:00", "0 am", "soon"])("%s is none, and says so", (text) => {
    expect(typeof hours(text)).toBe("string");
  });

  test("is shown as people of the place write it, and what is shown reads back the same", () => {
    for (let minute = 0; minute < 24 * 60; minute += 7) {
      for (const locale of ["en-US", "de-DE"]) {
        const shown = showQuantity(minute * 60, "clock", { units: "us", locale, currency: "$" });
        expect(hours(shown), shown).toBeCloseTo(minute / 60, 12);
      }
    }
    const options = { units: "us", locale: "en-US", currency: "$" } as const;
    expect(showQuantity(19.5 * 3600, "clock", options)).toBe("7:30\u00a0pm");
    expect(showQuantity(19.5 * 3600, "clock", { ...options, locale: "de-DE" })).toBe("19:30");
  });
});
