import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readRainCsv, readRainFile } from "../../src/rainfall/import-csv.ts";
import type { Choices, ImportReport } from "../../src/rainfall/import-result.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { dayNumber, isoDate } from "../../src/units/calendar.ts";

// The files are made up; what each should give follows from the layout rules listed for its service.
const bytesOf = (name: string) => readFileSync(new URL(`../fixtures/rain/${name}`, import.meta.url));
const textOf = (name: string) => bytesOf(name).toString("utf8");

function ready(name: string, choices: Choices = {}): { record: DailyRecord; report: ImportReport } {
  const result = readRainCsv(textOf(name), choices);
  if (result.state !== "ready") throw new Error(`${name}: ${JSON.stringify(result).slice(0, 400)}`);
  return result;
}

const millimetres = (values: Float64Array) =>
  Array.from(values, (value) => (Number.isNaN(value) ? null : Number((value * 1000).toFixed(3))));
const celsius = (values: Float64Array | null) =>
  values && Array.from(values, (value) => (Number.isNaN(value) ? null : Number((value - 273.15).toFixed(2))));

function asked(name: string, choices: Choices = {}) {
  const result = readRainCsv(textOf(name), choices);
  return result.state === "ask" ? result.questions.map(({ id, likely }) => `${id}:${likely}`) : result.state;
}

describe("services, each told by its own file", () => {
  const cases: readonly [string, string, string, (number | null)[]][] = [
    ["ghcn-by-year.csv", "ghcn_long", "2019-01-01", [5.6, 0, 0, null, null, 3, 3, 3, 1.2]],
    ["ghcn-access.csv", "noaa_table", "2020-02-28", [5.6, 0, null, null, 25.4]],
    ["gsod.csv", "gsod", "2021-01-01", [12.7, null, null, 0]],
    ["bom.csv", "bom", "2008-04-22", [null, 5.2, 0, 0.2, 0.2, 1]],
    ["ecad.txt", "ecad", "1960-01-01", [10.6, 0, null, 1.2]],
    ["knmi.txt", "knmi", "2020-01-01", [0, 4.2, null, 0]],
    ["dwd.txt", "dwd", "1910-12-10", [0, 12.5, null, null, 1.5]],
    ["meteo-france.csv", "meteo_france", "2022-01-01", [3.4, null, 0]],
    ["canada.csv", "canada", "2019-03-01", [3, 0, 4, 4, 1.5]],
    ["midas.csv", "midas", "2018-05-01", [2.4, 0, null, null, null, 1.2]],
    ["cliflo.csv", "amount_period", "2020-01-01", [4.2, 3, 3, 0]],
  ];
  it.each(cases)("%s comes in as %s from %s", (name, id, firstDay, rain) => {
    const { record, report } = ready(name);
    expect(report.format.id).toBe(id);
    expect(isoDate(record.firstDay)).toBe(firstDay);
    expect(millimetres(record.rain)).toEqual(rain);
  });

  it("fixed-width months: 29 days in February 2020, -9999 missing, T a trace", () => {
    const { record, report } = ready("ghcn.dly");
    expect(record.rain.length).toBe(29);
    expect(millimetres(record.rain).slice(4, 10)).toEqual([5.6, 0, 0, 0, 0, null]);
    expect(millimetres(record.rain)[28]).toBe(1.2);
    expect(report.traces).toBe(1);
    expect(celsius(record.highest)?.[0]).toBe(10);
  });

  it("temperatures come in by each service's unit", () => {
    expect(celsius(ready("ghcn-by-year.csv").record.highest)?.[0]).toBe(14);
    expect(celsius(ready("ghcn-access.csv").record.lowest)).toEqual([-1.1, 0, 2.2, 3, 3]);
    expect(celsius(ready("gsod.csv").record.highest)).toEqual([10, null, 10, 10]);
    expect(celsius(ready("knmi.txt").record.lowest)).toEqual([-0.5, 2, 3.1, 3.1]);
    expect(celsius(ready("dwd.txt").record.lowest)).toEqual([1, 2, 1, null, -1]);
  });

  it("an order form tells no unit: asked, with inches likely", () => {
    expect(asked("noaa-order.csv")).toEqual(["unit:in"]);
    expect(millimetres(ready("noaa-order.csv", { unit: "in" }).record.rain)).toEqual([6.35, 0, 27.94]);
    expect(celsius(ready("noaa-order.csv", { unit: "in" }).record.highest)?.[0]).toBeCloseTo(21.67, 2);
  });

  it("a month a line: m missing, t trace, a gathers the missing days before it, other elements left out", () => {
    expect(asked("month-lines.csv")).toEqual(["unit:mm"]);
    const { record, report } = ready("month-lines.csv", { unit: "hundredth_in" });
    expect(isoDate(record.firstDay)).toBe("2019-07-01");
    const rain = millimetres(record.rain);
    expect(rain.slice(0, 4)).toEqual([6.35, 0, null, 0]);
    expect(rain.slice(9, 11)).toEqual([3.81, 3.81]);
    expect(rain.at(-1)).toBe(2.54);
    expect(report.multiDay).toMatchObject({ totals: 1, days: 2 });
  });

  it("a year by hand: its year is asked, the empty 30 February is no reading", () => {
    expect(asked("year-grid.csv")).toEqual(["first_day:null", "unit:mm"]);
    const { record } = ready("year-grid.csv", { first_day: "2019-01-01", unit: "mm" });
    expect(record.rain.length).toBe(365);
    expect(millimetres(record.rain).filter((value) => value === 1.5)).toHaveLength(12);
    expect(millimetres(record.rain)[365 - 20]).toBe(1.5);
  });

  it("monthly totals are refused with the header's line", () => {
    expect(readRainCsv(textOf("met-office-monthly.txt"))).toMatchObject({
      state: "refused",
      line: 3,
      reason: expect.stringContaining("Daily rain is needed"),
    });
  });

  it("Latin-1 bytes and UTF-16 are read as text", async () => {
    const latin = await readRainFile(new Blob([bytesOf("dwd.txt")]));
    expect(latin.state).toBe("ready");
    const wide = Buffer.concat([
      Buffer.from([0xff, 0xfe]),
      Buffer.from("date,rain_mm\n2020-01-01,4\n", "utf16le"),
    ]);
    expect((await readRainFile(new Blob([wide]))).state).toBe("ready");
  });
});

describe("doubts, traces and flags are reported", () => {
  it("counts what failed a check, and keeps it when told to", () => {
    expect(ready("ghcn-access.csv").report.flagged).toEqual([
      { flag: "G, failed a quality check", count: 1, done: "taken as missing" },
    ]);
    expect(millimetres(ready("ghcn-access.csv", { flagged: "keep" }).record.rain)[3]).toBe(12);
  });

  it("a made zero is missing, unless the user keeps it", () => {
    expect(millimetres(ready("gsod.csv", { flagged: "keep" }).record.rain)).toEqual([12.7, null, 0, 0]);
  });

  it("an amount over two days is spread evenly, or kept on its last day", () => {
    expect(millimetres(ready("bom.csv", { multi_day: "last_day" }).record.rain).slice(3, 5)).toEqual([
      0, 0.4,
    ]);
  });

  it("a broken last row is left out and said; a broken row before the end is refused", () => {
    expect(ready("knmi.txt").report.notes.join()).toMatch(/Line 11/);
    expect(readRainCsv(`${textOf("knmi.txt")}  999,20200105,   31,   92,    0\n`)).toMatchObject({
      state: "refused",
      line: 11,
    });
  });

  it("a morning reading can be booked on the day before, or left", () => {
    expect(isoDate(ready("bom.csv", { day_shift: -1 }).record.firstDay)).toBe("2008-04-21");
    expect(isoDate(ready("midas.csv", { day_shift: 0 }).record.firstDay)).toBe("2018-05-02");
    expect(ready("bom.csv").report.dayRule.text).toMatch(/9 in the morning/);
  });
});

describe("traps", () => {
  it("comments above, a day twice, rows out of order, a gap, traces, Fahrenheit by header, wind by unit and height", () => {
    const { record, report } = ready("gap-and-duplicates.csv");
    expect(millimetres(record.rain)).toEqual([1.5, 0, 2.5, null, null, 0]);
    expect(report).toMatchObject({
      sorted: false,
      traces: 2,
      missingDays: 2,
      duplicates: { days: 1, differing: 1 },
    });
    expect(report.gaps.map(({ first, days }) => [isoDate(first), days])).toEqual([["2020-03-02", 2]]);
    expect(report.temperatureUnit).toEqual({ value: "F", told: "header" });
    expect(celsius(record.highest)?.[0]).toBe(10);
    // FAO-56 equation 47: 10 km/h at 10 m is 2.778 x 4.87 / ln(672.58) m/s at 2 m.
    expect(record.wind?.[0]).toBeCloseTo((10 / 3.6) * (4.87 / Math.log(67.8 * 10 - 5.42)), 9);
    expect(millimetres(ready("gap-and-duplicates.csv", { duplicates: "keep_first" }).record.rain)[2]).toBe(0);
  });

  it("a day that is none, an amount that is none and a negative one are refused with their line", () => {
    expect(readRainCsv(textOf("bad-day.csv"))).toMatchObject({
      state: "refused",
      line: 3,
      reason: expect.stringContaining("2021-02-30"),
    });
    expect(readRainCsv(textOf("bad-amount.csv"))).toMatchObject({
      state: "refused",
      line: 3,
      reason: expect.stringContaining("lots"),
    });
    expect(readRainCsv(textOf("negative.csv"))).toMatchObject({
      state: "refused",
      line: 3,
      reason: expect.stringContaining("-3.5"),
    });
    expect(readRainCsv(textOf("prose.txt"))).toMatchObject({ state: "refused", line: 1 });
    expect(readRainCsv("")).toMatchObject({ state: "refused", line: null });
  });

  it("codes for missing are missing, an empty cell too, and 0 is 0", () => {
    const { record, report } = ready("codes.csv");
    expect(millimetres(record.rain)).toEqual([null, null, null, null, 2, null, 0]);
    expect(report.missingCodes.map(({ code }) => code)).toEqual(["-9999", "-999", "-99.9", "999.9"]);
    expect(millimetres(ready("codes.csv", { missing_codes: [2] }).record.rain)[4]).toBeNull();
  });

  it("99.99 is missing in inches and rain in millimetres", () => {
    const text = (unit: string) => `date,rain_${unit}\n2020-01-01,99.99\n2020-01-02,1\n`;
    const inches = readRainCsv(text("in"));
    const metric = readRainCsv(text("mm"));
    expect(inches.state === "ready" && millimetres(inches.record.rain)).toEqual([null, 25.4]);
    expect(metric.state === "ready" && millimetres(metric.record.rain)).toEqual([99.99, 1]);
  });

  it("-1 is asked where the format does not say", () => {
    expect(asked("minus-one.csv")).toEqual(["minus_one:trace"]);
    expect(millimetres(ready("minus-one.csv", { minus_one: "trace" }).record.rain)).toEqual([0, 3]);
    expect(millimetres(ready("minus-one.csv", { minus_one: "missing" }).record.rain)).toEqual([null, 3]);
  });

  it("a day beyond 12 settles day and month; else it is asked", () => {
    expect(isoDate(ready("slash-day-first.csv").record.firstDay)).toBe("2021-02-01");
    expect(millimetres(ready("slash-day-first.csv").record.rain)[0]).toBe(0.3);
    expect(isoDate(ready("slash-month-first.csv").record.firstDay)).toBe("2021-02-12");
    expect(asked("slash-open.csv")).toEqual(["date_order:mdy"]);
    expect(isoDate(ready("slash-open.csv", { date_order: "dmy" }).record.firstDay)).toBe("2021-04-03");
    expect(isoDate(ready("slash-open.csv", { date_order: "mdy" }).record.firstDay)).toBe("2021-03-04");
  });

  it("an order that some row contradicts is refused with that row's line", () => {
    expect(readRainCsv(textOf("slash-month-first.csv"), { date_order: "dmy" })).toMatchObject({
      state: "refused",
      line: 3,
    });
    expect(readRainCsv("date,rain_mm\n13/2/2021,1\n2/14/2021,1\n")).toMatchObject({
      state: "refused",
      line: 3,
    });
  });

  it("hours are added; a day with one missing is missing; a thin day is counted", () => {
    // Every row says 0.1: equal rows are no proof of amounts, so it is asked.
    expect(asked("hourly.csv")).toEqual(["within_day:sum"]);
    const { record, report } = ready("hourly.csv", { within_day: "sum" });
    expect(millimetres(record.rain)).toEqual([25.4, null, 0]);
    expect(report.withinDay).toMatchObject({ usualRows: 24, thinDays: 1 });
  });

  it("a running daily total counts once a day, decimal commas and a 12-hour clock understood", () => {
    const { record, report } = ready("console.csv");
    expect(isoDate(record.firstDay)).toBe("2021-07-01");
    expect(millimetres(record.rain)).toEqual([2, 0, 2]);
    expect(report.withinDay?.done).toMatch(/running total/);
    expect(millimetres(ready("console.csv", { within_day: "sum" }).record.rain)[0]).toBeCloseTo(
      0.4 + 0.8 + 1.2 + 1.6 + 2 * 17,
      6,
    );
  });

  it("whole numbers with a middle wet day over 20 make tenths likely, two decimals under 20 inches", () => {
    expect(asked("tenths.csv")).toEqual(["unit:tenth_mm"]);
    expect(asked("inches.csv")).toEqual(["unit:in"]);
    expect(millimetres(ready("tenths.csv", { unit: "tenth_mm" }).record.rain)[1]).toBe(3.5);
  });

  it("several stations are asked for, and one is taken", () => {
    expect(asked("two-stations.csv")).toEqual(["station:null"]);
    expect(millimetres(ready("two-stations.csv", { station: "B" }).record.rain)).toEqual([2, 4]);
  });

  it("a lone column with a rain unit is rain; its first day is asked", () => {
    expect(asked("no-date.csv")).toEqual(["first_day:null"]);
    const { record } = ready("no-date.csv", { first_day: "2022-05-01" });
    expect([isoDate(record.firstDay), ...millimetres(record.rain)]).toEqual(["2022-05-01", 1, 0, 2.5]);
  });

  it("part years have no total, whole ones have", () => {
    const first = dayNumber(2019, 12, 30);
    const rows = Array.from({ length: 2 + 366 + 2 }, (_, at) => `${isoDate(first + at)},1`);
    const result = readRainCsv(`date,rain_mm\n${rows.join("\n")}`);
    const years = result.state === "ready" ? result.report.years : [];
    expect(years.map(({ year, days, rain }) => [year, days, rain && Math.round(rain * 1000)])).toEqual([
      [2019, 2, null],
      [2020, 366, 366],
      [2021, 2, null],
    ]);
  });

  it("more than ever fell in a day is refused with its line, as is a date 400 years off", () => {
    expect(readRainCsv("date,rain_in\n2020-01-01,1\n2020-01-02,98\n")).toMatchObject({
      state: "refused",
      line: 3,
    });
    expect(readRainCsv("date,rain_mm\n1600-01-01,1\n2020-01-02,8\n")).toMatchObject({
      state: "refused",
      line: 3,
    });
  });

  it("a quotation mark that never closes ends in a reason, not in a frozen page", () => {
    const text = `date,rain_mm\n2020-01-01,"1\n${"2020-01-02,1\n".repeat(300_000)}`;
    expect(readRainCsv(text)).toMatchObject({ state: "refused", line: 2 });
  });

  it("a cancelled import is refused and leaves nothing", async () => {
    const stop = new AbortController();
    const text = `date,rain_mm\n${Array.from({ length: 200_000 }, (_, at) => `${isoDate(at % 100_000)},1`).join("\n")}`;
    const result = await readRainFile(new Blob([text]), {
      signal: stop.signal,
      onProgress: () => stop.abort(),
    });
    expect(result).toEqual({ state: "refused", reason: "The import was cancelled.", line: null });
  });
});
