import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { explain } from "../../src/graph/explain.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";

const read = readWorksheet(JSON.parse(readFileSync("templates/hillside-totes.json", "utf8")));
if (!read.ok) throw new Error("The template cannot be read.");
const { graph, worksheet, results } = workOut(read.worksheet, CARD_KINDS);
const readsOf = (id: string): readonly string[] =>
  explain(graph, worksheet, results, id, { units: "us", locale: "en-US", currency: "$" }, KIND_WORDS)
    ?.reads ?? [];

test("an answer that comes from many numbers names first those that are turned: each part's own first, not dates and details", () => {
  const reads = readsOf("season.worst_season_days_short");
  expect(reads.length).toBeGreaterThan(100);
  expect(new Set(reads).size).toBe(reads.length);
  const rowOf = (id: string) => {
    const [cardId, name] = id.split(".");
    const card = worksheet.cards.find((one) => one.id === cardId);
    return CARD_KINDS[card?.kind ?? ""]?.rows.find((row) => row.name === name);
  };
  for (const id of reads.slice(0, 6)) expect(rowOf(id), id).toMatchObject({ row: "given" });
  expect(reads.slice(0, 6)).toEqual(expect.arrayContaining(["barn_roof.footprint", "totes.capacity"]));
});

test("a tank's answer names its own numbers before those of others", () => {
  const reads = readsOf("totes.reachable");
  const others = reads.findIndex((id) => !id.startsWith("totes."));
  expect(reads.slice(0, others)).toContain("totes.capacity");
  expect(others).toBeGreaterThan(1);
});
