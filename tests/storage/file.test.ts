import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { worksheetToFileText } from "../../src/storage/file-text.ts";
import { packRecord, unpackRecord } from "../../src/storage/packed-record.ts";
import { fixture, fixtureText } from "../document/made-up.ts";
import { tries } from "../tries.ts";
import { madeUpRecord } from "./made-up.ts";

const withRecord = (key: string) => setGiven(fixture(), "weather", "record", { value: key, unit: "" });

function read(text: string) {
  const reading = worksheetFromFileText(text, recordKey);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading;
}

describe("a record as plain data", () => {
  const depth = fc.oneof(
    { weight: 5, arbitrary: fc.nat(3000).map((tenths) => tenths / 10 / 1000) },
    { weight: 2, arbitrary: fc.nat(3000).map((tenths) => (tenths / 10) * 0.001) },
    { weight: 2, arbitrary: fc.nat(1000).map((hundredths) => (hundredths / 100) * 0.0254) },
    { weight: 1, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  );

  test(`${tries(1000)} of any depths read back to the last bit, under the same key`, () => {
    fc.assert(
      fc.property(fc.array(depth, { minLength: 1, maxLength: 60 }), fc.boolean(), (rain, warm) => {
        const record = madeUpRecord(rain, warm);
        const back = unpackRecord(JSON.parse(JSON.stringify(packRecord(record))));
        expect(back).toEqual(record);
        expect(back && recordKey(back)).toBe(record.key);
      }),
      { numRuns: tries(1000) },
    );
  });

  test("depths of a gauge in millimetres are written as the gauge showed them", () => {
    const packed = packRecord(madeUpRecord([0, 0.0012, 0.0254, Number.NaN]));
    expect(packed.columns.rain).toEqual({ unit: "mm", days: [0, 1.2, 25.4, null] });
  });

  test("and those of a gauge in hundredths of an inch as inches, where millimetres would not be exact", () => {
    const packed = packRecord(madeUpRecord(Array.from({ length: 300 }, (_, day) => (day / 100) * 0.0254)));
    expect(packed.columns.rain?.unit).toBe("in");
    expect(packed.columns.rain?.days[125]).toBe(1.25);
  });

  const good = packRecord(madeUpRecord([0.001, 0.002], true));
  const rain = { unit: "mm", days: [1, 2] };
  test.each<[string, unknown]>([
    ["no rain", { ...good, columns: {} }],
    ["a negative depth", { ...good, columns: { rain: { unit: "mm", days: [-1] } } }],
    ["columns of unlike length", { ...good, columns: { rain, highest: { unit: "K", days: [280] } } }],
    ["a unit nobody knows", { ...good, columns: { rain: { unit: "ell", days: [1] } } }],
    ["a day that is a word", { ...good, columns: { rain: { unit: "mm", days: ["1"] } } }],
    ["no days", { ...good, columns: { rain: { unit: "mm", days: [] } } }],
    ["a first day that is none", { ...good, first_day: 1.5 }],
    ["a first day out of all time", { ...good, first_day: 1e9 }],
    ["no key", { ...good, key: "" }],
    ["a title without end", { ...good, title: "x".repeat(5000) }],
    ["a list", [good]],
  ])("%s is refused", (_what, packed) => {
    expect(unpackRecord(good)).not.toBe(null);
    expect(unpackRecord(packed)).toBe(null);
  });
});

describe("a worksheet as a file", () => {
  const record = madeUpRecord(
    Array.from({ length: 1461 }, (_, day) => (day % 5 === 0 ? (day % 37) / 1000 : 0)),
    true,
  );

  test("comes back with its record, both exactly as they were", () => {
    const sheet = withRecord(record.key);
    const reading = read(worksheetToFileText(sheet, new Map([[record.key, record]])));
    expect(reading.worksheet).toEqual(sheet);
    expect(reading.records).toEqual([record]);
    expect(reading.notes).toEqual([]);
  });

  test("holds only the records that it names, and none if none is at hand", () => {
    const text = worksheetToFileText(withRecord("elsewhere"), new Map([[record.key, record]]));
    expect(JSON.parse(text)).toEqual(withRecord("elsewhere"));
  });

  test("a plain worksheet is read as a file without records", () => {
    expect(read(fixtureText())).toMatchObject({ worksheet: fixture(), records: [], readOnly: false });
  });

  test("a record under a false key is kept under its own, and the worksheet follows", () => {
    const text = worksheetToFileText(withRecord("false"), new Map([["false", { ...record, key: "false" }]]));
    const reading = read(text);
    expect(reading.records.map((one) => one.key)).toEqual([record.key]);
    expect(reading.worksheet).toEqual(withRecord(record.key));
  });

  test("a broken record is left out and said, and the worksheet stands", () => {
    const data = { ...JSON.parse(fixtureText()), records: [{ key: "x" }] };
    expect(read(JSON.stringify(data))).toMatchObject({
      worksheet: fixture(),
      records: [],
      notes: ["Rain record 1 could not be read and was left out."],
    });
  });

  test("a real record of four years in a file", () => {
    const lines = readFileSync(new URL("../fixtures/seattle-weather.csv", import.meta.url), "utf8")
      .trim()
      .split("\n");
    const rain = lines.slice(1).map((line) => Number(line.split(",")[1]) / 1000);
    const real = madeUpRecord(rain);
    const text = worksheetToFileText(withRecord(real.key), new Map([[real.key, real]]));
    expect(read(text).records).toEqual([real]);
    expect(text.length).toBeLessThan(20_000);
  });

  test("text that is no JSON is refused with its line", () => {
    const reading = worksheetFromFileText('{"version":1,\n"cards":[}', recordKey);
    expect(reading).toMatchObject({ ok: false, problems: [{ path: "line 2, column 10" }] });
  });

  test(`${tries(3000)} files with a piece changed never throw`, () => {
    const text = worksheetToFileText(
      withRecord(record.key),
      new Map([[record.key, madeUpRecord([0.001, 0.002])]]),
    );
    const piece = fc.constantFrom("", "null", "[]", "{}", "1e999", '"', "-", "0,", "]}", "\u0000");
    const altered = fc.property(fc.nat(text.length), fc.nat(12), piece, (from, length, put) => {
      const reading = worksheetFromFileText(text.slice(0, from) + put + text.slice(from + length), recordKey);
      if (!reading.ok) expect(reading.problems[0]?.message).not.toBe("");
    });
    fc.assert(altered, { numRuns: tries(3000) });
  });
});
