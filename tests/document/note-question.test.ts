// A note that can hardly be right is asked about; one that can is not.

import { expect, test } from "vitest";
import { askOfNote, questionsOf, uncountedDips } from "../../src/document/note-question.ts";
import { noteSaid } from "../../src/document/note-words.ts";
import { happenedOf } from "../../src/document/telling-notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import type { MeasureName } from "../../src/units/measures.ts";
import { showQuantity } from "../../src/units/show.ts";
import { fixture } from "./made-up.ts";

const GALLON = 0.003785411784;
const INCH = 0.0254;
const show = (si: number, measure: MeasureName) =>
  showQuantity(si, measure, { units: "us", locale: "en-US", currency: "$", rounded: true }).replaceAll(
    "\u00a0",
    " ",
  );

/** A tub of 24 in and 44 gal, and a pump that draws from it for a bed planted in the middle of May. */
const asking = {
  worksheet: {
    ...fixture(),
    cards: [
      { id: "tub", kind: "tank", title: "Tub", givens: {}, measured: {} },
      {
        id: "pump",
        kind: "delivery",
        title: "Pump",
        givens: { from: { value: "tub", unit: "" } },
        measured: {},
      },
      { id: "bed", kind: "bed", title: "Beans", givens: {}, measured: {} },
    ],
  },
  value: (id: string): unknown =>
    ({
      "tub.vessel": { height: 24 * INCH, volume: 44 * GALLON },
      "bed.watered_by": ["pump"],
      "bed.contents": [{ planted: "06-01" }, { planted: "05-15" }],
    })[id] ?? null,
  show,
  today: "2026-07-10",
};
const said = (what: string, where: string, more: Partial<Note> = {}): Omit<Note, "id"> => ({
  day: "2026-07-10",
  what,
  where,
  ...more,
});

test.each([
  ["a dip over the brim", said("dipped", "tub", { value: 60, unit: "in" }), "24 in; this says 60 in"],
  [
    "more than the tank holds filled in",
    said("filled", "tub", { value: 50, unit: "gal" }),
    "Tub holds 44 gal; this says 50 gal",
  ],
  ["more taken out", said("took", "tub", { value: 50, unit: "gal" }), "Tub holds 44 gal"],
  ["more given by the pump", said("gave", "bed", { value: 50, unit: "gal", by: "pump" }), "Tub holds 44 gal"],
  ["more given by nobody knows what", said("gave", "bed", { value: 50, unit: "gal" }), "Tub holds 44 gal"],
  ["a day to come", said("soaked", "bed", { day: "2026-07-11" }), "2026-07-11 is still to come"],
  ["a soak before planting", said("soaked", "bed", { day: "2026-05-14" }), "planted on 05-15"],
  [
    "a gauge in inches that was in millimeters",
    said("rain", "site", { value: 14, unit: "in" }),
    "14 in of rain",
  ],
] as const)("%s is asked about, and can be left out", (_of, note, words) => {
  const asked = askOfNote(asking, note);
  expect(asked?.question).toContain(words);
  expect(asked?.choices.at(-1)).toEqual({ label: "Leave it out", note: null });
  expect(questionsOf(asking, [{ id: "a", ...note }])[0]).toContain(note.day);
});

test.each([
  said("dipped", "tub", { value: 24, unit: "in" }),
  said("dipped", "tub", { value: 60, unit: "stones" }),
  said("dipped", "gone", { value: 60, unit: "in" }),
  said("gave", "bed", { value: 44, unit: "gal" }),
  said("gave", "bed", { value: 500, unit: "gal", by: "neighbour" }),
  said("soaked", "bed", { day: "2026-05-15" }),
  said("rain", "site", { value: 2, unit: "in" }),
  said("mulched", "bed"),
])("what can be is not asked about", (note) => {
  expect(askOfNote(asking, note)).toBeNull();
});

test("a soak after the turn of the year is of what was planted in the fall before it", () => {
  const southern = {
    ...asking,
    today: "2027-02-01",
    value: (id: string): unknown =>
      id === "bed.contents" ? [{ planted: "10-20" }, { planted: "01-10" }] : asking.value(id),
  };
  const on = (day: string) => askOfNote(southern, said("soaked", "bed", { day }))?.question ?? null;
  expect(["2026-10-20", "2026-12-20", "2027-01-08", "2027-01-14"].map(on)).toEqual([null, null, null, null]);
  expect(on("2026-10-01")).toContain("planted on 10-20");
});

test("a dip over the brim may be full, as it was read, or nothing", () => {
  const note = said("dipped", "tub", { value: 60, unit: "in" });
  const notes = askOfNote(asking, note)?.choices.map((choice) => choice.note);
  expect(notes).toEqual([{ ...note, value: 24 * INCH, unit: "m" }, { ...note, text: "as read" }, null]);
});

test("a dip that was read so is not asked about again, and stays before or after the watering", () => {
  const note = said("dipped", "tub", { value: 60, unit: "in", text: "after" });
  const read = askOfNote(asking, note)?.choices[1]?.note as Omit<Note, "id">;
  expect(read.text).toBe("after, as read");
  expect(askOfNote(asking, read)).toBeNull();
  expect(happenedOf({ id: "a", ...read })).toMatchObject({ side: "after", asRead: true });
  expect(
    uncountedDips(asking, [
      { id: "a", ...note },
      { id: "b", ...read },
    ]).map((one) => one.note.id),
  ).toEqual(["a"]);
  expect(questionsOf(asking, [{ id: "a", ...note }])[0]).toContain("not counted until");
});

test("a refill of a tank that several lines fill is asked about: which one ran", () => {
  const into = (id: string) => ({
    id,
    kind: "line",
    title: id,
    givens: { to: { value: "tub", unit: "" } },
    measured: {},
  });
  const withLines = (...ids: readonly string[]) => ({
    ...asking,
    worksheet: { ...asking.worksheet, cards: [...asking.worksheet.cards, ...ids.map(into)] },
  });
  const note = said("timed", "tub", { value: 40, unit: "gal", with: { value: 7200, unit: "s" } });
  expect(askOfNote(withLines("one"), note)).toBeNull();
  const asked = askOfNote(withLines("one", "two"), note);
  expect(asked?.question).toContain("2 lines fill Tub");
  expect(asked?.choices.map((choice) => choice.note?.by)).toEqual(["one", "two", undefined, undefined]);
  expect(askOfNote(withLines("one", "two"), { ...note, by: "two" })).toBeNull();
});

test("a note is told in a grower's words, one that nobody knows in its own", () => {
  const titleOf = (id: string) => ({ pump: "Pump" })[id] ?? id;
  const words = (what: string, more: Partial<Note>) =>
    noteSaid({ id: "", ...said(what, "bed", more) }, show, titleOf);
  expect(words("gave", { value: 40, unit: "gal", by: "pump" })).toBe("watered 40 gal, by Pump");
  expect(words("bucket", { value: 5, unit: "gal", with: { value: 75, unit: "s" } })).toContain(
    "bucket filled 5 gal in 1",
  );
  expect(words("soaked", {})).toBe("soaked through");
  expect(words("dug", { text: "dry" })).toBe("dug to see, dry");
  expect(words("mulched", { value: 3, unit: "stones" })).toBe("mulched 3 stones");
});

test("a charge of more than all of it is asked about, where it stands in a file as well", () => {
  const cards = [{ id: "battery", kind: "battery", title: "Battery", givens: {}, measured: {} }];
  const here = { ...asking, worksheet: { ...asking.worksheet, cards } };
  const charged = (value: number) => said("charged", "battery", { value, unit: "%" });
  const asked = askOfNote(here, charged(300));
  expect(asked?.question).toBe("Battery is full at 100 %; this says 300 %. Which is it?");
  expect(asked?.choices.map(({ note }) => note?.value ?? null)).toEqual([1, null]);
  expect(askOfNote(here, charged(100))).toBeNull();
  expect(questionsOf(here, [{ ...charged(300), id: "a" }])).toEqual([
    "Note of 2026-07-10, Battery: Battery is full at 100 %; this says 300 %. Which is it?",
  ]);
});
