// How doubtful each default of the tables is: its own low and high, or those of a line of the table's doubts, or why none.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  type DoubtLine,
  doubtLine,
  isAbout,
  isPair,
  type TableEntry,
  tableBounds,
} from "../../src/kinds/table-doubt.ts";

type Entry = TableEntry;
type Table = { readonly about: string; readonly doubts?: readonly DoubtLine[] };

const folder = new URL("../../shared/", import.meta.url);
const TABLES = readdirSync(folder)
  .filter((name) => name.endsWith(".json") && !name.includes("schema"))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), "utf8")) as Table] as const);

/** Everything with a status outside the doubts themselves, by its way: words of lists, else places. */
function entriesOf(node: unknown, way: readonly string[] = []): readonly (readonly [string, Entry])[] {
  if (typeof node !== "object" || node === null) return [];
  const here = "status" in node ? [[way.join("."), node as Entry] as const] : [];
  const deeper = Object.entries(node).flatMap(([name, child]) => {
    if (way.length === 0 && name === "doubts") return [];
    const word = Array.isArray(node) && typeof child === "object" && child && "word" in child;
    return entriesOf(child, [...way, word ? String((child as Entry)["word"]) : name]);
  });
  return [...here, ...deeper];
}

/** The number or numbers that an entry gives; none where it only tells. A pair with its unit is one number. */
function numbersOf(entry: Entry): readonly number[] {
  const given = entry["value"] ?? entry["values"] ?? entry["days"] ?? entry["capacity"];
  const list = Array.isArray(given) ? given : [given];
  return list.filter((each): each is number => typeof each === "number");
}

/** Low and high of one number, or why it is exact. */
function boundsOf(
  table: Table,
  way: string,
  entry: Entry,
  value: number,
): readonly [number, number] | string {
  const bounds = tableBounds(table, way, entry, value);
  if (bounds === null) throw new Error(`${way} does not say how doubtful it is.`);
  return bounds;
}

test("every table of shared is asked", () => {
  expect(TABLES.length).toBeGreaterThanOrEqual(17);
});

describe.each(TABLES)("%s", (_, table) => {
  const numbered = entriesOf(table).filter(([, entry]) => numbersOf(entry).length > 0);

  test("says of every default a low and a high about it, or why it is exact", () => {
    expect(numbered.length).toBeGreaterThan(4);
    for (const [way, entry] of numbered) {
      for (const value of numbersOf(entry)) {
        const bounds = boundsOf(table, way, entry, value);
        if (typeof bounds === "string") {
          expect(bounds.length, way).toBeGreaterThan(15);
          continue;
        }
        const slack = 1e-12 * Math.abs(value);
        expect(bounds[0], way).toBeLessThan(bounds[1]);
        expect(bounds[0] - slack, way).toBeLessThanOrEqual(value);
        expect(bounds[1] + slack, way).toBeGreaterThanOrEqual(value);
      }
    }
  });

  test("has no doubt without its source and its status, and none that no number asks for", () => {
    const asked = numbered
      .filter(([, entry]) => !Array.isArray(entry["range"]) && !isPair(entry))
      .map(([way]) => doubtLine(table, way));
    for (const doubt of table.doubts ?? []) {
      expect(asked, doubt.of.join()).toContain(doubt);
      expect(doubt.source ?? "", doubt.of.join()).not.toBe("");
      expect(["read", "read second-hand", "computed", "from memory", "assumption"]).toContain(doubt.status);
      const ways = [doubt.times, doubt.more, doubt.between, doubt.exact].filter((each) => each !== undefined);
      expect(ways.length, doubt.of.join()).toBe(1);
      for (const pattern of doubt.of)
        expect(
          numbered.some(([way]) => isAbout(way, pattern)),
          pattern,
        ).toBe(true);
    }
    if (table.doubts) expect(table.about).toContain("the low and the high");
  });
});
