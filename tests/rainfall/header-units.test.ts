import { expect, it } from "vitest";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";

// Pascals in a kilopascal and hectopascal, joules in a megajoule and kilowatt-hour: definitions.
it.each([
  ["vapour (kPa)", "vapour", 1000],
  ["vapour (KPA)", "vapour", 1000],
  ["vapour (kpa)", "vapour", 1000],
  ["vapour (hPa)", "vapour", 100],
  ["vapour (HPA)", "vapour", 100],
  ["solar (kWh/m2)", "sun", 3.6e6],
  ["solar (KWH/m2)", "sun", 3.6e6],
  ["solar (kwh/m2)", "sun", 3.6e6],
  ["solar (MJ/m2)", "sun", 1e6],
  ["solar (mj/m2)", "sun", 1e6],
] as const)("%s is read whatever its case", (header, column, factor) => {
  const result = readRainCsv(`date,rain (mm),${header}\n2020-01-01,1,2\n2020-01-02,0,2\n`);
  expect(result.state === "ready" && result.record[column]?.[0]).toBe(2 * factor);
});

it("hours and minutes in columns of their own are moments of their own", () => {
  const rows = Array.from(
    { length: 48 },
    (_, at) => `2020-01-0${at < 24 ? 1 : 2},${at % 24},30,${at % 5 ? 0 : 1}`,
  );
  const result = readRainCsv(`date,hour,minute,rain (mm)\n${rows.join("\n")}\n`);
  expect(
    result.state === "ready" && [...result.record.rain].map((value) => Math.round(value * 1e6) / 1e3),
  ).toEqual([5, 5]);
});

/** A year of example 17's days (34.8 and 25.6 degrees C) with one more column; the year's drying [mm], wind not measured. */
function yearOfExample17(header: string, value: string): number {
  const start = Date.UTC(2019, 0, 1);
  const rows = Array.from({ length: 365 }, (_, at) => {
    const day = new Date(start + at * 86_400_000).toISOString().slice(0, 10);
    return `${day},0,34.8,25.6,${value}`;
  });
  const result = readRainCsv(`date,rain (mm),tmax (C),tmin (C),${header}\n${rows.join("\n")}\n`);
  if (result.state !== "ready") throw new Error(JSON.stringify(result));
  const latitude = ((13 + 44 / 60) * Math.PI) / 180;
  const answer = dailyEto(result.record, {
    method: "penman_monteith",
    latitude,
    elevation: 2,
    factor: 1,
    months: null,
    normals: null,
  });
  if ("failed" in answer) throw new Error(answer.failed);
  return answer.eto.reduce((sum, depth) => sum + depth, 0) * 1000;
}

// Bangkok in April, FAO-56 example 17 (13 deg 44' N, 2 m; wind 2 m/s, which is what stands for no wind), its day repeated over the
// 365 days of 2019, once with its vapour pressure alone and once with its sunshine alone (22.65 MJ/m2).
// The year's sums: worked out independently of this code from the named method (FAO-56 Eq. 6 with Eq. 48 and 50).
it.each([
  ["vapour pressure (kPa)", "2.85", 1742.82],
  ["vapour pressure (KPA)", "2.85", 1742.82],
  ["vapour pressure (hPa)", "28.5", 1742.82],
  ["solar radiation (kWh/m2)", String(22.65 / 3.6), 1941.19],
  ["solar radiation (KWH/m2)", String(22.65 / 3.6), 1941.19],
  ["solar radiation (MJ/m2)", "22.65", 1941.19],
] as const)("FAO-56 example 17's day over a year with a column %s", (header, value, year) => {
  // Two decimals are what is published of the sums.
  expect(Math.abs(yearOfExample17(header, value) - year)).toBeLessThanOrEqual(0.006);
});
