// Snow waits for thaw; spans, quantiles and roofs over a record.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { arrivingRain } from "../../src/season/arriving-rain.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";
import type { EtoChoice } from "../../src/season/input.ts";
import { peakDay } from "../../src/season/peak-day.ts";
import { quantile } from "../../src/season/quantile.ts";
import { roofCatch } from "../../src/season/roof-catch.ts";
import { dayOfSeason, wholeSeasons } from "../../src/season/spans.ts";
import { meanYearlyEto, peakDayEto } from "../../src/season/weather-years.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { MM, recordOf, roof, seattle, steadyEto } from "./made.ts";

test("snow of days that stay frozen arrives on the first that does not, none of it lost", () => {
  const cold = recordOf([1, 2, 3, 0, 5], 0, { highest: Float64Array.of(274, 270, 269, 274, 268) });
  expect([...arrivingRain(cold, 1)]).toEqual([1, 0, 0, 5, 0]);
  expect([...arrivingRain(recordOf([1, 2], 0), 2)]).toEqual([2, 4]);
});

test("a roof catches its yearly rain times area and coefficient on the Seattle record", () => {
  // rain-and-storage reference 9: 1226.0, 828.0, 1232.8 and 1139.2 mm.
  const caught = roofCatch(roof(), seattle(), 1);
  expect(caught.meanYearly).toBeCloseTo(((1226 + 828 + 1232.8 + 1139.2) / 4) * MM * 90, 9);
  expect(caught.driestYear).toBeCloseTo(828 * MM * 90, 9);
});

test("a roof taken off for the winter catches nothing then, also over the new year", () => {
  const steady = recordOf(new Float64Array(365).fill(0.01), dayNumber(2021, 1, 1));
  const summer = roofCatch(roof({ catchFrom: "04-01", catchUntil: "10-31" }), steady, 1);
  expect(summer.meanYearly).toBeCloseTo(214 * 0.9, 9);
  const winter = roofCatch(roof({ catchFrom: "11-01", catchUntil: "03-31" }), steady, 1);
  expect(winter.meanYearly).toBeCloseTo(151 * 0.9, 9);
});

test("seasons are whole, may wrap the new year, and end on 02-28 where there is no 29th", () => {
  const first = dayNumber(2021, 1, 1);
  expect(wholeSeasons({ start: "11-01", end: "02-29" }, first, 365 * 3)).toEqual([
    { year: 2021, first: dayNumber(2021, 11, 1) - first, last: dayNumber(2022, 2, 28) - first },
    { year: 2022, first: dayNumber(2022, 11, 1) - first, last: dayNumber(2023, 2, 28) - first },
  ]);
  const days = dayOfSeason({ start: "11-01", end: "02-29" }, first, 365);
  expect([days[0], days[58], days[59], days[304]]).toEqual([62, 120, 0, 1]);
});

test("the 0.9 quantile is linear between values, and a peak is a ten-day mean", () => {
  expect(quantile([1, 2, 3, 4, 5], 0.9)).toBeCloseTo(4.6, 12);
  expect(quantile([7], 0.9)).toBe(7);
  const series = Float64Array.from({ length: 40 }, (_, day) => (day >= 5 && day < 15 ? 2 : 1));
  expect(peakDay(series, [{ year: 0, first: 0, last: 39 }])).toBeCloseTo(2, 12);
});

test("Hargreaves on the Seattle record gives the yearly sums of the crop reference to 0.1 mm", () => {
  // crop-and-soil reference 11 (computed): 797.6, 830.6, 864.7, 897.3 mm, latitude 47.6 degrees.
  const choice = {
    ...steadyEto(0),
    method: "hargreaves" as const,
    months: null,
    latitude: (47.6 * Math.PI) / 180,
  };
  const answer = dailyEto(seattle(), choice);
  const eto = "eto" in answer ? answer.eto : new Float64Array(0);
  const sums = [0, 366, 731, 1096].map((start, year) =>
    eto.subarray(start, [366, 731, 1096, 1461][year]).reduce((sum, depth) => sum + depth, 0),
  );
  [797.6, 830.6, 864.7, 897.3].forEach((depth, year) => {
    expect(Math.abs((sums[year] ?? 0) / MM - depth)).toBeLessThan(0.1);
  });
  expect(meanYearlyEto(eto, seattle().firstDay)).toBeCloseTo(
    sums.reduce((sum, depth) => sum + depth, 0) / 4,
    12,
  );
  expect(peakDayEto(eto, seattle().firstDay, { start: "05-01", end: "09-30" })).toBeGreaterThan(4 * MM);
});

test("monthly figures are used as they are, and a day without temperatures fails naming it", () => {
  const answer = dailyEto(recordOf([0, 0], 0), steadyEto(3 * MM));
  expect("eto" in answer && answer.eto[1]).toBeCloseTo(3 * MM, 12);
  const holed = seattle();
  holed.highest?.fill(Number.NaN, 3, 4);
  const choice = { ...steadyEto(0), method: "penman_monteith" as const, months: null };
  expect(dailyEto(holed, choice)).toEqual({ failed: "The record has no temperatures on 2012-01-04." });
});

describe("the normals' temperatures, where a day has none", () => {
  const normals = { highest: Array(12).fill(281.15), lowest: Array(12).fill(275.15) };
  const choice = { ...steadyEto(0), method: "hargreaves" as const, months: null, latitude: 0.83, normals };
  const etoOf = (record: DailyRecord, chosen: EtoChoice = choice) => {
    const answer = dailyEto(record, chosen);
    if ("failed" in answer) throw new Error(answer.failed);
    return answer;
  };

  test("give what Hargreaves gives for a day of that warmth, and the days are counted", () => {
    const bare = recordOf(new Float64Array(365), 0);
    const same = {
      ...bare,
      highest: new Float64Array(365).fill(281.15),
      lowest: new Float64Array(365).fill(275.15),
    };
    expect(etoOf(bare)).toEqual({ eto: etoOf(same).eto, fromNormals: 365 });
    expect(etoOf(same).fromNormals).toBe(0);
  });

  test("stand in for single days only, and leave the others as they were", () => {
    const holed = seattle();
    const whole = etoOf(seattle(), { ...choice, method: "penman_monteith" }).eto;
    holed.highest?.fill(Number.NaN, 3, 5);
    const { eto, fromNormals } = etoOf(holed, { ...choice, method: "penman_monteith" });
    expect(fromNormals).toBe(2);
    expect(eto.slice(5)).toEqual(whole.slice(5));
    expect(eto[3]).toBe(etoOf({ ...seattle(), highest: null }).eto[3]);
  });
});
