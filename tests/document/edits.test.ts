import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyWorksheet } from "../../src/document/blank.ts";
import {
  addCard,
  changeId,
  copyCard,
  moveCard,
  removeCard,
  renameCard,
} from "../../src/document/card-edits.ts";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven, setLife, setMeasured, setPrice, setWorksheet } from "../../src/document/edits.ts";
import { commit, redo, startHistory, undo } from "../../src/document/history.ts";
import { freshId, idProblem } from "../../src/document/ids.ts";
import { LIMITS } from "../../src/document/limits.ts";
import { keepBeside, planNamed } from "../../src/document/plan-edits.ts";
import { recordNames, renameRecord } from "../../src/document/record-names.ts";
import type { Card, Worksheet } from "../../src/document/worksheet.ts";
import { anyEdit } from "./any-edit.ts";
import { fixture, isDeeplyFrozen, ROLES } from "./made-up.ts";

const gallons = (value: number) => ({ value, unit: "gal" });
const cardOf = (worksheet: Worksheet, id: string) => {
  const card = worksheet.cards.find((one) => one.id === id);
  if (!card) throw new Error(`no card ${id}`);
  return card;
};

describe("numbers", () => {
  test("a given is set, and every other card stays the same object", () => {
    const before = fixture();
    const after = setGiven(before, "blue_tank", "capacity", gallons(550));
    expect(cardOf(after, "blue_tank").givens.capacity).toEqual(gallons(550));
    for (const card of before.cards) if (card.id !== "blue_tank") expect(after.cards).toContain(card);
    expect(cardOf(before, "blue_tank").givens.capacity?.value).toBe(275);
  });

  test("a given taken out is gone; what changes nothing gives the same worksheet back", () => {
    const before = fixture();
    expect(cardOf(setGiven(before, "blue_tank", "capacity", null), "blue_tank").givens).toEqual({});
    expect(setGiven(before, "blue_tank", "capacity", { unit: "gal", from: "label", value: 275 })).toBe(
      before,
    );
    expect(setGiven(before, "blue_tank", "depth", null)).toBe(before);
    expect(setGiven(before, "nobody", "capacity", gallons(1))).toBe(before);
    expect(setMeasured(before, "blue_tank", "leak", null)).toBe(before);
    expect(setPrice(before, "blue_tank", { value: 90, unit: "$" })).toBe(before);
    expect(setWorksheet(before, { units: "us" })).toBe(before);
  });

  test("measured, price and life are set and taken out", () => {
    let sheet = setMeasured(fixture(), "blue_tank", "capacity", gallons(250));
    sheet = setLife(setPrice(sheet, "blue_tank", null), "main_line", { value: 5, unit: "year" });
    expect(cardOf(sheet, "blue_tank").measured).toEqual({ capacity: gallons(250) });
    expect("price" in cardOf(sheet, "blue_tank")).toBe(false);
    expect(cardOf(sheet, "main_line").life).toEqual({ value: 5, unit: "year" });
    expect(cardOf(setMeasured(sheet, "blue_tank", "capacity", null), "blue_tank").measured).toEqual({});
  });

  test("an entry that could not be read again is not taken in", () => {
    const before = fixture();
    expect(setGiven(before, "blue_tank", "capacity", gallons(Number.NaN))).toBe(before);
    expect(setGiven(before, "blue_tank", "note", { value: "x".repeat(LIMITS.text + 1), unit: "" })).toBe(
      before,
    );
  });

  test("a given named like a property that every object has is set and taken out like any other", () => {
    const after = setGiven(fixture(), "blue_tank", "toString", gallons(1));
    expect(cardOf(after, "blue_tank").givens.toString).toEqual(gallons(1));
    expect(cardOf(setGiven(after, "blue_tank", "toString", null), "blue_tank").givens.toString).toBe(
      Object.prototype.toString,
    );
  });

  test("the settings change and no number with them", () => {
    const after = setWorksheet(fixture(), { units: "metric", title: "x".repeat(500) });
    expect(after.units).toBe("metric");
    expect(after.title).toHaveLength(LIMITS.title);
    expect(after.cards).toBe(setWorksheet(after, { units: "us" }).cards);
  });
});

describe("cards", () => {
  test.each([
    ["Blue tank", "blue_tank_2"],
    ["Réservoir nº 3", "reservoir_no_3"],
    ["123", "tank"],
    ["site", "site_2"],
    ["measured", "measured_2"],
    ["Constructor", "constructor_2"],
    ["", "tank"],
    ["水", "tank"],
  ])("a tank called %j gets the id %s", (title, id) => {
    expect(freshId(fixture(), "tank", title)).toBe(id);
    expect(addCard(fixture(), "tank", { title }).cards.at(-1)?.id).toBe(id);
  });

  test("tanks without a title are counted, and put behind the card named", () => {
    const sheet = addCard(addCard(fixture(), "tank"), "tank", {
      after: "shed_roof",
      givens: { leak: gallons(1) },
    });
    expect(sheet.cards.map((card) => card.id).slice(2, 4)).toEqual(["shed_roof", "tank_2"]);
    expect(cardOf(sheet, "tank_2")).toMatchObject({
      title: "Tank 2",
      givens: { leak: gallons(1) },
      measured: {},
    });
  });

  test("single cards are there once: not added twice, not copied, not removed, not renamed in formulas", () => {
    const sheet = emptyWorksheet();
    expect(addCard(sheet, "site")).toBe(sheet);
    expect(copyCard(sheet, "site")).toBe(sheet);
    expect(removeCard(sheet, "site", ROLES)).toBe(sheet);
    expect(changeId(sheet, "site", "place", ROLES)).toBe(sheet);
    expect(renameCard(sheet, "site", "Our place").cards[0]?.title).toBe("Our place");
  });

  test("a worksheet takes as many cards as can be read again, no more", () => {
    let sheet = emptyWorksheet();
    for (let count = 0; count < LIMITS.cards + 5; count += 1) sheet = addCard(sheet, "tank");
    expect(sheet.cards).toHaveLength(LIMITS.cards);
    expect(copyCard(sheet, "tank")).toBe(sheet);
    expect(readWorksheet(sheet)).toMatchObject({ ok: true, notes: [] });
  });

  test("a card removed is gone from single links and from lists, in plans too; other words stay", () => {
    let sheet = setGiven(fixture(), "tunnel_bed", "watered_by", {
      value: ["blue_tank", "can", "blue_tank"],
      unit: "",
    });
    const turned = setGiven(sheet, "shed_roof", "drains_to", { value: ["blue_tank", "tub"], unit: "" });
    sheet = keepBeside(turned, sheet, "both", ROLES);
    sheet = setGiven(sheet, "tunnel_bed", "note", { value: "blue_tank", unit: "" });
    const after = removeCard(sheet, "blue_tank", ROLES);
    expect(after.cards.some((card) => card.id === "blue_tank")).toBe(false);
    expect(cardOf(after, "shed_roof").givens.drains_to).toEqual({ value: null, unit: "" });
    expect(planNamed(after, "both")?.changes[0]?.entry?.value).toEqual(["tub"]);
    expect(cardOf(after, "tunnel_bed").givens.watered_by?.value).toEqual(["can"]);
    expect(cardOf(after, "tunnel_bed").givens.note?.value).toBe("blue_tank");
    expect(cardOf(after, "spare")).toBe(cardOf(sheet, "spare"));
  });

  test("a copy stands behind its original with the same numbers and links", () => {
    const after = copyCard(fixture(), "main_line");
    const at = after.cards.findIndex((card) => card.id === "main_line");
    expect(after.cards[at + 1]).toMatchObject({
      id: "main_line_2",
      title: "Hose down the slope (copy)",
      givens: cardOf(after, "main_line").givens,
    });
  });

  test("a changed id is followed by links and by the user's formulas, and by nothing else", () => {
    const before = setGiven(fixture(), "spare", "note", { value: "about blue_tank.capacity", unit: "" });
    const after = changeId(before, "blue_tank", "big_one", ROLES);
    expect(cardOf(after, "shed_roof").givens.drains_to?.value).toBe("big_one");
    expect(cardOf(after, "main_line").givens.from?.value).toBe("big_one");
    expect(cardOf(after, "spare").givens.formula?.value).toBe("big_one.capacity - 100 gal");
    expect(cardOf(after, "spare").givens.note?.value).toBe("about blue_tank.capacity");
    expect(cardOf(after, "big_one").title).toBe("Blue tank");
    expect(cardOf(after, "tunnel_bed")).toBe(cardOf(before, "tunnel_bed"));
  });

  test.each([
    ["blue_tank", "Blue", "small letter"],
    ["blue_tank", "shed_roof", "Another card"],
    ["blue_tank", "site", "meaning of its own"],
    ["blue_tank", "prototype", "meaning of its own"],
    ["blue_tank", "__proto__", "small letter"],
    ["nobody", "x", "no card"],
    ["site", "x", "exists once"],
  ])("the id %s cannot become %s", (from, to, reason) => {
    expect(idProblem(fixture(), from, to)).toContain(reason);
    const sheet = fixture();
    expect(changeId(sheet, from, to, ROLES)).toBe(sheet);
  });

  test("an id is not changed where a formula would grow past what can be read again", () => {
    const formula = `blue_tank.capacity${" + blue_tank.capacity".repeat(90)}`;
    const sheet = setGiven(fixture(), "spare", "formula", { value: formula, unit: "" });
    expect(cardOf(sheet, "spare").givens.formula?.value).toBe(formula);
    expect(changeId(sheet, "blue_tank", `b${"_long".repeat(12)}`, ROLES)).toBe(sheet);
  });

  test("a card moves to a place, and to an end when the place is beyond it", () => {
    const ids = (sheet: Worksheet) => sheet.cards.map((card) => card.id);
    const sheet = emptyWorksheet();
    expect(ids(moveCard(sheet, "cost", 0))).toEqual(["cost", "site", "weather", "season"]);
    expect(ids(moveCard(sheet, "site", 99))).toEqual(["weather", "season", "cost", "site"]);
    expect(moveCard(sheet, "site", -4)).toBe(sheet);
  });
});

test("the records a worksheet names are found and renamed", () => {
  const key = "00112233445566778899aabbccddeeff";
  expect(recordNames(fixture())).toEqual([key]);
  expect(recordNames(renameRecord(fixture(), key, "another"))).toEqual(["another"]);
  expect(renameRecord(fixture(), "unknown", "another")).toEqual(fixture());
  expect(recordNames(emptyWorksheet())).toEqual([]);
});

describe("500 random rows of edits", () => {
  test("all undone is the very start, all redone the very end, and nothing is ever thawed or unreadable", () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 30 }), (edits) => {
        const start = fixture();
        let history = startHistory(start);
        const seen = [start];
        for (const edit of edits) {
          history = commit(history, edit(history.present), { label: "an edit" });
          if (history.present !== seen.at(-1)) seen.push(history.present);
        }
        const end = history.present;
        expect(isDeeplyFrozen(end)).toBe(true);
        const again = readWorksheet(JSON.parse(JSON.stringify(end)));
        if (!again.ok) throw new Error(JSON.stringify(again.problems));
        expect(again.notes).toEqual([]);
        // A card emptied of its title is called by its id when it is read again; all else must be the same.
        const titled = <C extends Card>(card: C): C => ({ ...card, title: card.title || card.id });
        const plans = end.plans?.map((plan) => ({ ...plan, added: plan.added.map(titled) }));
        const named = { ...end, cards: end.cards.map(titled), ...(plans && { plans }) };
        expect(again.worksheet).toEqual(named);
        for (const document of seen.toReversed()) {
          expect(history.present).toBe(document);
          history = undo(history);
        }
        expect(history.present).toBe(start);
        for (const document of seen) {
          expect(history.present).toBe(document);
          history = redo(history);
        }
        expect(history.present).toBe(end);
      }),
      { numRuns: 500 },
    );
  });
});
