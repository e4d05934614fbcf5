import { expect, test } from "vitest";
import { doubtsOf, fewYearsFact, figureFacts } from "../../src/rainfall/import-facts.ts";
import { rainFigures } from "../../src/rainfall/rain-figures.ts";
import { dayNumber } from "../../src/units/calendar.ts";

/** So many days of 2020 and on, 3 mm on every one: 1,096 mm a year, which many places have. */
const figuresOf = (days: number) =>
  rainFigures({ firstDay: dayNumber(2020, 1, 1), rain: new Float64Array(days).fill(0.003) });

test.each([1, 2, 10, 200, 329])(
  "a year stretched from %d days is doubted, however likely its figure",
  (days) => {
    const figures = figuresOf(days);
    expect(figures.isDoubtful).toBe(false);
    const [said = ""] = doubtsOf(figures);
    expect(said).toMatch(new RegExp(`^${days} days? cannot tell what a year brings`));
    expect(figureFacts(figures, String)).toContain(said);
    // Nothing of years is said of what is none.
    expect(fewYearsFact(figures)).toBe("");
  },
);

test.each([366, 731])("%d days, which hold a whole year, are not", (days) => {
  expect(doubtsOf(figuresOf(days))).toEqual([]);
  expect(fewYearsFact(figuresOf(days))).toContain("cannot tell how dry it gets");
});

test("a year with days missing is a year", () => {
  const rain = new Float64Array(366).fill(0.003).fill(Number.NaN, 100, 120);
  const figures = rainFigures({ firstDay: dayNumber(2020, 1, 1), rain });
  expect([figures.wholeYears, figures.days]).toEqual([0, 346]);
  expect(doubtsOf(figures)).toEqual([]);
});
