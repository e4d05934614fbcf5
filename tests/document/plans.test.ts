// Plans: laid over the sheet as it is now, kept, taken over, renamed, dropped.
import { describe, expect, test } from "vitest";
import { changeId, removeCard } from "../../src/document/card-edits.ts";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven, setOffer } from "../../src/document/edits.ts";
import { differences, effective, laidOver } from "../../src/document/effective.ts";
import { LIMITS } from "../../src/document/limits.ts";
import {
  addPlan,
  dropPlan,
  keepBeside,
  planNamed,
  renamePlan,
  takeOver,
} from "../../src/document/plan-edits.ts";
import type { Plan, Worksheet } from "../../src/document/worksheet.ts";
import { fixture, fixtureText, isDeeplyFrozen, ROLES } from "./made-up.ts";

const BIGGER = "Blue tank: second barrel";
const TUB = "A tub instead of the hose";
const gallons = (value: number) => ({ value, unit: "gal" });
const cardOf = (worksheet: Worksheet, id: string) => worksheet.cards.find((one) => one.id === id);
const plan = (worksheet: Worksheet, name: string): Plan => {
  const found = planNamed(worksheet, name);
  if (!found) throw new Error(`no plan ${name}`);
  return found;
};
const laid = (worksheet: Worksheet, name: string) => effective(worksheet, plan(worksheet, name), ROLES);

describe("a plan laid over the sheet", () => {
  test("changes, adds behind its neighbour and does without, and leaves every other card the same object", () => {
    const sheet = fixture();
    const bigger = laid(sheet, BIGGER);
    expect(cardOf(bigger, "blue_tank")?.givens.capacity).toEqual(gallons(330));
    for (const card of sheet.cards) if (card.id !== "blue_tank") expect(bigger.cards).toContain(card);
    const tub = laid(sheet, TUB);
    const ids = tub.cards.map(({ id }) => id);
    expect(ids).not.toContain("main_line");
    expect(ids.indexOf("tub")).toBe(ids.indexOf("blue_tank") + 1);
    expect("after" in (cardOf(tub, "tub") ?? {})).toBe(false);
    expect("price" in (cardOf(tub, "blue_tank") ?? {})).toBe(false);
    expect(tub.plans).toBeUndefined();
    expect(isDeeplyFrozen(tub)).toBe(true);
  });

  test("a correction to the sheet shows in every plan that did not change it", () => {
    const corrected = setGiven(fixture(), "shed_roof", "footprint", { value: 300, unit: "ft2" });
    for (const name of [BIGGER, TUB])
      expect(cardOf(laid(corrected, name), "shed_roof")?.givens.footprint?.value).toBe(300);
    const both = setGiven(corrected, "blue_tank", "capacity", gallons(100));
    expect(cardOf(laid(both, BIGGER), "blue_tank")?.givens.capacity).toEqual(gallons(330));
    expect(cardOf(laid(both, TUB), "blue_tank")?.givens.capacity).toEqual(gallons(100));
  });

  test("a change to a card that is gone is dropped and said, once a card; the rest of the plan counts", () => {
    const without = removeCard(fixture(), "blue_tank", ROLES);
    const { worksheet, left } = laidOver(without, plan(without, TUB), ROLES);
    expect(left).toEqual([{ card: "blue_tank", title: "Blue tank", why: "gone" }]);
    expect(cardOf(worksheet, "tub")?.givens.capacity).toEqual(gallons(40));
    expect(cardOf(worksheet, "blue_tank")).toBeUndefined();
  });

  test("a card that has come to the sheet meanwhile under the plan's id gets the plan's numbers; another kind stays", () => {
    const sheet = fixture();
    const taken = {
      ...sheet,
      cards: [...sheet.cards, { ...plan(sheet, TUB).added[0], givens: {} }],
    } as Worksheet;
    expect(cardOf(laid(taken, TUB), "tub")?.givens.capacity).toEqual(gallons(40));
    const other = {
      ...sheet,
      cards: [...sheet.cards, { ...plan(sheet, TUB).added[0], kind: "bed" }],
    } as Worksheet;
    expect(laidOver(other, plan(other, TUB), ROLES).left).toEqual([
      { card: "tub", title: "Tub", why: "another_kind" },
    ]);
  });

  test("a full worksheet takes no more cards and says so", () => {
    const sheet = fixture();
    const more = Array.from({ length: LIMITS.cards - sheet.cards.length + 1 }, (_, at) => ({
      id: `bed_${at}`,
      kind: "bed",
      title: "Bed",
      givens: {},
      measured: {},
    }));
    const full = { ...sheet, cards: [...sheet.cards, ...more] };
    expect(laidOver(full, plan(full, TUB), ROLES).left).toEqual([
      { card: "tub", title: "Tub", why: "no_room" },
    ]);
  });

  test("the rain record is the sheet's, whatever a plan says, and no difference between sheets", () => {
    const sheet = fixture();
    const record = {
      card: "weather",
      part: "givens",
      row: "record",
      entry: { value: "x", unit: "" },
    } as const;
    expect(effective(sheet, { changes: [record], added: [], removed: [] }, ROLES).cards).toEqual(sheet.cards);
    const other = setGiven(sheet, "weather", "record", record.entry);
    expect(differences(sheet, other, ROLES)).toEqual({ changes: [], added: [], removed: [] });
  });
});

describe("plans are followed and read", () => {
  test("an id that changes is followed in plans: cards, links, formulas, places, what they do without", () => {
    let sheet = changeId(fixture(), "blue_tank", "big_one", ROLES);
    sheet = changeId(sheet, "main_line", "hose", ROLES);
    const tub = plan(sheet, TUB);
    expect(tub.removed).toEqual(["hose"]);
    expect(tub.added[0]?.after).toBe("big_one");
    expect(tub.changes.map(({ card }) => card)).toEqual(["shed_roof", "spare", "big_one"]);
    expect(tub.changes[1]?.entry?.value).toBe("big_one.capacity - 50 gal");
    expect(changeId(sheet, "big_one", "tub", ROLES)).toBe(sheet);
  });

  const reading = (change: (data: { plans: Record<string, unknown>[] }) => void) => {
    const data = JSON.parse(fixtureText());
    change(data);
    return readWorksheet(data);
  };

  test.each([
    ["no name", { name: "" }, "plans[1].name"],
    [
      "a part that there is not",
      { changes: [{ card: "a", part: "colour", row: "", entry: null }] },
      "plans[1].changes[0].part",
    ],
    ["no entry", { changes: [{ card: "a", part: "givens", row: "b" }] }, "plans[1].changes[0].entry"],
    [
      "a forbidden card",
      { changes: [{ card: "__proto__", part: "givens", row: "b", entry: 1 }] },
      "plans[1].changes[0].card",
    ],
    [
      "a forbidden row",
      { changes: [{ card: "a", part: "givens", row: "constructor", entry: 1 }] },
      "plans[1].changes[0].row",
    ],
    ["a forbidden id", { added: [{ id: "prototype", kind: "tank" }] }, "plans[1].added[0].id"],
    [
      "ends the wrong way round",
      { changes: [{ card: "a", part: "givens", row: "b", entry: { value: 2, unit: "m", low: 3, high: 1 } }] },
      "plans[1].changes[0].entry",
    ],
  ])("a plan with %s is set aside, its place told, and the rest stands", (_what, wrong, path) => {
    const read = reading(({ plans }) => Object.assign(plans[1] ?? {}, wrong));
    if (!read.ok) throw new Error("not read");
    expect(read.worksheet.plans?.map(({ name }) => name)).toEqual([BIGGER]);
    expect(read.notes[0]).toContain("was set aside");
    expect(read.notes[0]).toContain(`${path}: `);
    expect((read.worksheet as unknown as { set_aside: unknown[] }).set_aside).toHaveLength(1);
  });

  test.each([
    ["one end only", { value: 1, unit: "m", low: 0.5 }, "both ends"],
    ["a word with ends", { value: "tin", unit: "", low: 1, high: 2 }, "Only a number"],
    ["a value beyond its ends", { value: 5, unit: "m", low: 1, high: 2 }, "between low and high"],
  ])("%s: the card is set aside and the reason told", (_what, entry, reason) => {
    const data = JSON.parse(fixtureText());
    data.cards[3].givens.capacity = entry;
    const read = readWorksheet(data);
    expect(read.ok && read.notes[0]).toContain("cards[3].givens.capacity: ");
    expect(read.ok && read.notes[0]).toContain(reason);
  });

  test("plans that are no list, and too many of them, are refused with their place", () => {
    expect(readWorksheet({ ...fixture(), plans: 5 })).toMatchObject({
      ok: false,
      problems: [{ path: "plans" }],
    });
  });

  test("of two plans of one name the later gets a number; a bare number for an entry is put right", () => {
    const read = reading(({ plans }) => {
      plans.push({ name: BIGGER, changes: [{ card: "blue_tank", part: "givens", row: "count", entry: 3 }] });
    });
    if (!read.ok) throw new Error("not read");
    expect(read.worksheet.plans?.[2]).toEqual({
      name: `${BIGGER} 2`,
      changes: [{ card: "blue_tank", part: "givens", row: "count", entry: { value: 3, unit: "" } }],
      added: [],
      removed: [],
    });
  });
});

describe("plans kept beside", () => {
  test("what was turned since holding becomes a plan, and the sheet is as it was held", () => {
    const held = fixture();
    const turned = setGiven(held, "blue_tank", "capacity", gallons(500));
    const kept = keepBeside(turned, held, "500 gal", ROLES);
    expect(kept.cards).toEqual(held.cards);
    expect(kept.plans).toHaveLength(3);
    expect(laid(kept, "500 gal").cards).toEqual(turned.cards);
    expect(keepBeside(held, held, "none", ROLES)).toBe(held);
    const twice = keepBeside(setGiven(kept, "blue_tank", "capacity", gallons(600)), held, "500 gal", ROLES);
    expect(twice.plans?.at(-1)?.name).toBe("500 gal 2");
  });

  test("rain that came while it was held stays", () => {
    const held = fixture();
    const record = { value: "another", unit: "" };
    const turned = setGiven(
      setGiven(held, "weather", "record", record),
      "blue_tank",
      "capacity",
      gallons(500),
    );
    const kept = keepBeside(turned, held, "500 gal", ROLES);
    expect(cardOf(kept, "weather")?.givens.record).toEqual(record);
  });

  test("taken over and back is the same sheet, and the plans beside it stay as they were", () => {
    const sheet = fixture();
    for (const name of [BIGGER, TUB]) {
      const over = takeOver(sheet, name, "as it was", ROLES);
      expect(over.cards).toEqual(laid(sheet, name).cards);
      expect(planNamed(over, name)).toBeNull();
      const back = takeOver(over, "as it was", name, ROLES);
      expect(back.cards).toEqual(sheet.cards);
      expect(laid(back, name).cards).toEqual(laid(sheet, name).cards);
      expect(back.plans?.map((one) => one.name)).toEqual([BIGGER, TUB]);
    }
  });

  test("a plan is renamed to a free name only, and dropped; the last leaves no trace", () => {
    const sheet = fixture();
    expect(renamePlan(sheet, BIGGER, TUB)).toBe(sheet);
    expect(renamePlan(sheet, BIGGER, "  ")).toBe(sheet);
    expect(renamePlan(sheet, "unknown", "x")).toBe(sheet);
    expect(renamePlan(sheet, BIGGER, " bigger ").plans?.[0]?.name).toBe("bigger");
    expect(dropPlan(sheet, "unknown")).toBe(sheet);
    const none = dropPlan(dropPlan(sheet, BIGGER), TUB);
    expect("plans" in none).toBe(false);
  });
});

describe("what could be bought", () => {
  test("a price for it stays on its card, is taken out by null, and the last one leaves nothing behind", () => {
    const sheet = fixture();
    const price = { value: 40, unit: "money" };
    const priced = setOffer(sheet, "blue_tank", "patch", price);
    expect(cardOf(priced, "blue_tank")?.offers).toEqual({
      ...cardOf(sheet, "blue_tank")?.offers,
      patch: price,
    });
    expect(isDeeplyFrozen(priced)).toBe(true);
    expect(setOffer(priced, "blue_tank", "patch", price)).toBe(priced);
    expect(setOffer(priced, "nobody", "patch", price)).toBe(priced);
    expect(setOffer(sheet, "blue_tank", "patch", null)).toBe(sheet);
    expect(cardOf(setOffer(priced, "blue_tank", "patch", null), "blue_tank")).toEqual(
      cardOf(sheet, "blue_tank"),
    );
  });

  test("changes are kept as a plan under a name of its own, and read again", () => {
    const sheet = fixture();
    const changes = [{ card: "blue_tank", part: "givens", row: "capacity", entry: gallons(900) }] as const;
    const twice = addPlan(addPlan(sheet, "A lid", changes), "A lid", changes);
    expect((twice.plans ?? []).slice(-2).map(({ name }) => name)).toEqual(["A lid", "A lid 2"]);
    expect(cardOf(laid(twice, "A lid 2"), "blue_tank")?.givens["capacity"]).toEqual(gallons(900));
    expect(readWorksheet(JSON.parse(JSON.stringify(twice))).ok).toBe(true);
  });
});
