// The same shapes of rain files as the import is tried on, through the command line: right, asked or refused alike.
// Its own process would take a second for each, so the options are read and the file opened as the command does.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { openRain } from "../../src/cli/rain.ts";
import { FileError } from "../../src/cli/usage.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { COLUMNS } from "../rainfall/shapes/columns.ts";
import { OVERLAPPING } from "../rainfall/shapes/overlapping.ts";
import type { Shape } from "../rainfall/shapes/shape.ts";
import { WITHIN_A_DAY } from "../rainfall/shapes/within-a-day.ts";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "rain-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

let told = "";
const hears = vi.spyOn(process.stderr, "write").mockImplementation((text) => {
  told += String(text);
  return true;
});
afterEach(() => {
  told = "";
});
afterAll(() => hears.mockRestore());

async function opened(shape: Shape, ...flags: readonly string[]): Promise<DailyRecord | FileError> {
  const path = join(folder, "rain.csv");
  writeFileSync(path, shape.bytes ?? shape.text);
  const wanted = readArguments(["worksheet.json", "--rain", path, ...flags]);
  if (!wanted?.rain) throw new Error("no rain is wanted");
  try {
    return await openRain(wanted.rain);
  } catch (problem) {
    if (problem instanceof FileError) return problem;
    throw problem;
  }
}

function meanOf(record: DailyRecord | FileError): number {
  if (record instanceof FileError) throw record;
  const known = record.rain.filter((value) => !Number.isNaN(value));
  return (known.reduce((sum, value) => sum + value, 0) / known.length) * 365.25 * 1000;
}

/** Rounding of amounts to inches and means to days: a thousandth. */
const SHARE = 0.001;

async function comes(shape: Shape): Promise<void> {
  const first = await opened(shape);
  const { comes: wanted } = shape;
  if (wanted.as === "refused") {
    expect(first).toBeInstanceOf(FileError);
    expect(first instanceof FileError && first.message).toMatch(wanted.words);
    return;
  }
  if (wanted.as === "asked") {
    expect(first).toBeInstanceOf(FileError);
    const message = first instanceof FileError ? first.message : "";
    // The question names the option that answers it.
    const [option = "none", value = ""] = wanted.flags;
    expect(message).toContain(`${option} ${/[^\w.-]/.test(value) ? `"${value}"` : value}`);
  }
  const record = wanted.as === "asked" ? await opened(shape, ...wanted.flags) : first;
  expect(Math.abs(meanOf(record) / shape.yearly - 1)).toBeLessThan(SHARE);
  expect(told).toMatch(/Mean yearly rain \d+ mm/);
  expect(told).toMatch(/wet days a year; the wettest day \d+ mm/);
}

describe("shapes of rain files on the command line", () => {
  it.each([...WITHIN_A_DAY, ...COLUMNS, ...OVERLAPPING].map((shape) => [shape.name, shape] as const))(
    "%s",
    async (_, shape) => comes(shape),
  );
});

const dailyRows = (mm: (at: number) => string) =>
  Array.from({ length: 365 }, (_, at) => {
    const date = new Date(Date.UTC(2019, 0, 1 + at)).toISOString().slice(0, 10);
    return `${date},${mm(at)}`;
  });
const asShape = (rows: readonly string[]): Shape => ({
  name: "",
  text: `date,rain (mm)\n${rows.join("\n")}\n`,
  yearly: 0,
  comes: { as: "right" },
});

describe("what the page tells, the command line tells", () => {
  it("years, gaps, days that stand twice, and that one year is few", async () => {
    const rows = dailyRows((at) => (at % 3 ? "0" : "6.5"));
    const record = await opened(asShape([...rows.slice(0, 40), ...rows.slice(50), "2019-06-01,2"]));
    expect(record).not.toBeInstanceOf(FileError);
    expect(told).toContain("2019-02-10 to 2019-02-19, 10 days");
    expect(told).toContain("1 day stood twice");
    expect(told).toContain("One year cannot tell how dry it gets");
  });

  it("a mean outside 50 to 4,000 mm is questioned, one within is not", async () => {
    for (const [mm, isQuestioned] of [
      ["0.1", true],
      ["2", false],
      ["30", true],
    ] as const) {
      told = "";
      await opened(asShape(dailyRows((at) => (at % 2 ? mm : "0"))));
      expect(told.includes("Few places have that")).toBe(isQuestioned);
    }
  });

  it("--rain-fill dry and made-up fill what is missing, and it is said", async () => {
    const rows = dailyRows((at) => (at % 4 ? "0" : "5"));
    const gappy = asShape([...rows.slice(0, 100), ...rows.slice(110)]);
    const dry = await opened(gappy, "--rain-fill", "dry");
    expect(dry instanceof FileError ? [] : [...dry.rain.slice(100, 110)]).toEqual(new Array(10).fill(0));
    const madeUp = await opened(gappy, "--rain-fill", "made-up");
    expect(madeUp instanceof FileError || madeUp.rain.some(Number.isNaN)).toBe(false);
    expect(madeUp instanceof FileError || madeUp.madeUp).toBe(true);
    expect(told).toContain("10 missing days made up after the record's own months");
  });

  it("an answer that is none is wrong usage", () => {
    expect(() => readArguments(["w.json", "--rain", "r.csv", "--rain-rows", "hourly"])).toThrow(
      /--rain-rows is/,
    );
    expect(() => readArguments(["w.json", "--rain-dates", "dmy"])).toThrow(/goes with --rain/);
  });
});
