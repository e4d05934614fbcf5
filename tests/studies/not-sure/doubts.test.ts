// What of a worksheet is not sure: said spans, defaults with the spread of their table, what is measured, what is held.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { setValue } from "../../../src/cli/set-value.ts";
import { withChanges } from "../../../src/document/changes.ts";
import type { Entry, Worksheet } from "../../../src/document/worksheet.ts";
import { numberIn } from "../../../src/graph/readers.ts";
import { KIND_DOUBTS } from "../../../src/kinds/doubts.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import { recordKey } from "../../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../../src/storage/file.ts";
import { ask, baseOf, rebased } from "../../../src/studies/ask.ts";
import { changesAt, doubtsOf, MOST_DOUBTS, sheetToDoubt } from "../../../src/studies/not-sure/doubts.ts";
import { notSure } from "../../../src/studies/not-sure/not-sure.ts";
import { toSi } from "../../../src/units/unit.ts";

const WANTED = ["season.worst_season_days_short", "season.share_met", "season.days_of_autonomy"];

function template(name: string): Worksheet {
  const path = new URL(`../../../templates/${name}.json`, import.meta.url);
  const read = worksheetFromFileText(readFileSync(path, "utf8"), recordKey);
  if (!read.ok) throw new Error(name);
  return read.worksheet;
}

const said = (worksheet: Worksheet, id: string, entry: Entry): Worksheet => {
  const [card = "", row = ""] = id.split(".");
  return withChanges(worksheet, [{ card, part: "givens", row, entry }]);
};

const taken = (worksheet: Worksheet) => doubtsOf(baseOf(worksheet, CARD_KINDS), WANTED).taken;
const find = (worksheet: Worksheet, key: string) => taken(worksheet).find((doubt) => doubt.key === key);

const three = template("three-roofs-two-tunnels");
const barrel = template("one-barrel");
const roofs = three.cards.filter(({ kind }) => kind === "roof").map(({ id }) => id);
const METAL = "roofs.materials.metal.runoff_coefficient";

describe("what is not sure", () => {
  test("a number said as a span, with its ends as typed", () => {
    const id = `${roofs[0]}.footprint`;
    const doubt = find(said(three, id, { value: 260, unit: "ft2", low: 130, high: 390 }), id);
    expect(doubt?.from).toBe("said");
    expect(doubt?.numbers[0].scale).toMatchObject({ low: 130, high: 390, unit: "ft2" });
    expect(find(said(three, id, { value: 260, unit: "ft2" }), id)).toBeUndefined();
  });

  test("a default of a table has the table's low and high, shared by all cards that take the same word", () => {
    const doubt = find(three, METAL);
    expect(doubt?.numbers.length).toBe(2);
    expect(doubt?.numbers[0].scale).toMatchObject({ low: 0.85, high: 0.97 });
    const changes = doubt ? changesAt(doubt, 0.25) : [];
    expect(changes.map(({ entry }) => entry?.value)).toEqual([0.88, 0.88]);
    expect(new Set(changes.map(({ card }) => card)).size).toBe(2);
  });

  test("a card that says its own number leaves the doubt it shared", () => {
    const metal = find(three, METAL)?.numbers[0].target.card ?? "";
    const own = said(three, `${metal}.runoff_coefficient`, { value: 0.9, unit: "1" });
    expect(find(own, METAL)?.numbers.length).toBe(1);
  });

  test("a measured number narrows at once: a dip takes the share that runs off out of doubt", () => {
    const roof = barrel.cards.find(({ kind }) => kind === "roof")?.id ?? "";
    const key = "roofs.materials.shingle.runoff_coefficient";
    expect(find(barrel, key)).toBeDefined();
    const rained = setValue(barrel, CARD_KINDS, `${roof}.dip_rain`, "0.5 in");
    const dipped = setValue(rained, CARD_KINDS, `${roof}.dip_catch`, "30 gal");
    expect(find(dipped, key)).toBeUndefined();
    const one = { value: 30, unit: "gal", low: 25, high: 35, from: "measured" } as const;
    const rough = withChanges(rained, [{ card: roof, part: "measured", row: "dip_catch", entry: one }]);
    expect(find(rough, `${roof}.dip_catch`)?.from).toBe("said");
  });

  test("what chooses the years of the record is no doubt", () => {
    expect(
      find(said(barrel, "weather.years", { value: 20, unit: "1", low: 10, high: 30 }), "weather.years"),
    ).toBeUndefined();
    expect(
      find(
        said(barrel, "weather.rain_scale", { value: 1, unit: "1", low: 0.8, high: 1.2 }),
        "weather.rain_scale",
      ),
    ).toBeDefined();
  });

  test("at most twelve at once, what was said before what a table says, the rest held", () => {
    const base = baseOf(three, CARD_KINDS);
    const all = doubtsOf(base, WANTED);
    expect(all.taken.length).toBe(MOST_DOUBTS);
    expect(all.held.length).toBeGreaterThan(0);
    const id = `${roofs[0]}.footprint`;
    const more = doubtsOf(
      baseOf(said(three, id, { value: 260, unit: "ft2", low: 250, high: 270 }), CARD_KINDS),
      WANTED,
    );
    expect(more.taken[0]?.key).toBe(id);
    expect(more.held.length).toBe(all.held.length + 1);
  });

  test("a count is tried whole, each as often as any other", () => {
    const tank = barrel.cards.find(({ kind }) => kind === "tank")?.id ?? "";
    const doubt = find(
      said(barrel, `${tank}.count`, { value: 3, unit: "1", low: 2, high: 5 }),
      `${tank}.count`,
    );
    const values = Array.from(
      { length: 400 },
      (_, at) => doubt && changesAt(doubt, (at + 0.5) / 400)[0]?.entry?.value,
    );
    for (const count of [2, 3, 4, 5]) expect(values.filter((value) => value === count).length).toBe(100);
  });

  test("a span runs in ratios where its row does", () => {
    const tank = barrel.cards.find(({ kind }) => kind === "tank")?.id ?? "";
    const id = `${tank}.capacity`;
    const doubt = find(said(barrel, id, { value: 250, unit: "gal", low: 100, high: 400 }), id);
    expect(doubt && changesAt(doubt, 0.5)[0]?.entry?.value).toBe(200);
  });

  test("G1: the sheet that the runs change has the same answers, so that one is one season", () => {
    for (const worksheet of [three, barrel]) {
      const base = baseOf(worksheet, CARD_KINDS);
      const question = notSure(base, WANTED, 16);
      const [own, written] = [ask(base, [], WANTED), ask(rebased(base, question.sheet), [], WANTED)];
      for (const id of WANTED) {
        expect(numberIn(written[id]) ?? Number.NaN, id).toBeCloseTo(numberIn(own[id]) ?? 0, 9);
      }
    }
  });
});

describe("spreads of the tables", () => {
  test("every one is of a row whose default lies within it, and of a row that is given", () => {
    let seen = 0;
    for (const [name, { spreads = {} }] of KIND_DOUBTS) {
      for (const [rowName, stated] of Object.entries(spreads)) {
        const row = CARD_KINDS[name]?.rows.find((one) => one.name === rowName);
        expect(row?.row, `${name}.${rowName}`).toBe("given");
        if (row?.row !== "given" || row.default === null || "formula" in row.default) continue;
        const picks = "by" in row.default ? Object.entries(row.default.pick) : [["", row.default] as const];
        for (const [word, [value, unit]] of picks) {
          const spread = "by" in stated ? stated.spreadOf(word) : stated.spread;
          if (!spread) continue;
          seen++;
          const slack = 1e-9 * Math.abs(toSi(value, unit));
          expect(toSi(spread.low, spread.unit), `${name}.${rowName} ${word}`).toBeLessThanOrEqual(
            toSi(value, unit) + slack,
          );
          expect(toSi(spread.high, spread.unit), `${name}.${rowName} ${word}`).toBeGreaterThanOrEqual(
            toSi(value, unit) - slack,
          );
        }
      }
    }
    expect(seen).toBeGreaterThan(40);
  });

  test("what a number is measured into is a row of the same kind that can be set", () => {
    for (const [name, { measuring = {}, spreads = {} }] of KIND_DOUBTS) {
      const rows = CARD_KINDS[name]?.rows ?? [];
      for (const [rowName, { into = [] }] of Object.entries(measuring)) {
        expect(
          rows.some((one) => one.name === rowName),
          `${name}.${rowName}`,
        ).toBe(true);
        for (const target of into) {
          const row = rows.find((one) => one.name === target);
          expect(
            row !== undefined && (row.row === "given" || ("measurable" in row && row.measurable)),
            `${name}.${target}`,
          ).toBeTruthy();
        }
      }
      expect(Object.keys({ ...measuring, ...spreads }).length).toBeGreaterThan(0);
    }
  });
});

test("writing down what is not sure leaves nothing else changed", () => {
  const doubts = doubtsOf(baseOf(three, CARD_KINDS), WANTED);
  const sheet = sheetToDoubt(three, doubts);
  expect(sheet.cards.map(({ id }) => id)).toEqual(three.cards.map(({ id }) => id));
  expect(sheetToDoubt(three, { taken: [], held: [] })).toBe(three);
});

test("an end beyond what a row may be is refused as the number itself would be", () => {
  const id = `${roofs[0]}.runoff_coefficient`;
  const over = said(three, id, { value: 0.9, unit: "1", low: 0.5, high: 1.3 });
  const result = baseOf(over, CARD_KINDS).whole.results.get(id);
  expect(result?.state).toBe("failed");
  if (result?.state === "failed") expect(result.problem).toMatchObject({ code: "limit", at: id });
});
