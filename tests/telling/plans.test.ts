// What is said of plans beside the sheet.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { effective } from "../../src/document/effective.ts";
import type { Change, Worksheet } from "../../src/document/worksheet.ts";
import { type Differing, differing } from "../../src/graph/differing.ts";
import { rolesOf } from "../../src/graph/roles.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import {
  bestOf,
  comparedIn,
  comparedSaid,
  dearerSaid,
  differencesSaid,
  leftOutSaid,
  planNameSaid,
  priceSaid,
} from "../../src/telling/plans.ts";

const OPTIONS = { units: "us", locale: "en-US", currency: "$", rounded: true } as const;
const template = new URL("../../templates/hillside-totes.json", import.meta.url);
const read = readWorksheet(JSON.parse(readFileSync(template, "utf8")));
if (!read.ok) throw new Error("The demo cannot be read.");
const sheet: Worksheet = read.worksheet;
const given = (card: string, row: string, entry: Change["entry"]): Change => ({
  card,
  part: "givens",
  row,
  entry,
});

function of(changes: readonly Change[], more: { added?: Worksheet["cards"]; removed?: string[] } = {}) {
  const differs = { changes, added: more.added ?? [], removed: more.removed ?? [] };
  const planned = effective(sheet, differs, rolesOf(CARD_KINDS));
  return differing(sheet, planned, differs, CARD_KINDS, OPTIONS);
}
const said = (all: readonly Differing[], name = "") =>
  differencesSaid(all, name).map((line) => line.replaceAll("\u00a0", " "));
const named = (all: readonly Differing[]) => planNameSaid(all).replaceAll("\u00a0", " ");

describe("what differs, in the grower's own words and units", () => {
  test("a number in the unit it was typed in, a span with both ends, a word by its label, the usual one", () => {
    expect(said(of([given("totes", "capacity", { value: 2.5, unit: "m3" })]))).toEqual([
      "Two totes: each holds 2.5 m³",
    ]);
    const span = { value: 262.5, unit: "gal", low: 225, high: 300 };
    expect(said(of([given("totes", "capacity", span)]))).toEqual([
      "Two totes: each holds 225 gal to 300 gal",
    ]);
    expect(said(of([given("totes", "top", { value: "open", unit: "" })]))[0]).toMatch(/^Two totes: top /);
    expect(said(of([given("totes", "capacity", null)]))).toEqual(["Two totes: each holds as usual"]);
  });

  test("a part more, a part less, another title, a price", () => {
    const roof = sheet.cards.find(({ kind }) => kind === "roof");
    if (!roof) throw new Error("no roof");
    const added = [{ ...roof, id: "shed", title: "Shed roof" }];
    const link = given("totes", "note", { value: "shed", unit: "" });
    expect(said(of([], { added, removed: [roof.id] }))).toEqual(["with Shed roof", `without ${roof.title}`]);
    expect(named(of([link], { added }))).toMatch(/^With Shed roof/);
    const title: Change = { card: "totes", part: "title", row: "", entry: { value: "Big totes", unit: "" } };
    expect(said(of([title]))).toEqual(["Two totes called Big totes"]);
    const price: Change = { card: "totes", part: "price", row: "", entry: { value: 90, unit: "money" } };
    expect(said(of([price]))).toEqual(["Two totes: price $90"]);
  });

  test("a name says what differs in few words; under it the part is not said again", () => {
    const bigger = of([given("totes", "capacity", { value: 550, unit: "gal" })]);
    expect(named(bigger)).toBe("Two totes 550 gal");
    expect(said(bigger, planNameSaid(bigger))).toEqual([]);
    // A bare number does not say what it is of.
    const third = of([given("totes", "count", { value: 3, unit: "" })]);
    expect(said(third, planNameSaid(third))).toEqual(["how many, joined at the base 3"]);
    expect(said(bigger, "My wish")).toEqual(["Two totes: each holds 550 gal"]);
  });

  test("three differences are named, more are counted", () => {
    const rows = ["capacity", "count", "depth", "base_height"];
    const all = of(rows.map((row) => given("totes", row, { value: 3, unit: row === "count" ? "" : "ft" })));
    expect(said(all.slice(0, 3))).toHaveLength(3);
    expect(said(all).at(-1)).toBe("and 2 more");
    expect(named(all)).toMatch(/and 2 more$/);
  });
});

test("what does not count is told with its reason", () => {
  expect(leftOutSaid({ title: "Blue tank", why: "gone" })).toBe(
    "Blue tank: gone from the sheet, its changes left out",
  );
});

test("the price is said where it differs, and how much has none", () => {
  expect(dearerSaid(0, "$0", 0, null)).toBe("");
  expect(dearerSaid(0, "$0", 0, "$300")).toBe("$300 in all, the same");
  expect(dearerSaid(40, "$40", 0, "$340")).toBe("$340 in all, $40 more");
  expect(dearerSaid(-40, "$40", 1, "$260")).toBe("$260 in all, $40 less, one part not priced");
  expect(dearerSaid(0, "$0", 2, null)).toBe("2 parts not priced");
  expect(priceSaid("$300")).toBe("$300 in all");
  expect(priceSaid(null)).toBe("");
});

test("every count is compared with what it counts", () => {
  const bare = comparedIn((id) => !id.includes("share") && !id.includes("autonomy"));
  const said = (id: string, shown: string, all: number | null = null) =>
    bare.filter((one) => one.id === id).map((one) => comparedSaid(one, shown, all).replaceAll("\u00a0", " "));
  expect(said("season.worst_season_days_short", "43")).toEqual(["43 days"]);
  expect(said("season.worst_season_days_short", "1")).toEqual(["1 day"]);
  expect(said("season.seasons_short", "13", 20)).toEqual(["13 of 20"]);
  expect(said("season.days_short", "9.5")).toEqual(["9.5 days"]);
  // Whatever the sheet shows without a unit of its own says here what it counts.
  for (const one of bare) {
    const row = CARD_KINDS["season"]?.rows.find(({ name }) => `season.${name}` === one.id);
    const isCount = row?.row === "output" && row.measure === "count";
    expect([one.id, isCount]).toEqual([one.id, one.counts !== undefined || one.of !== undefined]);
  }
});

describe("the five answers", () => {
  test("are the first five that a place has", () => {
    expect(comparedIn(() => true)).toHaveLength(5);
    const draws = comparedIn((id) => ["season.longest_short_run", "season.spill"].includes(id));
    expect(draws.map(({ id }) => id)).toEqual(["season.longest_short_run", "season.spill"]);
  });

  test.each([
    ["fewest", [8, 3, 5], "less", [1]],
    ["most", [8, 3, 5], "more", [0]],
    ["what reads the same", [8, 3.0001, 3], "less", [1, 2]],
    ["none where all read the same", [3, 3, 3], "less", []],
    ["one that has none is not the best", [null, 3, 5], "less", [1]],
    ["nought", [0, -0, 5], "less", [0, 1]],
    ["none known", [null, null], "more", []],
  ] as const)("the best is marked: %s", (_what, values, better, best) => {
    const shown = values.map((value) => (value === null ? "none" : String(Math.round(value))));
    expect([...bestOf(values, shown, better)]).toEqual(best);
  });
});
