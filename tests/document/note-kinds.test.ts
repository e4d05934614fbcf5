// What can be noted, and what is wrong with a note that tells it badly.

import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { NOTE_KINDS, type NoteKind, noteProblem } from "../../src/document/note-kinds.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { MEASURES } from "../../src/units/measures.ts";
import { fixtureText } from "./made-up.ts";

const KINDS = Object.entries<NoteKind>(NOTE_KINDS);
const said = (what: string, more: Partial<Note> = {}): Omit<Note, "id"> => ({
  day: "2026-07-10",
  what,
  where: "there",
  ...more,
});

/** A note of a word with all that it wants. */
function whole(what: string, kind: NoteKind): Omit<Note, "id"> {
  return said(what, {
    ...(kind.value ? { value: 3, unit: MEASURES[kind.value].us } : {}),
    ...(kind.with ? { with: { value: 3, unit: MEASURES[kind.with].us } } : {}),
    ...(kind.words ? { text: kind.words[0] as string } : {}),
  });
}

const reading = (notes: readonly unknown[]) => {
  const read = readWorksheet({ ...JSON.parse(fixtureText()), notes });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
};
const idOf = (place: number): string => String(place + 1).padStart(32, "0");

test("every word that a kind of cards is noted by is known, and only what breaks and mends is noted of any part", () => {
  const known = KINDS.map(([what]) => what);
  const named = Object.values(CARD_KINDS).flatMap(({ noted = [] }) => noted);
  expect(named.filter((what) => !known.includes(what))).toEqual([]);
  expect(known.filter((what) => !named.includes(what))).toEqual(["broke", "mended", "undid"]);
});

test.each(KINDS)("%s with all that it wants is right, and read from a file", (what, kind) => {
  const note = whole(what, kind);
  expect(noteProblem(note)).toBeNull();
  const read = reading([{ id: idOf(0), ...note }]);
  expect(read.worksheet.notes).toEqual([{ id: idOf(0), ...note }]);
  expect(read.notes).toEqual([]);
});

describe("what is wrong is told with its place", () => {
  test.each([
    ["no depth", said("dipped"), ["value"]],
    ["a depth under the floor", said("dipped", { value: -1, unit: "in" }), ["value"]],
    ["a depth in gallons", said("dipped", { value: 9, unit: "gal" }), ["unit"]],
    ["a depth in nothing", said("dipped", { value: 9 }), ["unit"]],
    ["water in inches", said("gave", { value: 9, unit: "in" }), ["unit"]],
    ["a soak of a length", said("soaked", { value: 9, unit: "in" }), ["unit"]],
    ["a bucket without a time", said("bucket", { value: 5, unit: "gal" }), ["with", "value"]],
    [
      "a bucket timed in inches",
      said("bucket", { value: 5, unit: "gal", with: { value: 5, unit: "in" } }),
      ["with", "unit"],
    ],
    ["a finger in the ground that felt nothing", said("dug", { text: "so so" }), ["text"]],
    ["a day that never was", said("soaked", { day: "2026-02-30" }), ["day"]],
  ] as const)("%s", (_of, note, at) => {
    expect(noteProblem(note)?.at).toEqual(at);
    const read = reading([{ id: idOf(0), ...note }]);
    expect(read.worksheet.notes).toBeUndefined();
    expect(read.notes.join(" ")).toContain(`notes[0].${at.join(".")}`);
    expect(read.worksheet).toHaveProperty("set_aside");
  });

  test("a dip may say in its own words how it came about", () => {
    expect(noteProblem(said("dipped", { value: 9, unit: "in", text: "with the long stick" }))).toBeNull();
  });

  test("a word that nobody knows is kept, and told once", () => {
    const read = reading([0, 1].map((place) => ({ id: idOf(place), ...said("mulched") })));
    expect(read.worksheet.notes).toHaveLength(2);
    expect(read.notes.filter((told) => told.includes('"mulched"'))).toHaveLength(1);
  });

  test("words that every object has are words like others", () => {
    expect(noteProblem(said("toString"))).toBeNull();
    expect(reading([{ id: idOf(0), ...said("constructor") }]).worksheet.notes).toHaveLength(1);
  });
});

test("a season of many notes a day is read", () => {
  const notes = Array.from({ length: 5000 }, (_, place) => ({ id: idOf(place), ...said("soaked") }));
  expect(reading(notes).worksheet.notes).toHaveLength(5000);
});
