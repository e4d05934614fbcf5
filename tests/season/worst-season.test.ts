// The season that was worst for the beds: counted by hand on a few years of rain that fall on named days.

import { describe, expect, test } from "vitest";
import { dayNumber } from "../../src/units/calendar.ts";
import { bed, crop, inputOf, MM, ran, recordOf, steadyEto, tank } from "./made.ts";

const FIRST = 2021;

/** A record from 2021-01-01 on: each year's soaking rains, on the days given as `MM-DD`. */
function soaked(years: readonly (readonly string[])[]) {
  const first = dayNumber(FIRST, 1, 1);
  const rain = new Float64Array(dayNumber(FIRST + years.length, 1, 1) - first);
  years.forEach((dates, place) => {
    for (const date of dates)
      rain[dayNumber(FIRST + place, Number(date.slice(0, 2)), Number(date.slice(3))) - first] = 200 * MM;
  });
  return recordOf(rain, first);
}

/**
 * A bed that nobody waters, under the sky. Its crop uses 4 mm a day; it holds 0.15 * 0.3 m = 45 mm, of which
 * 0.4 + 0.04 * (5 - 4) = 0.44 (FAO-56 table 22, note) or 19.8 mm is readily had: 4 days after a soaking rain, so that
 * the fifth is its first short day.
 */
const thirsty = (start = "06-01", end = "06-20") => {
  const flat = { planted: start, stages: [0, 0, 100, 0] as const, kcInitial: 1, kcMiddle: 1, kcEnd: 1 };
  const part = bed({ wateredBy: [], crops: [crop({ ...flat, rootStart: 0.3 })] });
  return inputOf({ start, end, eto: steadyEto(4 * MM), tanks: [tank(1)], beds: [part] });
};

const worstOf = (years: readonly (readonly string[])[], plan = thirsty()) => {
  const { worstSeason, seasonsShort, seasons, bySeason } = ran(plan, soaked(years)).totals;
  return { worst: worstSeason, short: seasonsShort, seasons, days: bySeason.map((one) => one.daysShort) };
};

/** Soaked on the eve of the season, then not again: its days 5 to 20 are short. */
const DRY = ["05-31"];
/** Again on the 11th: the 5th to 10th are short, and the 16th to 20th. */
const ONCE = ["05-31", "06-11"];
/** Again on the 13th: the 5th to 12th are short, and the 18th to 20th: as many, in a longer run. */
const LATER = ["05-31", "06-13"];
/** Never more than four days without. */
const WET = ["05-31", "06-05", "06-10", "06-15", "06-20"];

describe("the worst season", () => {
  test("is that of the most short days, counted by hand", () => {
    const { worst, short, seasons, days } = worstOf([WET, ONCE, DRY, WET]);
    expect(days).toEqual([0, 11, 16, 0]);
    expect([short, seasons]).toEqual([2, 4]);
    expect(worst?.year).toBe(2023);
    expect(worst?.daysShort).toBe(16);
  });

  test("of equals is that of the least share met, and of equals in both the first", () => {
    const { worst, days } = worstOf([WET, ONCE, LATER, LATER]);
    expect(days).toEqual([0, 11, 11, 11]);
    expect(worst?.year).toBe(2023);
  });

  test("where no day is short is the first season, with all met", () => {
    const { worst, short } = worstOf([WET, WET]);
    expect(short).toBe(0);
    expect(worst).toEqual({ year: 2021, shareMet: 1, daysShort: 0 });
  });

  test("over the new year is named by the year in which it begins", () => {
    const south = thirsty("12-22", "01-10");
    const wet = ["01-01", "01-05", "01-10", "12-21", "12-26", "12-31"];
    const { worst, seasons, days } = worstOf([wet, ["01-04", "01-09", "12-21"], wet], south);
    // From 2021 on it rains in time; in 2022 after Dec 21 not before Jan 1: Dec 26 to 31 are short.
    expect(seasons).toBe(2);
    expect(worst?.year).toBe(2022);
    expect(days).toEqual([0, 6]);
  });
});
