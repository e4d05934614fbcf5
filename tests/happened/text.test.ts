// What the document hands on of its notes is what the season reads.

import { expect, test } from "vitest";
import { NOTE_KINDS } from "../../src/document/note-kinds.ts";
import { happenedOf, tellingOf } from "../../src/document/telling-notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { type Happened, isHappenedWord } from "../../src/happened/happened.ts";
import { happenedText, readHappened } from "../../src/happened/text.ts";
import { isoDate, parseIsoDate } from "../../src/units/calendar.ts";

const note = (more: Partial<Note>): Note => ({
  id: "0".repeat(32),
  day: "2026-07-20",
  what: "dipped",
  where: "tank",
  ...more,
});

test("what is written is read as it was", () => {
  const happened: readonly Happened[] = [
    { date: 20_650, minute: 420, side: null, what: "gave", where: "bed", amount: 0.02, by: "can" },
    { date: 20_651, minute: null, side: "after", what: "dipped", where: "tank", amount: null, by: null },
    { date: 20_652, minute: 5, side: null, what: "dipped", where: "tank", amount: 9, by: null, asRead: true },
  ];
  expect(readHappened(happenedText(happened))).toEqual(happened);
  expect(happenedText([])).toBe("");
});

test("of a note its day, minute, side, part and means are handed on, and its amount in SI", () => {
  const gave = note({ what: "gave", where: "bed", minute: 420, value: 100, unit: "l", by: "can" });
  expect(happenedOf(gave)).toEqual({
    date: parseIsoDate("2026-07-20"),
    minute: 420,
    side: null,
    what: "gave",
    where: "bed",
    amount: 0.1,
    by: "can",
  });
  expect(happenedOf(note({ text: "after" }))?.side).toBe("after");
  expect(happenedOf(note({ text: "with the long stick" }))?.side).toBeNull();
});

test("each word that the season takes in can be noted, and of the other notes none is handed on", () => {
  const words = Object.keys(NOTE_KINDS);
  const taken = words.filter((what) => happenedOf(note({ what })) !== null);
  expect(taken).toEqual(words.filter(isHappenedWord));
  expect(taken).toEqual([
    ...["dipped", "gave", "soaked", "filled", "took", "rain", "held"],
    ...["planted", "pulled", "charged", "swapped", "broke", "mended"],
  ]);
});

test("a note tells of today for sixty days, and not before its own day", () => {
  const today = parseIsoDate("2026-07-20") as number;
  const tells = (back: number) => tellingOf([note({ day: isoDate(today - back) })], today).length === 1;
  expect([-1, 0, 60, 61].map(tells)).toEqual([false, true, true, false]);
});

test("what was planted or pulled up tells of today for a year, and no longer of which day it is", () => {
  const today = parseIsoDate("2026-07-20") as number;
  for (const what of ["planted", "pulled"]) {
    const tells = (back: number) =>
      tellingOf([note({ what, day: isoDate(today - back) })], today).length === 1;
    expect([-1, 0, 61, 365, 366].map(tells)).toEqual([false, true, true, true, false]);
  }
});
