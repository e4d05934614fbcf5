import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { withChanges } from "../../src/document/changes.ts";
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

test("what moved is listed furthest first, details and words last, with both values on one line", () => {
  const { answers, givens, unmoved } = whatMoved(before, workOut(bigger, CARD_KINDS), OPTIONS);
  expect(
    givens.map(({ id, was, now }) => [id, was, now].map((text) => text.replaceAll("\u00a0", " "))),
  ).toContainEqual(["totes.capacity", "275 gal", "500 gal"]);
  expect(unmoved).toBeGreaterThan(100);
  const numbers = answers.filter(({ wasAt }) => wasAt !== null);
  expect(answers.slice(0, 5)).toEqual(numbers.slice(0, 5));
  const minor = (id: string): boolean => {
    const [card, name] = id.split(".");
    const kind = sheet.cards.find((one) => one.id === card)?.kind ?? "";
    return CARD_KINDS[kind]?.rows.find((row) => row.name === name)?.minor === true;
  };
  const far = numbers
    .filter(({ id }) => !minor(id))
    .map(({ wasAt, nowAt }) => Math.abs((wasAt ?? 0) - (nowAt ?? 0)) / Math.max(wasAt ?? 0, nowAt ?? 0));
  expect([...far].sort((a, b) => b - a).every((one, at) => Math.abs(one - (far[at] ?? 0)) < 1e-12)).toBe(
    true,
  );
  for (const { was, now } of answers) expect(was).not.toBe(now);
});

test("where nothing changed nothing moved", () => {
  const same = whatMoved(before, workOut(sheet, CARD_KINDS), OPTIONS);
  expect([same.answers, same.givens]).toEqual([[], []]);
});
