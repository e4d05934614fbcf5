// Rain files in the shapes that people download, each written from weather of which the yearly rain is known:
// right, asked or refused, and none wrong in silence.
import { describe, expect, it } from "vitest";
import { readRainCsv, readRainFile } from "../../src/rainfall/import-csv.ts";
import type { Choices, ImportResult, Question } from "../../src/rainfall/import-result.ts";
import { tries } from "../tries.ts";
import { COLUMNS } from "./shapes/columns.ts";
import { OVERLAPPING } from "./shapes/overlapping.ts";
import type { Shape } from "./shapes/shape.ts";
import { file, stepped, two, weather, yearly } from "./shapes/weather.ts";
import { WITHIN_A_DAY } from "./shapes/within-a-day.ts";

const read = (shape: Shape, choices: Choices = {}): Promise<ImportResult> =>
  readRainFile(new Blob([shape.bytes ? new Uint8Array(shape.bytes) : shape.text]), { choices });

/** Mean rain of a year that came in [mm], over the days that have a reading. */
function meanOf(result: ImportResult): number {
  if (result.state !== "ready") throw new Error(JSON.stringify(result).slice(0, 600));
  const known = result.record.rain.filter((value) => !Number.isNaN(value));
  return (known.reduce((sum, value) => sum + value, 0) / known.length) * 365.25 * 1000;
}

const likelyOf = (questions: readonly Question[]): Choices =>
  Object.fromEntries(questions.flatMap(({ id, likely }) => (likely === null ? [] : [[id, likely]])));

/** Rounding of amounts to inches and means to days: a thousandth. */
const SHARE = 0.001;

async function comes(shape: Shape): Promise<void> {
  const result = await read(shape);
  const { comes: wanted } = shape;
  if (wanted.as === "refused") {
    expect(result).toMatchObject({ state: "refused", reason: expect.stringMatching(wanted.words) });
    return;
  }
  if (wanted.as === "right") {
    expect(Math.abs(meanOf(result) / shape.yearly - 1)).toBeLessThan(SHARE);
    return;
  }
  if (result.state !== "ask")
    throw new Error(
      `not asked: ${JSON.stringify(result).slice(0, 300)} ${result.state === "ready" ? meanOf(result) : ""} for ${shape.yearly}`,
    );
  expect(result.questions.map(({ id }) => id)).toEqual(wanted.questions);
  const answered = await read(shape, wanted.answers ?? likelyOf(result.questions));
  expect(Math.abs(meanOf(answered) / shape.yearly - 1)).toBeLessThan(SHARE);
}

describe("shapes within a day, and counters", () => {
  it.each(WITHIN_A_DAY.map((shape) => [shape.name, shape] as const))("%s", async (_, shape) => comes(shape));
});

describe("shapes of columns, units, dates and gaps", () => {
  it.each(COLUMNS.map((shape) => [shape.name, shape] as const))("%s", async (_, shape) => comes(shape));
});

describe("shapes of rain told twice, odd counters and near headers", () => {
  it.each(OVERLAPPING.map((shape) => [shape.name, shape] as const))("%s", async (_, shape) => comes(shape));
});

it("there are at least 60 shapes, each with a name of its own", () => {
  const names = [...WITHIN_A_DAY, ...COLUMNS, ...OVERLAPPING].map(({ name }) => name);
  expect(names.length).toBeGreaterThanOrEqual(60);
  expect(new Set(names).size).toBe(names.length);
});

it("amounts within a day of twenty weathers (five but for LONG=1), hourly to 12-hourly, are not taken for totals that overlap", () => {
  for (let seed = 1; seed <= tries(20); seed++) {
    const days = weather(2017, 2019, seed);
    for (const step of [1, 3, 6, 12]) {
      const rows = stepped(days, step, (date, hour, mm) => `${date} ${two(hour)}:00,${mm}`);
      const result = readRainCsv(file("time,rain (mm)", rows));
      expect(Math.abs(meanOf(result) / yearly(days) - 1)).toBeLessThan(SHARE);
    }
  }
});
