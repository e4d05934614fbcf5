import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { withChanges } from "../../src/document/changes.ts";
import { movement } from "../../src/graph/moved.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { whatMoved } from "../../src/telling/what-moved.ts";

const file = readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8");
const read = worksheetFromFileText(file, recordKey);
if (!read.ok) throw new Error("The template cannot be read.");
const sheet = read.worksheet;
const OPTIONS = { units: "us", locale: "en-US", currency: "$" } as const;

const before = workOut(sheet, CARD_KINDS);
const bigger = withChanges(sheet, [
  { card: "totes", part: "givens", row: "capacity", entry: { value: 500, unit: "gal" } },
]);

test("what the lead says stands first, in its order; of the rest the furthest first, words last", () => {
  const { answers, givens, unmoved } = whatMoved(before, workOut(bigger, CARD_KINDS), OPTIONS);
  expect(answers.slice(0, 3).map(({ id }) => id)).toEqual([
    "season.seasons_short",
    "season.worst_season_days_short",
    "season.days_of_autonomy",
  ]);
  expect(
    givens.map(({ id, was, now }) => [id, was, now].map((text) => text.replaceAll("\u00a0", " "))),
  ).toContainEqual(["totes.capacity", "275 gal", "500 gal"]);
  // The ground it stands on follows from what it holds: nobody changed it.
  expect(givens.map(({ id }) => id)).toEqual(["totes.capacity"]);
  expect(answers.map(({ id }) => id)).toContain("totes.plan_area");
  expect(unmoved).toBeGreaterThan(100);
  const rest = answers.slice(3);
  const numbers = rest.filter(({ wasAt }) => wasAt !== null);
  expect(rest.slice(0, numbers.length)).toEqual(numbers);
  const far = numbers.map(({ wasAt, nowAt }) => Math.abs((wasAt ?? 0) - (nowAt ?? 0)));
  expect(far.length).toBeGreaterThan(10);
  expect(far).toEqual([...far].sort((a, b) => b - a));
  for (const { was, now } of answers) expect(was).not.toBe(now);
});

test("where nothing changed nothing moved", () => {
  const same = whatMoved(before, workOut(sheet, CARD_KINDS), OPTIONS);
  expect([same.answers, same.givens]).toEqual([[], []]);
});

test("a price that was typed is among what was changed", () => {
  const dearer = withChanges(sheet, [
    { card: "totes", part: "price", row: "price", entry: { value: 150, unit: "money" } },
  ]);
  const { givens } = whatMoved(before, workOut(dearer, CARD_KINDS), OPTIONS);
  expect(givens.map(({ id }) => id)).toEqual(["totes.price"]);
});

test("the worst season was none where no season was short: the first of many noughts is not named", () => {
  const never = workOut(
    withChanges(sheet, [
      { card: "totes", part: "givens", row: "capacity", entry: { value: 600, unit: "gal" } },
    ]),
    CARD_KINDS,
  );
  const [DAYS, YEAR] = ["season.worst_season_days_short", "season.worst_season"];
  expect(numberIn(never.results.get(DAYS))).toBe(0);
  expect(numberIn(never.results.get(YEAR))).not.toBe(numberIn(before.results.get(YEAR)));
  for (const [from, to] of [
    [never, before],
    [before, never],
  ] as const) {
    expect(movement(to.graph, to.worksheet, from.results, to.results, YEAR, OPTIONS)).toBeNull();
    expect(movement(to.graph, to.worksheet, from.results, to.results, DAYS, OPTIONS)).not.toBeNull();
    const { answers } = whatMoved(from, to, OPTIONS);
    expect(answers.map(({ id }) => id)).toContain(DAYS);
    expect(answers.map(({ id }) => id)).not.toContain(YEAR);
  }
  // Where some season was short in both, another year is told as ever.
  const smaller = workOut(
    withChanges(sheet, [
      { card: "totes", part: "givens", row: "capacity", entry: { value: 60, unit: "gal" } },
    ]),
    CARD_KINDS,
  );
  const worst = [before, smaller].map(({ results }) => numberIn(results.get(YEAR)));
  const told = movement(smaller.graph, smaller.worksheet, before.results, smaller.results, YEAR, OPTIONS);
  expect(told).toEqual(worst[0] === worst[1] ? null : { was: String(worst[0]) });
});
