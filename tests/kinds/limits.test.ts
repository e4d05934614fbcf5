// Every number has a least and a most, so that nothing that is typed or opened makes the page hang. Limits only refuse.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import type { Results } from "../../src/graph/evaluate.ts";
import type { Row } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { type Base, baseOf, rebased } from "../../src/studies/ask.ts";
import { settleHeavy } from "../../src/studies/work-out.ts";
import { MEASURES } from "../../src/units/measures.ts";
import { tries } from "../tries.ts";
import { cautionIds, type Givens, sheetOf, workedOut } from "./made-up-sheets.ts";

type Number = { readonly id: string; readonly kind: string; readonly name: string; readonly si: string };
type Bounded = Number & { readonly min: number | undefined; readonly max: number | undefined };

const kinds = Object.values(CARD_KINDS);
const bounded = (
  kind: string,
  row: Row,
  limits: { readonly min?: number; readonly max?: number },
): Bounded[] =>
  "measure" in row && row.measure !== "text" && row.measure !== "series"
    ? [
        {
          id: `${kind}.${row.name}`,
          kind,
          name: row.name,
          si: MEASURES[row.measure].si,
          min: limits.min,
          max: limits.max,
        },
      ]
    : [];

const GIVEN = kinds.flatMap(({ kind, rows }) =>
  rows.flatMap((row) => (row.row === "given" ? bounded(kind, row, row) : [])),
);
const MEASURED = kinds.flatMap(({ kind, rows }) =>
  rows.flatMap((row) =>
    row.row !== "given" && "measurable" in row && row.measurable ? bounded(kind, row, row.measurable) : [],
  ),
);

/** Kept on the card itself; no answer but a sum of money hangs on them. */
const STORED = new Set(["price", "life"]);

const LISTS = kinds.flatMap(({ kind, rows }) =>
  rows.flatMap((row) => (row.row === "list" ? [{ id: `${kind}.${row.name}`, kind, row }] : [])),
);
/** Hostile lists of each sort. */
const WILD = {
  months: [Array(12).fill(1e300), Array(12).fill(-1e300), Array(12).fill(1e9)],
  points: [
    [
      [0, 0],
      [1, 1e300],
      [2, -1e300],
    ],
    [
      [0, 0],
      [1e300, 1],
    ],
    [
      [0, 1],
      [1, 1e9],
      [2, 1],
    ],
  ],
  contents: [[{ crop: "tomato", planted: "05-01", share: 1e300 }]],
};

const FOLDER = new URL("../../templates/", import.meta.url);
const SHEETS: readonly Worksheet[] = readdirSync(FOLDER).map((name) => {
  const read = readWorksheet(JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")));
  if (!read.ok) throw new Error(name);
  // Two made-up years run the same paths as twenty.
  return setGiven(read.worksheet, "weather", "years", { value: 2, unit: "1" });
});

/** A template with a card of that kind, and the card. */
function placeOf(kind: string): { readonly sheet: Worksheet; readonly card: string } {
  for (const sheet of SHEETS) {
    const card = sheet.cards.find((one) => one.kind === kind);
    if (card) return { sheet, card: card.id };
  }
  const sheet = sheetOf({ made: [kind, {}] });
  return { sheet: setGiven(sheet, "weather", "years", { value: 2, unit: "1" }), card: "made" };
}

/** Seconds of work, whatever else the machine does meanwhile. */
const seconds = (): number => process.cpuUsage().user / 1e6;

const withMeasured = (
  sheet: Worksheet,
  id: string,
  name: string,
  value: number,
  unit: string,
): Worksheet => ({
  ...sheet,
  cards: sheet.cards.map((card) =>
    card.id === id ? { ...card, measured: { ...card.measured, [name]: { value, unit } } } : card,
  ),
});

function changedTo(one: Bounded, value: number) {
  const { sheet, card } = placeOf(one.kind);
  const isGiven = GIVEN.includes(one);
  const changed = isGiven
    ? setGiven(sheet, card, one.name, { value, unit: one.si })
    : withMeasured(sheet, card, one.name, value, one.si);
  return { sheet, changed, card };
}

/** With the rows before a row set so that it is shown: a bad value in one that is not harms nobody. */
function showing(sheet: Worksheet, kind: string, card: string, name: string): Worksheet {
  const rows = CARD_KINDS[kind]?.rows ?? [];
  const when = rows.find((row) => row.name === name)?.when;
  const before = rows.find((row) => row.name === when?.row);
  if (!when || !before) return sheet;
  const value = when.is?.[0] ?? (before.row === "date" ? "06-01" : 2);
  const entry = before.row === "given" ? { value: Number(value), unit: "1" } : { value, unit: "" };
  return showing(setGiven(sheet, card, before.name, entry), kind, card, before.name);
}

const bases = new Map<Worksheet, Base>();

/** A template as the page has it, from which an edit is worked out. */
function baseFor(sheet: Worksheet): Base {
  const base = bases.get(sheet) ?? baseOf(sheet, CARD_KINDS);
  bases.set(sheet, base);
  return base;
}

/** What the page says before the season has been run. */
const light = (sheet: Worksheet, changed: Worksheet): Results => {
  const { worksheet, whole, known } = baseFor(sheet);
  return rebased({ worksheet, whole, known: { ...known, answers: new Map() } }, changed).whole.results;
};

/** The edited worksheet worked out whole, as the page does it, in little time; nothing pending, nothing told as a non-number. */
function soon(sheet: Worksheet, changed: Worksheet, what: string): Results {
  const { worksheet, whole, known } = baseFor(sheet);
  const before = seconds();
  const edited = rebased({ worksheet, whole, known: { ...known, answers: new Map() } }, changed);
  const results = settleHeavy(edited.whole, edited.known, () => true);
  expect(seconds() - before, what).toBeLessThan(3);
  const states = results.ids.map((id) => [id, results.get(id)?.state] as const);
  expect(
    states.filter(([, state]) => !["ready", "none", "failed"].includes(state ?? "")),
    what,
  ).toEqual([]);
  for (const { text } of results.problems) expect(text, what).not.toMatch(/NaN|undefined|Infinity/);
  return results;
}

describe("limits", () => {
  test("every number that is given or measured has a least and a most", () => {
    const without = [...GIVEN, ...MEASURED].filter(({ min, max }) => min === undefined || max === undefined);
    expect(without.map(({ id }) => id)).toEqual([]);
  });

  // Both ends of each with LONG=1; else of every other number its least, of the rest its most.
  test.each(
    [...GIVEN, ...MEASURED].filter(({ name }) => !STORED.has(name)).map((one, at) => ({ ...one, one, at })),
  )(
    "$id at its least and its most is worked out, finite and soon; beyond them it is refused by name",
    ({ one, at }) => {
      const some = ([low, high]: readonly [number, number]): readonly number[] =>
        tries(2, 1) === 2 ? [low, high] : [at % 2 === 0 ? low : high];
      for (const value of some([one.min ?? 0, one.max ?? 0])) {
        const { sheet, changed } = changedTo(one, value);
        soon(sheet, changed, `${one.id} at ${value}`);
      }
      for (const value of some([-1e300, 1e300])) {
        const { sheet, changed, card } = changedTo(one, value);
        const text = light(sheet, showing(changed, one.kind, card, one.name))
          .problems.map((problem) => `${problem.at}: ${problem.text}`)
          .join("\n");
        expect(text).toContain(`${card}.${one.name}`);
      }
    },
  );

  test.each(LISTS)("$id, however wild, is worked out finite and soon, or refused", ({ id, kind, row }) => {
    const { sheet: found, card } = placeOf(kind);
    const sheet = showing(found, kind, card, row.name);
    for (const value of WILD[row.of]) {
      const changed = setGiven(sheet, card, row.name, { value, unit: row.unit ?? "" });
      const results = soon(found, changed, id);
      expect(results.get(id.replace(kind, card))?.state, `${id} ${JSON.stringify(value)}`).toBe("failed");
    }
  });

  test.each<readonly [string, string, Givens, string]>([
    ["a valve band of 1e300 mm", "line", { valve_band: [1e300, "mm"] }, "made.valve_band"],
    ["a trough of 99,999 km", "tank", { shape: "box", length: [99_999, "km"] }, "made.length"],
  ])("%s is refused where it stands", (_, kind, givens, at) => {
    const whole = workedOut(sheetOf({ made: [kind, givens] }));
    expect(whole.results.problems.map((problem) => problem.at)).toContain(at);
    cautionIds(whole);
  });
});
