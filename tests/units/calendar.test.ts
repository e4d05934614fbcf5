import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  calendarDate,
  dayInYear,
  dayNumber,
  dayOfYear,
  daysInMonth,
  isLeapYear,
  isoDate,
  parseIsoDate,
  parseMonthDay,
} from "../../src/units/calendar.ts";

// The oracle is the language's own Date in UTC, which src/units may not use.
const MILLISECONDS_A_DAY = 86_400_000;
const anyDay = fc.integer({ min: -700_000, max: 2_900_000 });

describe("whole days since 1970-01-01", () => {
  it("agree with the language's own calendar in UTC over all years 54 to 9909", () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const oracle = new Date(day * MILLISECONDS_A_DAY);
        const { year, month, day: dayOfMonth } = calendarDate(day);
        expect([year, month, dayOfMonth]).toEqual([
          oracle.getUTCFullYear(),
          oracle.getUTCMonth() + 1,
          oracle.getUTCDate(),
        ]);
        expect(dayNumber(year, month, dayOfMonth)).toBe(day);
        expect(isoDate(day)).toBe(oracle.toISOString().slice(0, 10));
        expect(parseIsoDate(isoDate(day))).toBe(day);
        expect(dayOfYear(day)).toBe(
          Math.round(
            (oracle.getTime() - Date.parse(`${isoDate(day).slice(0, 4)}-01-01`)) / MILLISECONDS_A_DAY,
          ) + 1,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ["1970-01-01", 0],
    ["1969-12-31", -1],
    ["2000-02-29", 11_016],
    ["2012-01-01", 15_340],
    ["2015-12-31", 16_800],
  ])("count %s as day %d", (text, day) => {
    expect(parseIsoDate(text)).toBe(day);
  });

  it.each([
    "2023-02-29",
    "1900-02-29",
    "2023-13-01",
    "2023-00-10",
    "2023-04-31",
    "2023-4-3",
    "",
    "23-04-03",
    "2023-04-03 ",
  ])("refuse %j as a date", (text) => {
    expect(parseIsoDate(text)).toBeNull();
  });
});

describe("a year", () => {
  it.each([
    [1900, false],
    [2000, true],
    [2023, false],
    [2024, true],
    [2100, false],
  ])("%d has a 29th of February: %s", (year, leap) => {
    expect(isLeapYear(year)).toBe(leap);
    expect(daysInMonth(year, 2)).toBe(leap ? 29 : 28);
  });

  it("has months whose days add up to it", () => {
    for (const year of [2023, 2024]) {
      const days = Array.from({ length: 12 }, (_, index) => daysInMonth(year, index + 1));
      expect(days.reduce((sum, next) => sum + next)).toBe(isLeapYear(year) ? 366 : 365);
    }
  });
});

describe("a day without a year", () => {
  it("allows the 29th of February and refuses the 30th", () => {
    expect(parseMonthDay("02-29")).toEqual({ month: 2, day: 29 });
    expect(parseMonthDay("02-30")).toBeNull();
    expect(parseMonthDay("13-01")).toBeNull();
    expect(parseMonthDay("4-1")).toBeNull();
  });

  it("becomes the first of March in a year without a 29th of February", () => {
    expect(dayInYear("02-29", 2024)).toBe(dayNumber(2024, 2, 29));
    expect(dayInYear("02-29", 2023)).toBe(dayNumber(2023, 3, 1));
    expect(dayInYear("never", 2023)).toBeNull();
  });
});
