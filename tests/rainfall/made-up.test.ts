import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fitNormals, gammaShape } from "../../src/rainfall/fit-normals.ts";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import { recordFromNormals } from "../../src/rainfall/made-up.ts";
import { daysByMonthMeans } from "../../src/rainfall/month-curve.ts";
import {
  gammaScale,
  MEAN_MONTH_DAYS,
  type RainMonth,
  rainMonth,
  wetShare,
} from "../../src/rainfall/rain-model.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { calendarDate } from "../../src/units/calendar.ts";

const INCH = 0.0254;
// Ephrata CAA AP, Washington, station 452614: published station parameters, from memory. Inches per wet day.
const EPHRATA = {
  mean: [0.1, 0.1, 0.11, 0.1, 0.11, 0.14, 0.14, 0.09, 0.1, 0.1, 0.12, 0.12],
  sd: [0.12, 0.12, 0.11, 0.13, 0.13, 0.18, 0.22, 0.13, 0.13, 0.11, 0.14, 0.13],
  afterWet: [0.47, 0.5, 0.39, 0.32, 0.33, 0.3, 0.27, 0.28, 0.4, 0.41, 0.42, 0.48],
  afterDry: [0.2, 0.16, 0.15, 0.13, 0.13, 0.11, 0.05, 0.06, 0.08, 0.12, 0.23, 0.23],
};
// Computed from the row above with p01 / (1 + p01 - p11), apart from this code.
const EPHRATA_WET_DAYS = [8.493, 6.788, 6.118, 4.815, 5.038, 4.074, 1.987, 2.385, 3.529, 5.239, 8.519, 9.507];
const EPHRATA_MM = [21.57, 17.24, 17.09, 12.23, 14.07, 14.49, 7.07, 5.45, 8.96, 13.31, 25.96, 28.98];

// Seattle 2012 to 2015, computed from the file apart from this code; a wet day has at least 0.1 mm.
const SEATTLE = [
  [124, 66, 0.322, 0.7344, 7.061, 0.986, 7.159],
  [113, 73, 0.4615, 0.7432, 5.781, 0.829, 6.977],
  [124, 73, 0.3725, 0.7397, 8.304, 0.845, 9.827],
  [120, 59, 0.4333, 0.55, 6.363, 1.066, 5.969],
  [124, 34, 0.1444, 0.6176, 6.103, 0.803, 7.598],
  [120, 37, 0.2289, 0.4865, 3.592, 0.804, 4.469],
  [124, 11, 0.0804, 0.1667, 4.382, 0.617, 7.104],
  [124, 22, 0.1165, 0.4762, 7.441, 0.666, 11.174],
  [120, 35, 0.2118, 0.4857, 6.729, 0.58, 11.607],
  [124, 61, 0.2727, 0.7414, 8.252, 0.851, 9.693],
  [120, 71, 0.3542, 0.75, 9.049, 0.754, 12.005],
  [124, 81, 0.3902, 0.7831, 7.688, 0.973, 7.9],
] as const;

function monthly(record: DailyRecord, value: (rain: number) => number): number[][] {
  const byMonth: Map<number, number>[] = Array.from({ length: 12 }, () => new Map());
  record.rain.forEach((rain, at) => {
    const { year, month } = calendarDate(record.firstDay + at);
    const years = byMonth[month - 1];
    years?.set(year, (years.get(year) ?? 0) + value(rain));
  });
  return byMonth.map((years) => [...years.values()]);
}

function withinThreeErrors(samples: readonly number[], expected: number): number {
  const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
  const variance = samples.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (samples.length - 1);
  return Math.abs(mean - expected) / Math.sqrt(variance / samples.length);
}

const seattleNormals = {
  rain: SEATTLE.map(([n, wet, , , mean], at) => ((wet * mean) / n / 1000) * (MEAN_MONTH_DAYS[at] ?? 0)),
  wetDays: SEATTLE.map(([n, wet], at) => (wet / n) * (MEAN_MONTH_DAYS[at] ?? 0)),
};

describe("the relation of Geng, Penning de Vries and Supit 1986 (equations read second-hand)", () => {
  it("the scale is 1.83 x - 2.16 in millimetres", () => {
    expect(gammaScale(0.01) * 1000).toBeCloseTo(1.83 * 10 - 2.16, 9);
    expect(gammaScale(0.005) * 1000).toBeCloseTo(6.99, 9);
  });

  it("below 2.6056 mm a wet day the shape is 0.999", () => {
    for (const mean of [0.5, 1.5, 2.6]) expect(gammaScale(mean / 1000) * 1000).toBeCloseTo(mean / 0.999, 9);
    expect(2.61 / 1000 / gammaScale(2.61 / 1000)).toBeLessThan(0.999);
  });

  it("the chain settles to the share of wet days that it was given", () => {
    for (const wet of [1, 7, 15.5, 25]) expect(wetShare(rainMonth(0.05, wet, 31))).toBeCloseTo(wet / 31, 12);
  });

  it("a month without rain has no chance of any", () => {
    expect(rainMonth(0, 0, 31)).toEqual({ wetAfterDry: 0, wetAfterWet: 0, shape: 0, scale: 0 });
  });
});

describe("a made-up record", () => {
  it("keeps Ephrata's wet days and monthly totals within 3 standard errors over 400 years", () => {
    const chain: RainMonth[] = EPHRATA.mean.map((mean, at) => {
      const sd = EPHRATA.sd[at] ?? 1;
      return {
        wetAfterDry: EPHRATA.afterDry[at] ?? 0,
        wetAfterWet: EPHRATA.afterWet[at] ?? 0,
        shape: (mean / sd) ** 2,
        scale: ((sd * sd) / mean) * INCH,
      };
    });
    const normals = { rain: EPHRATA_MM.map((mm) => mm / 1000), wetDays: EPHRATA_WET_DAYS };
    const record = recordFromNormals({ ...normals, chain, years: 400, seed: 452_614 });
    // The published row counts 28 days in February; a mean February has 28.25.
    const february = (at: number) => (at === 1 ? 28.25 / 28 : 1);
    monthly(record, (rain) => (rain > 0 ? 1 : 0)).forEach((samples, at) => {
      expect(
        withinThreeErrors(samples, (EPHRATA_WET_DAYS[at] ?? 0) * february(at)),
        `wet days, month ${at + 1}`,
      ).toBeLessThan(3);
    });
    monthly(record, (rain) => rain * 1000).forEach((samples, at) => {
      expect(
        withinThreeErrors(samples, (EPHRATA_MM[at] ?? 0) * february(at)),
        `rain, month ${at + 1}`,
      ).toBeLessThan(3);
    });
  });

  it("keeps Seattle's normals within 3 standard errors over 400 years", () => {
    const record = recordFromNormals({ ...seattleNormals, years: 400, seed: 98_101 });
    monthly(record, (rain) => (rain > 0 ? 1 : 0)).forEach((samples, at) => {
      expect(
        withinThreeErrors(samples, seattleNormals.wetDays[at] ?? 0),
        `wet days, month ${at + 1}`,
      ).toBeLessThan(3);
    });
    monthly(record, (rain) => rain).forEach((samples, at) => {
      expect(withinThreeErrors(samples, seattleNormals.rain[at] ?? 0), `rain, month ${at + 1}`).toBeLessThan(
        3,
      );
    });
  });

  it("[G1] the same seed gives the same bits, another seed others", () => {
    const wish = { ...seattleNormals, years: 3 };
    expect(recordFromNormals({ ...wish, seed: 7 }).key).toBe(recordFromNormals({ ...wish, seed: 7 }).key);
    expect(recordFromNormals({ ...wish, seed: 7 }).key).not.toBe(recordFromNormals({ ...wish, seed: 8 }).key);
  });

  it("is marked as made up, and temperatures move no rain", () => {
    const wish = { ...seattleNormals, years: 2, seed: 1 };
    const warm = recordFromNormals({ ...wish, highs: Array(12).fill(293), lows: Array(12).fill(283) });
    expect(warm.madeUp).toBe(true);
    expect([...warm.rain]).toEqual([...recordFromNormals(wish).rain]);
    expect(warm.highest?.every((high, at) => high > (warm.lowest?.[at] ?? high))).toBe(true);
  });

  it("rescaled, each month's mean is the normal itself", () => {
    const record = recordFromNormals({ ...seattleNormals, years: 30, seed: 5, rescale: true });
    monthly(record, (rain) => rain).forEach((samples, at) => {
      const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
      expect(mean).toBeCloseTo(seattleNormals.rain[at] ?? 0, 12);
    });
  });

  it("refuses lists that are not twelve long and years that are none", () => {
    expect(() => recordFromNormals({ rain: [1], wetDays: [1], years: 1, seed: 1 })).toThrow(/Twelve/);
    expect(() => recordFromNormals({ ...seattleNormals, years: 0, seed: 1 })).toThrow(/Years/);
  });

  it("warmth keeps the mean of every month along its curve", () => {
    const means = [280, 281, 284, 287, 291, 294, 298, 297, 293, 287, 283, 280];
    const days = daysByMonthMeans(means, 0, 365);
    const sums = means.map(() => ({ sum: 0, count: 0 }));
    days.forEach((value, at) => {
      const into = sums[calendarDate(at).month - 1];
      if (!into) return;
      into.sum += value;
      into.count++;
    });
    // Days sample the curve at their middles, which rounds its bend off at the middle of the month: at most bend / n2.
    sums.forEach(({ sum, count }, at) => {
      expect(Math.abs(sum / count - (means[at] ?? 0))).toBeLessThan(0.01);
    });
  });
});

describe("normals fitted to a record", () => {
  const text = readFileSync(new URL("../fixtures/seattle-weather.csv", import.meta.url), "utf8");
  const result = readRainCsv(text, { unit: "mm" });
  if (result.state !== "ready") throw new Error(result.state);
  const fit = fitNormals(result.record);

  it.each(SEATTLE.map((row, at) => [at, ...row] as const))(
    "Seattle 2012-15, month index %i",
    (at, n, wet, afterDry, afterWet, mean, shape, scale) => {
      const month = fit.chain[at];
      expect([month?.days, month?.wetDays]).toEqual([n, wet]);
      // Tolerances are half the last digit of the table.
      expect(Math.abs((month?.wetAfterDry ?? 0) - afterDry)).toBeLessThan(0.51e-4);
      expect(Math.abs((month?.wetAfterWet ?? 0) - afterWet)).toBeLessThan(0.51e-4);
      expect(Math.abs((month?.meanWetDay ?? 0) * 1000 - mean)).toBeLessThan(0.51e-3);
      expect(Math.abs((month?.shape ?? 0) - shape)).toBeLessThan(0.51e-3);
      expect(Math.abs((month?.scale ?? 0) * 1000 - scale)).toBeLessThan(0.51e-3);
    },
  );

  it("amounts that do not differ give a shape of 1 rather than an endless one", () => {
    expect(gammaShape(5, Math.log(5))).toBe(1);
  });
});
