// What reads the record day by day can be asked of another thread: the results are the same to the bit.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven } from "../../src/document/edits.ts";
import { buildGraph } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import type { Outputs, Result } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { runHeavy } from "../../src/studies/heavy.ts";
import { isMadeUpKey, madeUpRecord } from "../../src/studies/made-up-records.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { tries } from "../tries.ts";

const TEMPLATES = new URL("../../templates/", import.meta.url);

const worksheetIn = (name: string) => {
  const read = readWorksheet(JSON.parse(readFileSync(new URL(name, TEMPLATES), "utf8")));
  if (!read.ok) throw new Error(name);
  // Few made-up years run the same paths as twenty.
  return setGiven(read.worksheet, "weather", "years", { value: tries(20, 3), unit: "1" });
};

/** Results as the page gets them: not one day of the record is read where the graph is evaluated. */
function fromElsewhere(name: string) {
  const worksheet = worksheetIn(name);
  const graph = buildGraph(worksheet, CARD_KINDS);
  const answers = new Map<string, Outputs>();
  const settled = { answers, records: new Map(), elsewhere: isMadeUpKey };
  const asked: string[][] = [];
  let results = evaluate(graph, worksheet, settled);
  const first = results;
  while (results.requests.length > 0) {
    asked.push(results.requests.map(({ model }) => model));
    for (const request of results.requests) {
      const record = request.record === null ? null : madeUpRecord(request.record);
      // Through a copy, as a message between threads is.
      answers.set(request.key, runHeavy(CARD_KINDS, structuredClone(request), record));
    }
    results = evaluate(graph, worksheet, settled, results);
  }
  return { graph, first, results, asked };
}

const shownOf = (result: Result | undefined) =>
  result?.state === "failed" ? { ...result, problem: result.problem.text } : result;

describe("a record read elsewhere", () => {
  test.each(readdirSync(TEMPLATES).filter((name) => name.endsWith(".json")))(
    "%s comes to the same results",
    (name) => {
      const { graph, results } = fromElsewhere(name);
      const whole = workOut(worksheetIn(name), CARD_KINDS);
      for (const { id } of graph.nodes) {
        if (id.endsWith("()")) continue;
        expect({ id, ...shownOf(results.get(id)) }).toEqual({ id, ...shownOf(whole.results.get(id)) });
      }
    },
    120_000,
  );

  test("what needs no record is there at once, and no model is asked twice", () => {
    const { first, asked } = fromElsewhere("hillside-totes.json");
    expect(first.get("totes.full_weight")?.state).toBe("ready");
    expect(first.get("weather.mean_yearly_rain")?.state).toBe("pending");
    const models = asked.flat();
    expect(models).toContain("long_bed.demand");
    expect(models).toContain("season.run");
    expect(new Set(models).size).toBe(models.length);
  });

  test("a record that is nowhere is told where it is missed", () => {
    const worksheet = worksheetIn("hillside-totes.json");
    const graph = buildGraph(worksheet, CARD_KINDS);
    const results = evaluate(graph, worksheet, {
      answers: new Map(),
      records: new Map(),
      elsewhere: () => false,
    });
    expect(results.get("weather.mean_yearly_rain")?.state).toBe("failed");
  });
});
