// `--not-sure` and spans in `--set`, as a person runs them.

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { NotSureReport } from "../../src/cli/not-sure-report.ts";
import { setValue } from "../../src/cli/set-value.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { toSi } from "../../src/units/unit.ts";
import { tries } from "../tries.ts";
import { run } from "./run.ts";

const barrel = fileURLToPath(new URL("../../templates/one-barrel.json", import.meta.url));
const WORST = "season.worst_season_days_short";
const SPAN = "shed_roof.footprint=130 to 390 ft2";

/** Seasons over which each run goes. */
const SEASONS = tries(20, 5);
const FEW = ["--set", `weather.years=${SEASONS}`];

const json = async (...words: string[]): Promise<NotSureReport> =>
  JSON.parse((await run(barrel, "--not-sure", "--json", ...FEW, ...words)).stdout);

describe("--not-sure", () => {
  test("gives every answer that a doubt reaches its ends, runs and shares, all in SI", async () => {
    const { spans, doubts, doubts_held } = await json("--set", SPAN);
    expect(Object.keys(spans)).toContain(WORST);
    expect(Object.keys(spans)).not.toContain("cost.total");
    for (const [id, { low, high, runs, most_from }] of Object.entries(spans)) {
      expect(low, id).toBeLessThanOrEqual(high);
      expect(runs, id).toBe(128);
      const shares = most_from.map(({ share }) => share);
      expect(shares, id).toEqual([...shares].sort((a, b) => b - a));
      expect(
        shares.reduce((sum, share) => sum + share, 0),
        id,
      ).toBeLessThanOrEqual(1 + 1e-9);
      for (const { name } of most_from)
        expect(
          doubts.map((doubt) => doubt.name),
          id,
        ).toContain(name);
    }
    expect(doubts[0]).toMatchObject({ name: "shed_roof.footprint", from: "said", with: [] });
    expect(doubts[0]?.low).toBeCloseTo(toSi(130, "ft2"), 9);
    expect(doubts[0]?.high).toBeCloseTo(toSi(390, "ft2"), 9);
    expect(doubts_held).toEqual([]);
  });

  test("G1: says the same each time, and only what is asked", async () => {
    const words = ["--set", SPAN, "--answer", WORST, "--runs", "32"];
    const [one, other] = [await json(...words), await json(...words)];
    expect(one.spans).toEqual(other.spans);
    expect(Object.keys(one.spans)).toEqual([WORST]);
    expect(one.spans[WORST]?.runs).toBe(32);
  });

  test("reads as text", async () => {
    const { stdout } = await run(barrel, "--not-sure", ...FEW, "--answer", WORST);
    expect(stdout).toContain(`4 numbers are not sure: 128 runs, each over the same ${SEASONS} seasons`);
    expect(stdout).toMatch(/Short days, worst season: \d+ to \d+\n/);
  });

  test("refuses what it cannot mean", async () => {
    expect((await run(barrel, "--runs", "64")).status).toBe(2);
    expect((await run(barrel, "--not-sure", "--runs", "3")).status).toBe(2);
    expect((await run(barrel, "--not-sure", "--answer", "shed.toads")).status).toBe(2);
    expect((await run(barrel, "--answer", WORST)).status).toBe(2);
    expect((await run(barrel, "--set", "shed_roof.footprint=130 to toad")).stderr).toContain("130 to toad");
  });
});

test("--set keeps the ends of a span as they were typed, their middle as the value", () => {
  const read = worksheetFromFileText(readFileSync(barrel, "utf8"), recordKey);
  if (!read.ok) throw new Error("not read");
  const set = setValue(read.worksheet, CARD_KINDS, "shed_roof.footprint", "260 ft2 give or take 50 %");
  const entry = set.cards.find(({ id }) => id === "shed_roof")?.givens["footprint"];
  expect(entry).toEqual({ value: 260, unit: "ft2", low: 130, high: 390 });
  const sure = setValue(set, CARD_KINDS, "shed_roof.footprint", "200 ft2");
  expect(sure.cards.find(({ id }) => id === "shed_roof")?.givens["footprint"]).toEqual({
    value: 200,
    unit: "ft2",
  });
});
