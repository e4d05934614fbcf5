// The year's other moments of whole worksheets: sums of the notes, jobs of the parts that stand, steps of a hose.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { noted, withSeen } from "../../src/document/notes.ts";
import type { Note, Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { baseOf } from "../../src/studies/ask.ts";
import { toldMoments } from "../../src/studies/told-moments.ts";
import { yearMoments } from "../../src/studies/year-moments.ts";
import { parseIsoDate } from "../../src/units/calendar.ts";
import { showQuantity } from "../../src/units/show.ts";

const TODAY = "2026-07-20";

function template(name: string): Worksheet {
  const file = new URL(`../../templates/${name}.json`, import.meta.url);
  const read = worksheetFromFileText(readFileSync(file, "utf8"), recordKey);
  if (!read.ok) throw new Error("unreadable");
  return read.worksheet;
}

let last = 0;
const note = (content: Partial<Note> & Pick<Note, "what" | "where">): Note => ({
  id: `n${++last}`,
  day: TODAY,
  ...content,
});

function told(worksheet: Worksheet, notes: readonly Note[] = [], today = TODAY) {
  const { whole, known } = baseOf(withSeen(notes.reduce(noted, worksheet), today), CARD_KINDS);
  const moments = yearMoments(whole, [...known.records.values()], parseIsoDate(today) ?? 0);
  if ("failed" in moments) throw new Error(moments.failed);
  const show = (si: number, measure: Parameters<typeof showQuantity>[1]) =>
    showQuantity(si, measure, { units: "us", locale: "en-US", currency: "$", rounded: true }).replaceAll(
      "\u00a0",
      " ",
    );
  return toldMoments(whole, moments, { kinds: CARD_KINDS, words: KIND_WORDS }, show);
}

describe("before the first frost", () => {
  test("only parts that stand on the sheet have a job, each with who says so, and a note of draining ticks it", () => {
    const sheet = template("hillside-totes");
    const before = told(sheet).frost;
    const ids = new Set(sheet.cards.map(({ id }) => id));
    for (const { id, source, text } of before.lines) {
      expect(ids).toContain(id);
      expect(source).toContain("common practice, no source");
      expect(text).not.toBe("");
    }
    const kinds = new Set(sheet.cards.filter(({ kind }) => KIND_WORDS[kind]?.frost).map(({ kind }) => kind));
    expect(kinds.size).toBeGreaterThan(3);
    const hose = sheet.cards.find(({ kind }) => kind === "line")?.id ?? "";
    const drained = note({ what: "drained", where: hose, day: "2026-07-01" });
    const doneIn = (notes: readonly Note[]) =>
      told(sheet, notes)
        .frost.lines.filter(({ done }) => done !== null)
        .map(({ id }) => id);
    expect(doneIn([drained])).toEqual([hose]);
    expect(doneIn([drained, note({ what: "undid", where: hose, undoes: drained.id })])).toEqual([]);
    // Of the winter before it tells nothing of this one.
    expect(doneIn([note({ what: "drained", where: hose, day: "2025-10-20" })])).toEqual([]);
  });

  test("made-up weather names about a day, the grower's own day goes before it", () => {
    const sheet = template("hillside-totes");
    expect(told(sheet).frost.by).toMatch(/^By about [A-Z][a-z]+ \d+, in made-up weather/);
    const cards = sheet.cards.map((card) =>
      card.id === "weather"
        ? { ...card, givens: { ...card.givens, frost_said: { value: "10-09", unit: "" } } }
        : card,
    );
    expect(told({ ...sheet, cards }).frost.by).toBe("By Oct 9, the first frost as you know it.");
  });
});

describe("this year against what was expected", () => {
  test("sums what was noted of each part in the season, with the days, and says what is missing", () => {
    const sheet = template("hillside-totes");
    const [first, second] = sheet.cards.filter(({ kind }) => kind === "bed");
    if (!first || !second) throw new Error("two beds");
    const notes = [
      note({ what: "gave", where: first.id, value: 20, unit: "gal", day: "2026-06-01" }),
      note({ what: "gave", where: first.id, value: 10, unit: "gal", day: "2026-06-01" }),
      note({ what: "gave", where: first.id, value: 15, unit: "gal", day: "2026-06-03" }),
      // Before the season, and after today.
      note({ what: "gave", where: first.id, value: 500, unit: "gal", day: "2026-01-03" }),
      note({ what: "gave", where: first.id, value: 500, unit: "gal", day: "2026-08-03" }),
      note({ what: "dug", where: second.id, text: "dry", day: "2026-06-05" }),
      note({ what: "dug", where: second.id, text: "moist", day: "2026-06-06" }),
      note({ what: "rain", where: "site", value: 0.5, unit: "in", day: "2026-06-07" }),
      note({ what: "rain", where: "site", value: 0.25, unit: "in", day: "2026-06-09" }),
    ];
    const year = told(sheet, notes).thisYear;
    const row = (what: string) => year?.rows.find((one) => one.what === what);
    expect(row(first.title)?.noted).toBe("45 gal, noted on 2 days");
    expect(row(second.title)?.noted).toBe("dug dry on 1 day");
    expect(row("Rain in the gauge")?.noted).toBe("0.75 in, read on 2 days");
    expect(year?.head).toContain("noted on 6 of 81 days");
    expect(year?.missing.join(" ")).toContain(`No amount of water was noted for ${second.title}.`);
    // Made-up years are no ranks.
    expect(row("Rain in the gauge")?.expected).not.toContain("of 20");
  });
});

test("a soak that a watering of that day tells is no watering more, and a dip of more than the tank holds none", () => {
  const sheet = template("hillside-totes");
  const bed = sheet.cards.find(({ kind }) => kind === "bed");
  const tank = sheet.cards.find(({ kind }) => kind === "tank");
  if (!bed || !tank) throw new Error("a bed and a tank");
  const year = told(sheet, [
    note({ what: "gave", where: bed.id, value: 20, unit: "gal", day: "2026-06-01" }),
    note({ what: "soaked", where: bed.id, value: 20, unit: "gal", day: "2026-06-01" }),
    note({ what: "soaked", where: bed.id, day: "2026-06-03" }),
    note({ what: "gave", where: bed.id, value: 5, unit: "gal", day: "2026-06-03" }),
    note({ what: "dipped", where: tank.id, value: 900, unit: "in", day: "2026-06-04" }),
    note({ what: "dipped", where: tank.id, value: 9, unit: "stones", day: "2026-06-05" }),
  ]).thisYear;
  const row = (what: string) => year?.rows.find((one) => one.what === what);
  expect(row(bed.title)?.noted).toBe("25 gal, noted on 2 days");
  expect(year?.missing.join(" ")).not.toContain("without an amount");
  expect(row(tank.title)).toBeUndefined();
  expect(year?.missing.join(" ")).toContain(`No dip was noted of`);
});

describe("filling a hose for the first time", () => {
  const withRoute = (route: readonly (readonly number[])[]) => {
    const sheet = template("hillside-totes");
    const cards = sheet.cards.map((card) =>
      card.kind === "line"
        ? { ...card, givens: { ...card.givens, route: { value: route as never, unit: "ft, ft" } } }
        : card,
    );
    return told({ ...sheet, cards }).fillings[0]?.steps.join("\n") ?? "";
  };

  test("tells what it holds: half the bore squared times pi times its length", () => {
    // 5/8 in by 58 ft or as the card has it: worked out here from the card's own numbers.
    const steps = withRoute([
      [0, 5.1],
      [58, 0.5],
    ]);
    const line = template("hillside-totes").cards.find(({ kind }) => kind === "line");
    const [bore, length] = ["bore", "length"].map((row) => Number(line?.givens[row]?.value ?? Number.NaN));
    const inches = Math.PI * ((bore ?? 0) / 2) ** 2 * (length ?? 0) * 12;
    const gallons = Number(/The hose holds ([\d.]+) gal/.exec(steps)?.[1]);
    expect(gallons).toBeCloseTo(inches / 231, 2);
    expect(steps).not.toMatch(/Shut both ends/);
  });

  test("a hump over the upper water is primed by hand, in cans, lower end first; one too high has no steps", () => {
    const steps = withRoute([
      [0, 5.1],
      [20, 12],
      [58, 0.5],
    ]);
    expect(steps).toMatch(/^Shut both ends\.\nPour water in at the top of its hump, 20 ft along/);
    expect(steps).toMatch(/, one can of [\d.]+ gal/);
    expect(steps.indexOf("lower end first")).toBeGreaterThan(steps.indexOf("close the top"));
    expect(
      withRoute([
        [0, 5.1],
        [20, 60],
        [58, 0.5],
      ]),
    ).toBe("");
  });

  test("a rise that the flow does not clear says how much would, and where the air is let out", () => {
    expect(
      withRoute([
        [0, 4],
        [20, 0.2],
        [30, 1.5],
        [58, 0.5],
      ]),
    ).toMatch(
      /At 30 ft along it climbs 1\.3 ft and falls again, and [\d.]+ gpm is too slow to take the air along: that takes [\d.]+ gpm/,
    );
  });
});
