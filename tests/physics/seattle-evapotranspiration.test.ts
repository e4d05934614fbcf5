// A regression: Hargreaves on the daily record of tests/fixtures/seattle-weather.csv (vega-datasets, 2012 to 2015).
// The expected numbers are our own arithmetic, done apart from this code; no published evapotranspiration is known for it.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { windAtTwoMetres } from "../../src/physics/air.ts";
import {
  hargreaves,
  penmanMonteith,
  SUN_ADJUSTMENT,
} from "../../src/physics/reference-evapotranspiration.ts";
import { extraterrestrialRadiation } from "../../src/physics/sun.ts";
import { calendarDate, dayOfYear, isoDate, parseIsoDate } from "../../src/units/calendar.ts";
import { fromSi, toSi } from "../../src/units/unit.ts";

const LATITUDE = toSi(47.6, "deg");
/** The airport's, taken for Penman-Monteith [m]. */
const ELEVATION = 130;

type Day = {
  readonly day: number;
  readonly year: number;
  readonly month: number;
  readonly highest: number;
  readonly lowest: number;
  readonly rain: number;
  readonly wind: number;
};

const path = new URL("../fixtures/seattle-weather.csv", import.meta.url);
const days: readonly Day[] = readFileSync(path, "utf8")
  .trim()
  .split(/\r?\n/)
  .slice(1)
  .map((line) => {
    const [date = "", rain, highest, lowest, wind] = line.split(",");
    const day = parseIsoDate(date) ?? Number.NaN;
    const { year, month } = calendarDate(day);
    return {
      day,
      year,
      month,
      highest: toSi(Number(highest), "degC"),
      lowest: toSi(Number(lowest), "degC"),
      rain: toSi(Number(rain), "mm"),
      wind: Number(wind),
    };
  });

const sun = ({ day }: Day) => extraterrestrialRadiation(LATITUDE, dayOfYear(day));
const byHargreaves = days.map((day) =>
  hargreaves({ highest: day.highest, lowest: day.lowest, extraterrestrial: sun(day) }),
);

/** Sum of the chosen days in millimetres. */
function sum(values: readonly number[], chosen: (day: Day) => boolean): number {
  return fromSi(
    values.reduce((total, value, index) => total + (chosen(days[index]!) ? value : 0), 0),
    "mm",
  );
}

const YEARS = 4;

describe("Hargreaves on the Seattle record", () => {
  test.each([
    [2012, 797.6],
    [2013, 830.6],
    [2014, 864.7],
    [2015, 897.3],
  ])("sums to our own total of %i: %f mm", (year, total) => {
    expect(Math.abs(sum(byHargreaves, (day) => day.year === year) - total)).toBeLessThanOrEqual(0.051);
  });

  test.each([
    [1, 16.5],
    [2, 24.7],
    [3, 49.7],
    [4, 76.1],
    [5, 112.4],
    [6, 130.6],
    [7, 151.4],
    [8, 129.1],
    [9, 80.2],
    [10, 42.7],
    [11, 20.6],
    [12, 13.4],
  ])("has our own mean of month %i: %f mm", (month, mean) => {
    expect(Math.abs(sum(byHargreaves, (day) => day.month === month) / YEARS - mean)).toBeLessThanOrEqual(
      0.051,
    );
  });

  test.each([
    [2012, 562.4],
    [2013, 599.1],
    [2014, 615.2],
    [2015, 638.8],
  ])("sums to our own May to September of %i: %f mm", (year, total) => {
    const season = sum(byHargreaves, (day) => day.year === year && day.month >= 5 && day.month <= 9);
    expect(Math.abs(season - total)).toBeLessThanOrEqual(0.051);
  });

  test("is highest on 2014-07-01, 7.241 mm", () => {
    const most = Math.max(...byHargreaves);
    expect(isoDate(days[byHargreaves.indexOf(most)]!.day)).toBe("2014-07-01");
    expect(fromSi(most, "mm")).toBeCloseTo(7.241, 3);
  });

  test("needs most in the week that ends on 2015-07-06, 45.55 mm", () => {
    const weeks = byHargreaves.map((_, index) =>
      index < 6 ? 0 : byHargreaves.slice(index - 6, index + 1).reduce((total, one) => total + one, 0),
    );
    const most = Math.max(...weeks);
    expect(isoDate(days[weeks.indexOf(most)]!.day)).toBe("2015-07-06");
    expect(fromSi(most, "mm")).toBeCloseTo(45.55, 2);
  });
});

describe("Penman-Monteith from temperatures and wind on the Seattle record", () => {
  // The record does not say how its wind was measured: at 10 m is assumed, as it was for the expected numbers.
  const daily = (sunAdjustment: number) =>
    days.map((day) =>
      penmanMonteith({
        highest: day.highest,
        lowest: day.lowest,
        vapour: null,
        wind: windAtTwoMetres(day.wind, 10),
        sun: null,
        elevation: ELEVATION,
        latitude: LATITUDE,
        dayOfYear: dayOfYear(day.day),
        sunAdjustment,
      }),
    );
  const inland = daily(SUN_ADJUSTMENT.inland);
  const coast = daily(SUN_ADJUSTMENT.coast);

  test("gives our own yearly means, 802.1 mm inland and 862.7 mm on a coast", () => {
    expect(Math.abs(sum(inland, () => true) / YEARS - 802.1)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(sum(coast, () => true) / YEARS - 862.7)).toBeLessThanOrEqual(0.051);
  });

  test.each([
    [1, 18.3, 17.2],
    [2, 26.7, 26.9],
    [3, 48.2, 50.8],
    [4, 70.8, 76.7],
    [5, 102.7, 112.7],
    [6, 118.7, 131.3],
    [7, 139.2, 153.3],
    [8, 119.1, 130.5],
    [9, 76.3, 81.7],
    [10, 41.9, 43.3],
    [11, 23.2, 22.4],
    [12, 17.0, 15.8],
  ])("has our own means of month %i: %f mm inland, %f mm on a coast", (month, away, near) => {
    const mean = (values: readonly number[]) => sum(values, (day) => day.month === month) / YEARS;
    expect(Math.abs(mean(inland) - away)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(mean(coast) - near)).toBeLessThanOrEqual(0.051);
  });
});
