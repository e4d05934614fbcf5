import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvText, recordToCsv, safeCell } from "../../src/rainfall/export-csv.ts";
import { FILLED, fillGaps } from "../../src/rainfall/fill-gaps.ts";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import { joinRecords } from "../../src/rainfall/join-records.ts";
import { readOwnGauge } from "../../src/rainfall/own-gauge.ts";
import { makeRecord, recordKey } from "../../src/rainfall/record-key.ts";
import { seededRandom } from "../../src/rainfall/seeded-random.ts";
import { recordSummary } from "../../src/rainfall/statistics.ts";
import { dayNumber, isoDate } from "../../src/units/calendar.ts";

const NONE = Number.NaN;

function record(
  firstDay: number,
  mm: number[],
  more: { highest?: Float64Array; madeUp?: boolean; title?: string } = {},
) {
  return makeRecord({
    title: "t",
    source: "s",
    madeUp: false,
    firstDay,
    rain: Float64Array.from(mm, (value) => value / 1000),
    ...more,
  });
}

describe("the content key", () => {
  it("is 32 hexadecimal digits over days and columns, and nothing else", () => {
    const key = record(10, [1, 2, 3]).key;
    expect(key).toMatch(/^[0-9a-f]{32}$/);
    expect(record(10, [1, 2, 3], { title: "another", madeUp: true }).key).toBe(key);
    expect(record(11, [1, 2, 3]).key).not.toBe(key);
    expect(record(10, [1, 2]).key).not.toBe(key);
    expect(record(10, [1, 2, 3], { highest: Float64Array.of(1, 2, 3) }).key).not.toBe(key);
  });

  it("takes every missing day for the same and tells it from none", () => {
    const odd = new Float64Array(new BigUint64Array([0xfff8000000000001n]).buffer);
    expect(recordKey({ firstDay: 0, rain: odd })).toBe(
      recordKey({ firstDay: 0, rain: Float64Array.of(NONE) }),
    );
    expect(recordKey({ firstDay: 0, rain: Float64Array.of(-0) })).toBe(
      recordKey({ firstDay: 0, rain: Float64Array.of(0) }),
    );
    expect(recordKey({ firstDay: 0, rain: Float64Array.of(0) })).not.toBe(
      recordKey({ firstDay: 0, rain: Float64Array.of(NONE) }),
    );
  });

  it("differs for 50,000 records that differ in one day, and half its bits turn with one", () => {
    const seen = new Set<string>();
    let turned = 0;
    const rain = new Float64Array(40);
    const base = BigInt(`0x${recordKey({ firstDay: 0, rain })}`);
    for (let run = 0; run < 50_000; run++) {
      rain[run % 40] = (run + 1) / 1e5;
      const key = recordKey({ firstDay: 0, rain });
      rain[run % 40] = 0;
      seen.add(key);
      if (run < 500) turned += (BigInt(`0x${key}`) ^ base).toString(2).replaceAll("0", "").length;
    }
    expect(seen.size).toBe(50_000);
    expect(Math.abs(turned / 500 - 64)).toBeLessThan(2);
  });
});

describe("statistics", () => {
  const first = dayNumber(2020, 12, 30);
  const days = dayNumber(2022, 1, 3) - first;

  it("counts whole calendar years only, and says which were left out", () => {
    const summary = recordSummary(record(first, Array(days).fill(2)));
    expect(summary.wholeYears).toEqual([2021]);
    expect(summary.leftOutYears).toEqual([2020, 2022]);
    expect((summary.meanYearlyRain ?? 0) * 1000).toBeCloseTo(730, 9);
    expect(summary.driestYear).toBe(2021);
  });

  it("a missing day takes its year out of the totals, and no year leaves null", () => {
    const mm = Array<number>(days).fill(2);
    mm[100] = NONE;
    const summary = recordSummary(record(first, mm));
    expect([summary.meanYearlyRain, summary.driestYear, summary.driestYearRain]).toEqual([null, null, null]);
    expect(summary.firstGapDay).toBe(first + 100);
    expect(summary.missing).toEqual([{ first: first + 100, last: first + 100, days: 1 }]);
    expect(summary.monthlyRain[3]).toBeNull();
    expect((summary.monthlyRain[4] ?? 0) * 1000).toBeCloseTo(62, 9);
  });

  it("a day of 1 mm is no dry day, and a missing day ends a dry run", () => {
    const summary = recordSummary(record(0, [0, 0.9, 1, 0, NONE, 0, 0.5, 0, 5]));
    expect(summary.longestDryRun).toEqual({ first: 5, last: 7, days: 3 });
    expect(recordSummary(record(0, [1, 2])).longestDryRun).toBeNull();
  });

  it("the scale multiplies the rain before anything is counted", () => {
    expect(recordSummary(record(0, [1.5, 1.5, 1.5]), 0.5).longestDryRun?.days).toBe(3);
  });
});

describe("gaps are filled by the user's word", () => {
  const gapped = record(dayNumber(2020, 1, 1), [4, NONE, 2, NONE]);
  const mm = (rain: Float64Array) =>
    [...rain].map((value) => (Number.isNaN(value) ? null : Math.round(value * 1e6) / 1e3));

  it("left missing they stay, and the record keeps its key", () => {
    const { record: same, filled, left } = fillGaps(gapped, { kind: "missing" });
    expect([same.key, filled, left]).toEqual([gapped.key, 0, 2]);
  });

  it("zero, the month's mean, another record; and the source says so", () => {
    expect(mm(fillGaps(gapped, { kind: "zero" }).record.rain)).toEqual([4, 0, 2, 0]);
    expect(mm(fillGaps(gapped, { kind: "month_mean" }).record.rain)).toEqual([4, 3, 2, 3]);
    const other = record(dayNumber(2020, 1, 2), [7], { madeUp: true, title: "neighbour" });
    const { record: joined, filled, left } = fillGaps(gapped, { kind: "record", other });
    expect(mm(joined.rain)).toEqual([4, 7, 2, null]);
    expect([filled, left, joined.madeUp]).toEqual([1, 1, true]);
    expect(joined.source).toMatch(/1 missing day taken from "neighbour"/);
  });

  it("warmth apart from rain, and rain apart from warmth", () => {
    const high = Float64Array.of(280, NONE, 290, 300);
    const both = record(gapped.firstDay, [4, NONE, 2, 1], { highest: high });
    const rainOnly = fillGaps(both, { kind: "month_mean" }, null, FILLED.rain);
    expect([mm(rainOnly.record.rain)[1], rainOnly.record.highest?.[1]]).toEqual([2.333, NONE]);
    const warmOnly = fillGaps(both, { kind: "month_mean" }, null, FILLED.drying);
    expect([mm(warmOnly.record.rain)[1], warmOnly.record.highest?.[1]]).toEqual([null, 290]);
    expect([warmOnly.filled, warmOnly.left]).toEqual([1, 0]);
    expect(warmOnly.record.source).toContain("1 day without warmth given the mean of their month");
  });

  it("only in the runs of days that were named", () => {
    const day = gapped.firstDay + 3;
    expect(mm(fillGaps(gapped, { kind: "zero" }, [{ first: day, last: day, days: 1 }]).record.rain)).toEqual([
      4,
      null,
      2,
      0,
    ]);
  });
});

describe("two records joined", () => {
  it("the preferred one stands, the other fills, days between stay missing", () => {
    const joined = joinRecords(record(10, [1, NONE, 3]), record(11, [5, 6, 7]));
    expect([...joined.record.rain].map((value) => value * 1000)).toEqual([1, 5, 3, 7]);
    expect([joined.bothDays, joined.differingDays, joined.daysBetween]).toEqual([1, 1, 0]);
    const apart = joinRecords(record(0, [1]), record(3, [2]));
    expect(recordSummary(apart.record).missingDays).toBe(2);
    expect(apart.daysBetween).toBe(2);
  });
});

describe("own gauge", () => {
  it("reads what a grower types, turning the year where the months step back", () => {
    const result = readOwnGauge("12 Dec 0.4 in\nDec 14: trace\n2 Jan 10 mm\n", {
      year: 2023,
      between: "zero",
    });
    if (result.state !== "ready") throw new Error(JSON.stringify(result));
    expect(isoDate(result.record.firstDay)).toBe("2023-12-12");
    expect(result.record.rain.length).toBe(22);
    expect(result.record.rain[0]).toBeCloseTo(0.01016, 12);
    expect(result.record.rain[21]).toBeCloseTo(0.01, 12);
    expect(result.traces).toBe(1);
  });

  it("asks for year, order, unit and the days between, all at once", () => {
    const result = readOwnGauge("3/4 0.4\n");
    expect(result.state === "ask" && result.questions.map(({ id }) => id)).toEqual([
      "date_order",
      "year",
      "unit",
      "between",
    ]);
  });

  it("refuses with the line", () => {
    expect(readOwnGauge("2024-03-12 10 mm\nsoaked\n")).toMatchObject({ state: "refused", line: 2 });
    expect(readOwnGauge("30 Feb 10 mm", { year: 2024, between: "zero" })).toMatchObject({
      state: "refused",
      line: 1,
    });
  });
});

describe("export", () => {
  it("no cell runs as a formula elsewhere; numbers stay numbers", () => {
    for (const text of ["=1+1", "+1", "-cmd", "@SUM(A1)", "\t=1", " =1"])
      expect(safeCell(text).replace(/^"/, "")).toMatch(/^'/);
    for (const text of ["＝1+1", "＋1", "－1", "＠SUM(A1)", "﹦1", "\u2068=1", " ＝1", "\u200b=1"])
      expect(safeCell(text).replace(/^"/, "")).toMatch(/^'/);
    expect(safeCell(-3.5)).toBe("-3.5");
    expect(csvText([["a,b", 'say "x"', null]])).toBe('"a,b","say ""x""",\r\n');
  });

  it("a record comes back as it left, whatever its units, and a made-up one stays made up", () => {
    const seed = 20_260_102;
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.integer({ min: 0, max: 4000 }), { nil: null }), {
          minLength: 1,
          maxLength: 40,
        }),
        fc.constantFrom("mm", "in"),
        fc.constantFrom("C", "F"),
        (tenths, rain, temperature) => {
          const mm = tenths.map((value) => (value === null ? NONE : value / 10));
          const highest = Float64Array.from(mm, (_, at) => 280 + (at % 20));
          const before = record(18_000, mm, { highest, madeUp: true });
          const after = readRainCsv(
            recordToCsv(before, { rain, temperature } as { rain: "mm" | "in"; temperature: "C" | "F" }),
          );
          if (after.state !== "ready") throw new Error(JSON.stringify(after));
          expect(after.record.madeUp).toBe(true);
          expect(after.record.firstDay).toBe(18_000);
          after.record.rain.forEach((value, at) => {
            if (Number.isNaN(mm[at] ?? 0)) expect(value).toBeNaN();
            // Cells carry 12 digits, of inches too: 5e-12 of some decimetres.
            else expect(value).toBeCloseTo((mm[at] ?? 0) / 1000, 11);
            expect(after.record.highest?.[at]).toBeCloseTo(highest[at] ?? 0, 9);
          });
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});

describe("seeded chance", () => {
  it("is even, repeatable, and its streams share nothing", () => {
    const draw = seededRandom(1);
    const again = seededRandom(1);
    const other = seededRandom(1, 1);
    let [sum, product, same] = [0, 0, 0];
    for (let at = 0; at < 100_000; at++) {
      const [a, b] = [draw(), other()];
      sum += a;
      product += (a - 0.5) * (b - 0.5);
      if (a === again()) same++;
    }
    expect(same).toBe(100_000);
    // Mean 1/2 and correlation 0, each within four standard errors of 100,000 even draws.
    expect(Math.abs(sum / 100_000 - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 100_000));
    expect(Math.abs(product / 100_000)).toBeLessThan(4 / 12 / Math.sqrt(100_000));
  });
});
