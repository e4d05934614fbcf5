import { expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven } from "../../src/document/edits.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { explain } from "../../src/graph/explain.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { CANARY, hostileWorksheets } from "../hostile.ts";
import { tries } from "../tries.ts";

const SEED = Number(process.env.FUZZ_SEED ?? 20_261_125);
const RUNS = tries(120, 30);
const OPTIONS = { units: "us", locale: "en-US", currency: "$" } as const;

const finite = (value: unknown): boolean =>
  typeof value === "number" ? Number.isFinite(value) : !Array.isArray(value) || value.every(finite);

/** Seconds of work, whatever else the machine does meanwhile. */
const seconds = (): number => process.cpuUsage().user / 1e6;

test(`${RUNS} hostile worksheets are refused, or worked out whole: [G5] [G6] no throw, no hang, nothing non-finite, no code run (seed ${SEED})`, () => {
  const next = hostileWorksheets(SEED);
  const seen = { refused: 0, worked: 0, failing: 0 };
  let slowest = 0;
  for (let run = 0; run < RUNS; run++) {
    const data = next();
    const read = readWorksheet(data);
    if (!read.ok) {
      seen.refused += 1;
      if (!read.problems[0]?.message) expect.unreachable(`refused for no reason: ${JSON.stringify(data)}`);
      continue;
    }
    seen.worked += 1;
    // Two made-up years run the same paths as twenty.
    const short = setGiven(read.worksheet, "weather", "years", { value: 2, unit: "1" });
    const before = seconds();
    const { graph, worksheet, results } = workOut(short, CARD_KINDS);
    cautionsOf(graph, worksheet, results, OPTIONS, KIND_WORDS);
    slowest = Math.max(slowest, seconds() - before);
    if (results.problems.length > 0) seen.failing += 1;
    for (const { text } of results.problems) expect(text).not.toBe("");
    const wrong = results.ids.filter((id) => {
      const result = results.get(id);
      return result?.state === "ready"
        ? !finite(result.value)
        : result?.state !== "none" && result?.state !== "failed";
    });
    if (wrong.length > 0) expect(wrong, JSON.stringify(data)).toEqual([]);
    for (const id of results.ids.filter((_, at) => at % 40 === run % 40))
      explain(graph, worksheet, results, id, OPTIONS, KIND_WORDS);
  }
  expect(Object.hasOwn(globalThis, CANARY)).toBe(false);
  // What is made must reach all three ends, else the test says little.
  expect(Math.min(seen.refused, seen.worked, seen.failing)).toBeGreaterThan(RUNS / 20);
  expect(slowest).toBeLessThan(1);
});
