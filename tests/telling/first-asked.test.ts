// The page works out first what its first answers ask for: no more, and nothing that they ask is left for later.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { buildGraph, buildPart } from "../../src/graph/build.ts";
import { evaluate, type Results } from "../../src/graph/evaluate.ts";
import { NOT_YET, shownValue } from "../../src/graph/shown.ts";
import type { Outputs } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { storedIn } from "../../src/scene/stored-water.ts";
import { isMadeUpKey } from "../../src/studies/made-up-records.ts";
import { answers } from "../../src/telling/answers.ts";
import { FRAME_ASKED, firstAsked } from "../../src/telling/first-asked.ts";

const TEMPLATES = new URL("../../templates/", import.meta.url);

const worksheetIn = (name: string): Worksheet => {
  const read = readWorksheet(JSON.parse(readFileSync(new URL(name, TEMPLATES), "utf8")));
  if (!read.ok) throw new Error(name);
  return read.worksheet;
};

const settled = { answers: new Map<string, Outputs>(), records: new Map(), elsewhere: isMadeUpKey };

const partOf = (worksheet: Worksheet) => buildPart(worksheet, CARD_KINDS, firstAsked(worksheet.cards));

/** The frame's part of a worksheet, in which nobody may work out the rest. */
function frameOf(worksheet: Worksheet) {
  const part = buildPart(worksheet, CARD_KINDS, FRAME_ASKED, true);
  const graph = (): never => {
    throw new Error("The whole was worked out for the frame.");
  };
  return { ...part, whole: part.whole && { ...part.whole, graph } };
}

const saidOf = ({ cards }: Worksheet, result: Results["get"]) => answers({ result, cards }, { alone: true });

describe.each(readdirSync(TEMPLATES))("the first answers of %s", (name) => {
  const worksheet = worksheetIn(name);
  const part = partOf(worksheet);
  const first = evaluate(part, worksheet, settled);
  const whole = evaluate(buildGraph(worksheet, CARD_KINDS), worksheet, settled);

  test("ask for nothing that is not worked out first", () => {
    const late = new Set<string>();
    const result = (id: string) => {
      if (!part.index.has(id) && part.whole?.mayHave(id)) late.add(id);
      return first.get(id);
    };
    for (const { pieces } of saidOf(worksheet, result))
      for (const piece of pieces) if (typeof piece !== "string") result(piece.quantity);
    storedIn(result);
    // On a phone the list of parts stands beside them.
    for (const { id, kind } of worksheet.cards)
      for (const row of CARD_KINDS[kind]?.rows ?? [])
        if (row.lead && !row.hidden) result(`${id}.${row.name}`);
    expect([...late]).toEqual([]);
  });

  test("say what they say once all is worked out", () => {
    expect(saidOf(worksheet, (id) => first.get(id))).toEqual(saidOf(worksheet, (id) => whole.get(id)));
    for (const { id } of part.nodes) expect(first.get(id)).toEqual(whole.get(id));
  });

  test("keep their places in the frame, which works out a quarter of it at most and nothing more as it is asked", () => {
    const frame = frameOf(worksheet);
    expect(frame.nodes.length).toBeLessThan(whole.inside.graph.nodes.length / 4);
    const results = evaluate(frame, worksheet, settled);
    const said = saidOf(worksheet, (id) => results.get(id));
    expect(said).toEqual(saidOf(worksheet, (id) => first.get(id)));
    const options = { units: worksheet.units, locale: worksheet.locale, currency: worksheet.currency };
    for (const { pieces } of said)
      for (const piece of pieces)
        if (typeof piece !== "string")
          expect(shownValue(frame, worksheet, results, piece.quantity, options)).toBe(NOT_YET);
    for (const { id } of frame.nodes) expect(results.get(id)).toEqual(whole.get(id));
  });

  test("wait for no more than two thirds of it", () => {
    expect(part.nodes.length).toBeLessThan((2 / 3) * whole.inside.graph.nodes.length);
  });

  test("ask the season's worker for the very run that the whole asks for", () => {
    const runs = (results: Results) => results.requests.filter(({ model }) => model === "season.run");
    expect(runs(first)).toEqual(runs(whole));
  });
});

test("a sheet whose answers are stopped says so at first, too", () => {
  const whole = worksheetIn("hillside-totes.json");
  const worksheet = { ...whole, cards: whole.cards.filter(({ id }) => id !== "weather") };
  const first = evaluate(partOf(worksheet), worksheet, settled);
  const all = evaluate(buildGraph(worksheet, CARD_KINDS), worksheet, settled);
  const said = saidOf(worksheet, (id) => first.get(id));
  expect(said[0]?.id).toBe("stopped");
  expect(said).toEqual(saidOf(worksheet, (id) => all.get(id)));
});
