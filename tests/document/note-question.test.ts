// A note that can hardly be right is asked about; one that can is not.

import { describe, expect, test } from "vitest";
import { askOfNote, questionsOf, uncountedDips } from "../../src/document/note-question.ts";
import { noteSaid } from "../../src/document/note-words.ts";
import { happenedOf } from "../../src/document/telling-notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { heldAtDepth } from "../../src/scene/dip-level.ts";
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
      "tub.vessel": { form: "upright", height: 24 * INCH, volume: 44 * GALLON },
      "bed.watered_by": ["pump"],
      "bed.contents": [{ planted: "06-01" }, { planted: "05-15" }],
    })[id] ?? null,
  show,
  today: "2026-07-10",
  now: 20 * 60,
  held: heldAtDepth,
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

describe("a watering out of a tub that was dipped the same day", () => {
  const dip = (inches: number, minute: number): Note => ({
    id: "dip",
    ...said("dipped", "tub", { value: inches, unit: "in", minute }),
  });
  const hose = {
    id: "hose",
    kind: "line",
    title: "Hose",
    givens: { to: { value: "tub", unit: "" } },
    measured: {},
  };
  /** A hose that brings so much an hour, if any. */
  const noted = (notes: readonly Note[], anHour = 0) => ({
    ...asking,
    worksheet: {
      ...asking.worksheet,
      notes,
      cards: [...asking.worksheet.cards, ...(anHour > 0 ? [hose] : [])],
    },
    value: (id: string): unknown => (id === "hose.flow" ? (anHour * GALLON) / 3600 : asking.value(id)),
  });
  const gave = (gallons: number, more: Partial<Note> = {}) =>
    said("gave", "bed", { value: gallons, unit: "gal", by: "pump", minute: 7 * 60 + 10, ...more });

  test("is asked about where it takes more than was in it, also where the sheet offers so much", () => {
    // 44 gal in 24 in: 5 gal at 2.75 in, with an inch for the reading 6.9 gal.
    for (const sure of [true, false]) {
      const asked = askOfNote(noted([dip(2.75, 7 * 60)]), gave(40), { sure });
      expect(asked?.question).toBe("Tub was dipped at 2.75 in: 5.04 gal. How did 40 gal come out of it?");
      expect(asked?.choices[0]?.words).toBe("Beans, 5 gal");
      expect(asked?.choices.map(({ note }) => note?.value ?? null)).toEqual([5, 40, null]);
    }
    // Of a tub that was dry there is nothing that it could have been.
    expect(askOfNote(noted([dip(0, 7 * 60)]), gave(40))?.choices.length).toBe(2);
    expect(askOfNote(noted([dip(2.75, 7 * 60)]), gave(6))).toBeNull();
    expect(askOfNote(noted([dip(23, 7 * 60)]), gave(40))).toBeNull();
  });

  test("not where the hose can have brought it since, nor where it was poured in", () => {
    // 4 gal an hour bring 34 in eight and a half.
    const late = gave(38, { minute: 15 * 60 + 30 });
    expect(askOfNote(noted([dip(2.75, 7 * 60)]), late)).not.toBeNull();
    expect(askOfNote(noted([dip(2.75, 7 * 60)], 4), late)).toBeNull();
    const filled = { id: "filled", ...said("filled", "tub", { value: 33, unit: "gal", minute: 7 * 60 + 5 }) };
    expect(askOfNote(noted([dip(2.75, 7 * 60), filled]), gave(38))).toBeNull();
  });

  test("with all that was given since, but for the note that it sets right", () => {
    const first: Note = { id: "first", ...gave(30, { minute: 7 * 60 + 5 }) };
    const notes = [dip(20, 7 * 60), first];
    expect(askOfNote(noted(notes), gave(30))?.question).toContain("How did 30 gal come out of it?");
    expect(askOfNote(noted(notes), gave(35), { instead: "first" })).toBeNull();
  });

  test("by the dip before it, not by one after it, nor by one of another day or at no known time", () => {
    expect(askOfNote(noted([dip(2.75, 8 * 60)]), gave(40))).toBeNull();
    expect(askOfNote(noted([{ ...dip(2.75, 7 * 60), day: "2026-07-09" }]), gave(40))).toBeNull();
    const { minute: _none, ...untimed } = dip(2.75, 0);
    expect(askOfNote(noted([untimed]), gave(40))).toBeNull();
    // One of today without a time is of now.
    const { minute: _now, ...now } = gave(40);
    expect(askOfNote(noted([dip(2.75, 7 * 60)]), now)).not.toBeNull();
    expect(questionsOf(noted([dip(2.75, 7 * 60)]), [{ id: "gave", ...gave(40) }])[0]).toContain(
      "dipped at 2.75 in",
    );
  });
});
