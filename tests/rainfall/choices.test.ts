import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import type { Choices, GaugeChoices } from "../../src/rainfall/import-result.ts";
import { readOwnGauge } from "../../src/rainfall/own-gauge.ts";

const TEXT = "date,rain_mm\n2020-02-28,1\n2020-02-29,2\n";
const outcome = (choices: unknown) => readRainCsv(TEXT, choices as Choices);

describe("what is said of a file is looked at before it is believed", () => {
  it.each([
    ["unit", { unit: "furlongs" }],
    ["such as 2024-03-12", { first_day: "last Tuesday" }],
    ["such as 2024-03-12", { first_day: "2021-02-29" }],
    ["the day before or the day after", { day_shift: 400 }],
    ["the day before or the day after", { day_shift: Number.NaN }],
    ["At most 20 numbers", { missing_codes: Array.from({ length: 21 }, (_, at) => at) }],
    ["rain_column", { rain_column: "x".repeat(1000) }],
    ["duplicates", { duplicates: "burn" }],
  ])("what is no answer is refused with a sentence: %s", (word, choices) => {
    expect(outcome(choices)).toMatchObject({ state: "refused", reason: expect.stringContaining(word) });
  });

  it("of one's own gauge too", () => {
    const say = (choices: unknown) => readOwnGauge("12 Mar 4 mm", choices as GaugeChoices);
    expect(say({ year: 12 })).toMatchObject({ state: "refused", reason: expect.stringContaining("1600") });
    expect(say({ between: "perhaps" }).state).toBe("refused");
    expect(say({ year: 2021, between: "zero" }).state).toBe("ready");
  });

  it("500 of anything end in a record, a question or a reason", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.anything()), (choices) => {
        expect(["ready", "ask", "refused"]).toContain(outcome(choices).state);
      }),
      { numRuns: 500, seed: 20_260_105 },
    );
  });
});

describe("traps of text", () => {
  const millimetres = (text: string) => {
    const result = readRainCsv(text);
    return result.state === "ready"
      ? Array.from(result.record.rain, (value) => Number((value * 1000).toFixed(3)))
      : result;
  };

  it("a mark of UTF-8 before the header, and lines that end in CR LF", () => {
    expect(millimetres("\uFEFFdate,rain_mm\r\n2020-01-01,1.5\r\n2020-01-02,0\r\n")).toEqual([1.5, 0]);
  });

  it("a decimal comma between semicolons or tabs, in quotes between commas, and none unquoted there", () => {
    expect(millimetres('date,rain_mm\n2020-01-01,"0,3"\n2020-01-02,"1,5"\n')).toEqual([0.3, 1.5]);
    expect(millimetres("date,rain_mm\n2020-01-01,0,3\n2020-01-02,1,5\n2020-01-03,0\n")).toMatchObject({
      line: 2,
    });
    expect(millimetres("date;rain_mm\n2020-01-01;0,3\n2020-01-02;1,5\n")).toEqual([0.3, 1.5]);
    expect(millimetres("date\train_mm\n2020-01-01\t0,3\n2020-01-02\t1,5\n")).toEqual([0.3, 1.5]);
  });

  it("T, Tr and trace are no rain, and are counted", () => {
    const text = "date,rain_mm\n2020-01-01,T\n2020-01-02,Tr\n2020-01-03,trace\n2020-01-04,2\n";
    expect(millimetres(text)).toEqual([0, 0, 0, 2]);
    const result = readRainCsv(text);
    expect(result.state === "ready" && result.report.traces).toBe(3);
  });

  it("29 February is a day in a leap year and none in another", () => {
    expect(millimetres(TEXT)).toEqual([1, 2]);
    expect(readRainCsv("date,rain_mm\n2021-02-28,1\n2021-02-29,2\n2021-03-01,0\n")).toMatchObject({
      state: "refused",
      line: 3,
    });
  });

  it("dates with a time and a zone are their own day, and eight figures are a date", () => {
    expect(millimetres("date,rain_mm\n2020-01-01T00:00:00Z,1\n2020-01-02T00:00:00Z,2\n")).toEqual([1, 2]);
    expect(millimetres("date,rain_mm\n20200101,1\n20200102,2\n")).toEqual([1, 2]);
  });

  it("an empty file is refused with a reason", () => {
    const text = readFileSync(new URL("../fixtures/rain/empty.csv", import.meta.url), "utf8");
    expect(readRainCsv(text)).toMatchObject({ state: "refused" });
  });
});
