// Notes of two files of one worksheet are joined, whichever is opened where.

import { expect, test } from "vitest";
import { joinedNotes, joinedSaid, withJoined } from "../../src/app/joined-notes.ts";
import { withNotes, withSeen } from "../../src/document/notes.ts";
import type { Note, Worksheet } from "../../src/document/worksheet.ts";
import { fixture } from "../document/made-up.ts";
import { dice } from "../sweep/dice.ts";

const d = dice(4);
const tank = fixture().cards.find(({ kind }) => kind === "tank")?.id as string;
const note = (place: number): Note => ({
  id: String(place).padStart(32, "0"),
  day: `2026-07-0${d.whole(1, 9)}`,
  minute: d.whole(0, 3),
  what: "dipped",
  where: tank,
  value: d.whole(1, 30),
  unit: "in",
});
const sheet = (notes: readonly Note[], more: Partial<Worksheet> = {}): Worksheet =>
  withNotes({ ...fixture(), id: "one", ...more }, notes);

test("over random notes of two phones either way round gives the same state, and nothing twice", () => {
  for (let round = 0; round < 200; round++) {
    const all = Array.from({ length: 12 }, (_, place) => note(round * 20 + place));
    const [one, other] = [all.filter(() => d.chance(0.6)), all.filter(() => d.chance(0.6))];
    const here = joinedNotes(sheet(one), sheet(other));
    const there = joinedNotes(sheet(other), sheet(one));
    if (!here || !there) throw new Error("not the same worksheet");
    expect(new Set(here.notes.map(({ id }) => id)).size).toBe(here.notes.length);
    expect(withSeen(sheet(here.notes), "2026-07-09").cards).toEqual(
      withSeen(sheet(there.notes), "2026-07-09").cards,
    );
  }
});

test("of another worksheet, or one without a name of its own, nothing is joined", () => {
  expect(joinedNotes(sheet([]), sheet([note(1)], { id: "two" }))).toBeNull();
  const { id: _id, ...nameless } = sheet([note(1)]);
  expect(joinedNotes(nameless, nameless)).toBeNull();
});

test("a file that differs in more than its notes says so, and carries the notes of both", () => {
  const [first, second] = [note(1), note(2)];
  const joined = joinedNotes(sheet([first]), sheet([second], { title: "Changed since" }));
  if (!joined) throw new Error("not the same worksheet");
  expect([joined.isSame, joined.more]).toEqual([false, 1]);
  expect(withJoined(sheet([second]), joined).notes).toEqual([first, second]);
  expect(joinedNotes(sheet([first]), sheet([second], { made_on: "2026-07-09" }))?.isSame).toBe(true);
});

test("what came in is said", () => {
  expect(joinedSaid("b.json", 0)).toBe("All notes of b.json are here already.");
  expect(joinedSaid("b.json", 1)).toContain("1 note of b.json");
});
