import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readRainCsv, readRainFile } from "../../src/rainfall/import-csv.ts";
import { recordSummary } from "../../src/rainfall/statistics.ts";
import { isoDate } from "../../src/units/calendar.ts";

// vega-datasets 3.2.1, data/seattle-weather.csv (BSD-3-Clause). Totals: computed from that file apart from this code.
const TEXT = readFileSync(new URL("../fixtures/seattle-weather.csv", import.meta.url), "utf8");

describe("the Seattle record", () => {
  it("asks for the unit, since its header tells none, and calls millimetres likely", () => {
    const result = readRainCsv(TEXT);
    expect(result.state).toBe("ask");
    if (result.state !== "ask") return;
    expect(result.questions.map(({ id, likely }) => [id, likely])).toEqual([["unit", "mm"]]);
    expect(result.report.days).toBe(1461);
  });

  it("has 1461 days, 1226.0 / 828.0 / 1232.8 / 1139.2 mm a year and 81 days under 1 mm", () => {
    const result = readRainCsv(TEXT, { unit: "mm" });
    expect(result.state).toBe("ready");
    if (result.state !== "ready") return;
    const summary = recordSummary(result.record);
    expect(summary.days).toBe(1461);
    expect(summary.years.map(({ rain }) => ((rain ?? Number.NaN) * 1000).toFixed(1))).toEqual([
      "1226.0",
      "828.0",
      "1232.8",
      "1139.2",
    ]);
    expect(
      summary.longestDryRun && {
        ...summary.longestDryRun,
        first: isoDate(summary.longestDryRun.first),
        last: isoDate(summary.longestDryRun.last),
      },
    ).toEqual({
      first: "2012-07-23",
      last: "2012-10-11",
      days: 81,
    });
    expect(summary.driestYear).toBe(2013);
    expect((summary.meanYearlyRain ?? 0) * 1000).toBeCloseTo(1106.5, 6);
    expect(summary.missingDays).toBe(0);
    expect(result.report.temperatureUnit).toEqual({ value: "C", told: "guess" });
    expect((result.record.highest?.[0] ?? 0) - 273.15).toBeCloseTo(12.8, 9);
    expect((result.record.lowest?.[0] ?? 0) - 273.15).toBeCloseTo(5.0, 9);
    expect(result.record.wind).toBeNull();
    expect(result.report.columns.find(({ name }) => name === "wind")?.use).toMatch(/unit and height/);
    // Monthly totals of four Julys: 26.3, 0.0, 19.6, 2.3 mm.
    expect((summary.monthlyRain[6] ?? 0) * 1000).toBeCloseTo((26.3 + 0 + 19.6 + 2.3) / 4, 6);
  });

  it("gives the same key as a file in slices as it gives as a text", async () => {
    const whole = readRainCsv(TEXT, { unit: "mm" });
    const shares: number[] = [];
    const sliced = await readRainFile(new Blob([TEXT]), {
      choices: { unit: "mm" },
      onProgress: (share) => shares.push(share),
    });
    expect(
      whole.state === "ready" && sliced.state === "ready" && sliced.record.key === whole.record.key,
    ).toBe(true);
    expect(shares.at(-1)).toBe(1);
  });
});
