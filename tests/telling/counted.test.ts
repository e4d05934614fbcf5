// A count of days in a sentence, as a grower would say it.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Result } from "../../src/graph/types.ts";
import { type Asked, counted } from "../../src/telling/asked.ts";
import { roundedCount } from "../../src/units/rounding.ts";

const askedWith = (days: number, isSpan = false): Asked => ({
  result: () => ({ state: "ready", value: days, origin: "computed" }) as Result,
  cards: [],
  isSpan: () => isSpan,
});
const said = (days: number, thing = "day", isSpan = false): string => {
  const piece = counted(askedWith(days, isSpan), "hens.days_short", "trouble", thing);
  return typeof piece === "string" ? piece : (piece.text ?? `${roundedCount(days)}${piece.after ?? ""}`);
};

describe("a count of days", () => {
  test("of part of a day is less than a day, whatever of it there is", () => {
    expect([0.1, 0.05, 0.4, 0.6].map((days) => said(days))).toEqual(Array(4).fill("less than a day"));
    expect([0, 0.8, 1, 2.5, 8].map((days) => said(days))).toEqual([
      "0 days",
      "1 day",
      "1 day",
      "2.5 days",
      "8 days",
    ]);
  });

  test("is never said as less than a day where it is one, and never begins with a tenth", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 200, noNaN: true }), (days) => {
        const text = said(days);
        if (text === "less than a day") expect(days > 0 && days < 1).toBe(true);
        else expect(text).not.toMatch(/^0\./);
      }),
    );
  });

  test("stands as its span where it is not sure, and other things are counted as they are", () => {
    expect(said(0.1, "day", true)).toBe("0.1 days");
    expect(said(0.1, "trip")).toBe("0.1 trips");
  });
});
