// Notes: appended, undone by another, united by their ids, and the only home of levels, soaks and charges.

import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { inForce, inOrder } from "../../src/document/note-order.ts";
import { contentNote, noted, notedInstead, united, withSeen } from "../../src/document/notes.ts";
import type { Note, Worksheet } from "../../src/document/worksheet.ts";
import { dice } from "../sweep/dice.ts";
import { fixture, fixtureText } from "./made-up.ts";

const TANK = "shed_tank";
let made = 0;
const note = (more: Partial<Note> = {}): Note => ({
  id: String(++made).padStart(32, "0"),
  day: "2026-07-10",
  what: "dipped",
  where: TANK,
  value: 20,
  unit: "in",
  ...more,
});
const sheet = (notes: readonly Note[]): Worksheet => {
  const { notes: _own, ...bare } = fixture();
  return notes.reduce(noted, bare);
};
const tank = (worksheet: Worksheet) => worksheet.cards.find(({ kind }) => kind === "tank");
const idOfTank = tank(fixture())?.id as string;
const dip = (more: Partial<Note> = {}) => note({ where: idOfTank, ...more });
const levelOn = (worksheet: Worksheet, clock: string) =>
  tank(withSeen(worksheet, clock))?.givens.level_today?.value;

describe("of two dips of a tank", () => {
  test("on a day the later by its time counts, one without a time being the first", () => {
    const [early, late, unknown] = [
      dip({ minute: 400, value: 10 }),
      dip({ minute: 500, value: 11 }),
      dip({ value: 12 }),
    ];
    for (const order of [
      [early, late, unknown],
      [late, unknown, early],
      [unknown, early, late],
    ])
      expect(levelOn(sheet(order), "2026-07-10")).toBe(11);
  });

  test("over any order of entry the same one counts", () => {
    const d = dice(17);
    for (let round = 0; round < 200; round++) {
      const notes = Array.from({ length: 8 }, () =>
        dip({ day: `2026-07-0${d.whole(1, 9)}`, minute: d.whole(0, 3), value: d.whole(1, 30) }),
      );
      const seen = withSeen(sheet(notes), "2026-07-10");
      expect(withSeen(sheet(d.shuffled(notes)), "2026-07-10").cards).toEqual(seen.cards);
      expect(inOrder(d.shuffled(notes))).toEqual(inOrder(notes));
    }
  });
});

describe("a note that is undone", () => {
  const first = dip({ value: 10, minute: 1 });
  const wrong = dip({ value: 30, minute: 2 });
  const undo = note({ what: "undid", where: idOfTank, undoes: wrong.id });

  test("leaves no trace in what is worked out, and stays in the list", () => {
    const undone = sheet([first, wrong, undo]);
    expect(withSeen(undone, "2026-07-10").cards).toEqual(withSeen(sheet([first]), "2026-07-10").cards);
    expect(undone.notes).toHaveLength(3);
    expect(inForce(undone.notes ?? [])).toEqual([first]);
  });

  test("counts again where undoing it is undone", () => {
    const again = note({ what: "undid", where: idOfTank, undoes: undo.id });
    expect(levelOn(sheet([first, wrong, undo, again]), "2026-07-10")).toBe(30);
  });

  test("two that undo each other hold nobody up", () => {
    const one = dip({ id: "a".repeat(32), undoes: "b".repeat(32) });
    const two = dip({ id: "b".repeat(32), undoes: "a".repeat(32) });
    expect(inForce([one, two])).toEqual([]);
  });
});

test("one that is put in the place of another of the same day undoes it", () => {
  const before = sheet([dip({ value: 10, minute: 900 })]);
  const after = notedInstead(
    before,
    contentNote({ day: "2026-07-10", what: "dipped", where: idOfTank, value: 7, unit: "in" }),
  );
  expect(levelOn(after, "2026-07-10")).toBe(7);
  expect(after.notes).toHaveLength(3);
});

describe("today", () => {
  test("is the clock's once something was noted in the last 60 days, and dips of the past say their day", () => {
    const seen = withSeen(sheet([dip({ day: "2026-07-08" })]), "2026-07-10");
    expect(seen.cards.find(({ id }) => id === "site")?.givens.today?.value).toBe("2026-07-10");
    expect(tank(seen)?.givens.dipped_on?.value).toBe("2026-07-08");
  });

  test("with nothing noted lately, or only what is still to come, the worksheet is the very same", () => {
    for (const day of ["2026-05-10", "2026-07-11"]) {
      const worksheet = sheet([dip({ day })]);
      expect(withSeen(worksheet, "2026-07-10")).toBe(worksheet);
    }
    const bare = sheet([]);
    expect(withSeen(bare, "2026-07-10")).toBe(bare);
  });

  test("what is saved never holds what was laid over it", () => {
    const worksheet = sheet([dip()]);
    withSeen(worksheet, "2026-07-10");
    expect(tank(worksheet)?.givens.level_today).toBeUndefined();
  });
});

test("two phones' notes are united by their ids, each once", () => {
  const [a, b, c] = [note(), note(), note()];
  expect(united([a, b], [b, c])).toEqual([a, b, c]);
  const own = [a, b];
  expect(united(own, [b, a])).toBe(own);
});

test("the same content has the same id, another another", () => {
  const content = { day: "2026-07-10", what: "dipped", where: TANK, value: 20, unit: "in" };
  expect(contentNote(content)).toEqual(contentNote({ ...content }));
  const ids = Array.from({ length: 2000 }, (_, value) => contentNote({ ...content, value }).id);
  expect(new Set(ids).size).toBe(2000);
  expect(ids.every((id) => /^[0-9a-f]{32}$/.test(id))).toBe(true);
});

test("a wrong note is set aside, the others and what nobody knows of stay", () => {
  const data = {
    ...JSON.parse(fixtureText()),
    notes: [note(), { ...note(), day: "yesterday" }, { ...note(), mood: "glad" }],
  };
  const reading = readWorksheet(data);
  if (!reading.ok) throw new Error("not read");
  expect(reading.worksheet.notes).toHaveLength(2);
  expect(reading.worksheet.notes?.[1]).toHaveProperty("mood", "glad");
  expect(reading.notes.join(" ")).toContain("Note 2");
  expect(reading.worksheet).toHaveProperty("set_aside");
});

describe("version 2 to 3", () => {
  const old = (site: object | null, tankGivens: object, made_on = "2026-05-01") => {
    const data = JSON.parse(fixtureText(2));
    data.made_on = made_on;
    if (site) Object.assign(data.cards[0].givens, site);
    const card = data.cards.find((one: { kind: string }) => one.kind === "tank");
    Object.assign(card.givens, tankGivens);
    const reading = readWorksheet(data);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    return reading.worksheet;
  };
  const level = { level_today: { value: 14.5, unit: "in" } };

  test("a level becomes a dip of the day that was today, and is read as it was", () => {
    const worksheet = old({ today: { value: "2026-07-10", unit: "" } }, level);
    expect(tank(worksheet)?.givens.level_today).toBeUndefined();
    expect(worksheet.notes).toMatchObject([
      { day: "2026-07-10", what: "dipped", where: idOfTank, value: 14.5, unit: "in" },
    ]);
    expect(levelOn(worksheet, "2026-07-10")).toBe(14.5);
  });

  test("without a today it is one of the day on which the sheet was made", () => {
    expect(old(null, level).notes?.[0]?.day).toBe("2026-05-01");
    const undated = old(null, level, "");
    expect([undated.notes, tank(undated)?.givens.level_today?.value]).toEqual([undefined, 14.5]);
  });

  test("twice is the same note, by its id", () => {
    expect(old(null, level).notes).toEqual(old(null, level).notes);
  });
});
