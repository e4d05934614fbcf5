// What the printed table of parts has of each: its sizes first, then what is set by hand.

import { expect, test } from "vitest";
import { setGiven } from "../../../src/document/edits.ts";
import type { Worksheet } from "../../../src/document/worksheet.ts";
import { labelOf, shownValue } from "../../../src/graph/shown.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import { workOut } from "../../../src/studies/work-out.ts";
import { settings } from "../../../src/ui/page/printed.ts";
import hillside from "../../../templates/hillside-totes.json" with { type: "json" };

const OPTIONS = { units: "us", locale: "en-US", currency: "$", rounded: true } as const;
const demo = hillside as unknown as Worksheet;

function printed(worksheet: Worksheet): ReadonlyMap<string, string> {
  const { graph, results } = workOut(worksheet, CARD_KINDS);
  const asked = {
    kinds: CARD_KINDS,
    cards: worksheet.cards,
    result: (id: string) => results.get(id),
    shown: (id: string) => shownValue(graph, worksheet, results, id, OPTIONS),
    label: (id: string) => labelOf(graph, worksheet, id),
  };
  return new Map(settings(asked).map(({ id, settings: said }) => [id, said.replaceAll("\u00a0", " ")]));
}

test("a roof's ground, a tank's size and how many, a line's length and bore, a bed's sides", () => {
  const of = printed(demo);
  expect(of.get("totes")).toMatch(/^Each holds 275 gal; how many, joined at the base 2; /);
  // One is not counted.
  expect(of.get("tub")).toMatch(/^Each holds 44 gal; (?!how many)/);
  expect(of.get("hose_down")).toMatch(/^Length [\d.]+ ft; inside bore /);
  expect(of.get("barn_roof")).toMatch(/^Ground it covers /);
  expect(of.get("long_bed")).toMatch(/^Length [\d.]+ ft; width 4 ft/);
});

test("sides that a bed in pots does not show are not printed", () => {
  const potted = setGiven(demo, "long_bed", "grown_in", { value: "pots", unit: "" });
  expect(printed(potted).get("long_bed") ?? "").not.toMatch(/length|width/i);
});
