import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { laidAnew, laidOut } from "../../src/app/beginning.ts";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { asked, questionsOf } from "../../src/kinds/asking.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { counting, FIRST_WISH, type Wish } from "../../src/kinds/lay-out.ts";
import { STARTS } from "../../src/kinds/starts.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { tries } from "../tries.ts";

const wishes: fc.Arbitrary<Wish> = fc
  .record({
    roofs: fc.nat(3),
    tanks: fc.nat(3),
    joined: fc.boolean(),
    hoses: fc.nat(2),
    small: fc.nat(2),
    pumps: fc.nat(1),
    batteries: fc.nat(1),
    panels: fc.nat(2),
    cans: fc.nat(1),
    beds: fc.nat(3),
  })
  // A pump that runs on nothing is left out of the season and said so: that is another test's.
  .map((wish) => ({ ...wish, batteries: wish.pumps > 0 && wish.panels === 0 ? 1 : wish.batteries }))
  .map((wish) => counting(wish, "hoses", wish.hoses));

/** The homestead on paper. */
const PAPER: Wish = {
  ...FIRST_WISH,
  tanks: 3,
  hoses: 1,
  small: 1,
  pumps: 1,
  batteries: 1,
  panels: 1,
  beds: 2,
};

const laid = (wish: Wish, units: "us" | "metric" = "us"): Worksheet =>
  laidOut(STARTS, emptyWorksheet({ units }), wish);
const of = (sheet: Worksheet, kind: string) => sheet.cards.filter((card) => card.kind === kind);
const said = (sheet: Worksheet, card: string, row: string, value: number | string, unit = "") =>
  setGiven(sheet, card, row, { value, unit });

describe("a place laid out by counting", () => {
  test("whatever is counted, no row fails, no link is dead, and everything that was counted stands", () => {
    fc.assert(
      fc.property(wishes, fc.constantFrom("us" as const, "metric" as const), (wish, units) => {
        const sheet = laid(wish, units);
        expect([of(sheet, "roof").length, of(sheet, "tank").length, of(sheet, "bed").length]).toEqual([
          wish.roofs,
          (wish.joined ? Math.min(1, wish.tanks) : wish.tanks) + wish.small,
          wish.beds,
        ]);
        expect(of(sheet, "line")).toHaveLength(Math.min(wish.hoses, wish.small));
        expect(of(sheet, "battery")).toHaveLength(wish.batteries);
        // Two made-up years run the same paths as twenty.
        const { results } = workOut(said(sheet, "weather", "years", tries(20, 2), "1"), CARD_KINDS);
        expect(results.problems).toEqual([]);
        for (const card of sheet.cards)
          for (const row of CARD_KINDS[card.kind]?.rows ?? [])
            expect(["ready", "none"]).toContain(results.get(`${card.id}.${row.name}`)?.state);
      }),
      { numRuns: 20 },
    );
  });

  test("three tanks joined at the base are one card of three, filled by every roof; else three cards", () => {
    const wish: Wish = { ...FIRST_WISH, roofs: 2, tanks: 3, beds: 2 };
    const one = laid(wish);
    expect(of(one, "tank").map(({ title, givens }) => [title, givens["count"]?.value])).toEqual([
      ["Tanks at the roof", 3],
    ]);
    const drains = one.cards.flatMap(({ givens }) => givens["drains_to"]?.value ?? []);
    expect(drains).toEqual(["tanks_at_the_roof", "tanks_at_the_roof"]);
    expect(of(laid({ ...wish, joined: false }), "tank").map(({ givens }) => givens["count"])).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  test("a hose downhill brings the tank it ends in and the one it begins at; without them it goes", () => {
    const none = { ...FIRST_WISH, tanks: 0 };
    const hose = counting(none, "hoses", 2);
    expect([hose.tanks, hose.small, hose.hoses]).toEqual([1, 2, 2]);
    expect(counting(hose, "small", 1).hoses).toBe(1);
    expect(counting(hose, "tanks", 0).hoses).toBe(0);
  });

  test("a pump that runs on nothing is laid out as counted, and left out of the season with the reason", () => {
    const { results } = workOut(laid({ ...FIRST_WISH, pumps: 1 }), CARD_KINDS);
    expect(results.problems.map(({ text }) => text)).toContain(
      "Left out of the season: its pump runs on no battery and no panel.",
    );
  });

  test("no bucket is made up: what nobody timed is by the pump's label", () => {
    const sheet = laid({ ...FIRST_WISH, pumps: 1, batteries: 1 });
    const [delivery] = of(sheet, "delivery");
    expect(Object.keys(delivery?.givens ?? {}).filter((name) => name.startsWith("bucket"))).toEqual([]);
    const { results } = workOut(sheet, CARD_KINDS);
    expect(results.get("pump.believed_by")).toMatchObject({ value: "label" });
    expect(results.get("pump_and_hose.flow")).toMatchObject({ state: "ready" });
  });

  test("laid out anew from other counts, what was said of a part that still stands stays said", () => {
    const sheet = said(said(laid(PAPER), "roof", "length", 30, "ft"), "bed_2", "length", 50, "ft");
    const anew = laidAnew(STARTS, sheet, { ...PAPER, beds: 1, tanks: 1 });
    expect(anew.cards.find(({ id }) => id === "roof")?.givens["length"]?.value).toBe(30);
    expect(of(anew, "bed")).toHaveLength(1);
    expect(of(anew, "tank")[0]?.givens["count"]).toBeUndefined();
    expect(laidAnew(STARTS, sheet, PAPER)).toEqual(sheet);
  });

  test("a tank that is counted again is called otherwise, and keeps what was said of it", () => {
    const one = said(laid({ ...PAPER, tanks: 1 }), "tank_at_the_roof", "capacity", 275, "gal");
    const [three] = of(laidAnew(STARTS, one, PAPER), "tank");
    expect(three?.id).toBe("tanks_at_the_roof");
    expect(three?.givens["capacity"]?.value).toBe(275);
    expect(of(laidAnew(STARTS, one, PAPER), "tank")[1]?.givens["capacity"]).toEqual(
      of(one, "tank")[1]?.givens["capacity"],
    );
  });
});

describe("what only the grower knows", () => {
  test("is asked the way the water runs, twelve numbers for the homestead on paper, then what grows and where it is", () => {
    const questions = questionsOf(STARTS, laid(PAPER).cards);
    expect(questions.map(({ id }) => id)).toEqual([
      "roof.footprint",
      "tanks_at_the_roof.capacity",
      "tanks_at_the_roof.stand_height",
      "tanks_at_the_roof.ground_height",
      "hose_downhill.length",
      "tank_at_the_beds.capacity",
      "tank_at_the_beds.water_height",
      "pump.open_flow",
      "pump_and_hose.hose_length",
      "battery.rated_capacity",
      "solar_panel.rated_power",
      "bed.length",
      "bed.contents",
      "bed_2.contents",
      "site.latitude",
      "weather.normal_rain",
    ]);
    expect(questions.filter(({ ask }) => ask.field && !ask.picked)).toHaveLength(12);
    expect(questions.every((question) => !question.said)).toBe(true);
  });

  test("of beds that are alike it is asked once; of those that are not, of each", () => {
    const sheet = laid(PAPER);
    const sizes = (of: Worksheet, apart?: ReadonlySet<string>) =>
      questionsOf(STARTS, of.cards, apart).filter(({ ask }) => ask.rows.includes("width"));
    expect(sizes(sheet).map(asked)).toEqual(["Two beds: how long and wide is each?"]);
    expect(sizes(sheet, new Set(["bed 70"])).map(asked)).toEqual([
      "Bed: how long and wide is it?",
      "Bed 2: how long and wide is it?",
    ]);
    const one = said(sheet, "bed", "length", 50, "ft");
    expect(sizes(one).map((question) => question.said)).toEqual([true, false]);
    const both = said(one, "bed_2", "length", 50, "ft");
    expect(sizes(both).map((question) => question.said)).toEqual([true]);
  });

  test("a tank that is sold under a name has its depth from the table, any other is asked for it", () => {
    const depths = (of: Worksheet) =>
      questionsOf(STARTS, of.cards)
        .filter(({ ask }) => ask.rows.includes("water_height"))
        .map(({ id }) => id);
    const sheet = laid(PAPER);
    expect(depths(sheet)).toEqual(["tank_at_the_beds.water_height"]);
    expect(depths(said(sheet, "tank_at_the_beds", "start_from", "drum_55"))).toEqual([]);
    expect(depths(said(sheet, "tanks_at_the_roof", "start_from", "own"))).toEqual([
      "tanks_at_the_roof.water_height",
      "tank_at_the_beds.water_height",
    ]);
  });

  test("an empty sheet is asked nothing but where it is", () => {
    expect(questionsOf(STARTS, emptyWorksheet().cards).map(({ id }) => id)).toEqual([
      "site.latitude",
      "weather.normal_rain",
    ]);
  });

  test("every row that is asked for stands on its kind, and every pick tells what its row takes", () => {
    const sheet = laid({ ...PAPER, cans: 1 });
    for (const units of ["us", "imperial", "metric"] as const)
      for (const { ask, kind, cards } of questionsOf(STARTS, sheet.cards)) {
        const rows = new Map(CARD_KINDS[kind]?.rows.map((row) => [row.name, row]));
        for (const row of [...ask.rows, ...(ask.field?.by ?? []), ...(ask.field ? [ask.field.row] : [])])
          expect(rows.has(row), `${kind}.${row}`).toBe(true);
        const [card] = cards;
        if (!card) continue;
        const known = { card, cards: sheet.cards, units, number: () => null, show: String };
        for (const pick of (ask.picks ?? []).flatMap(({ picks }) => picks(known)))
          for (const [row, entry] of Object.entries(pick.told)) {
            const of = rows.get(row);
            if (entry && of?.row === "choice")
              expect(
                of.options.map(({ word }) => word),
                `${kind}.${row}`,
              ).toContain(entry.value);
            else expect(["given", "list", "choice"], `${kind}.${row}`).toContain(of?.row);
          }
      }
  });
});
