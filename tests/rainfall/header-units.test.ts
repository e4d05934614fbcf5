import { expect, it } from "vitest";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";

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
