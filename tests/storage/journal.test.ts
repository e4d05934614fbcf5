import { describe, expect, test } from "vitest";
import { takeUp } from "../../src/app/taking-up.ts";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven } from "../../src/document/edits.ts";
import { dropNote, makeJournal, notesLeft } from "../../src/storage/journal.ts";
import { makeShelf } from "../../src/storage/shelf.ts";
import { fixture } from "../document/made-up.ts";
import { countingId, instantMemory, memoryStore } from "./made-up.ts";

const gallons = (amount: number) =>
  setGiven(fixture(), "blue_tank", "capacity", { value: amount, unit: "gal" });
const note = (amount: number, more: object = {}) => ({
  id: "mine",
  basedOn: 0,
  at: amount,
  worksheet: gallons(amount),
  ...more,
});

function setUp(alive: readonly string[] = [], own: string | null = null) {
  const notes = instantMemory();
  const shelf = makeShelf(memoryStore(), countingId());
  const tab = {
    before: own === null ? null : { writer: own, sheet: "mine" },
    isGone: async ({ writer }: { readonly writer: string }) => !alive.includes(writer),
  };
  const kept = async (id: string) => {
    const opened = await shelf.open(id, 0);
    return opened.ok && opened.value.state === "opened" ? opened.value.sheet.worksheet : null;
  };
  return { notes, shelf, kept, begin: () => takeUp({ notes, shelf, tab }) };
}

describe("notes", () => {
  test("one for each page and worksheet, the newest state only, read back the same", () => {
    const notes = instantMemory();
    const [one, two] = [makeJournal(notes, "one"), makeJournal(notes, "two")];
    one.note(note(1));
    one.note(note(3));
    two.note(note(2));
    expect(notesLeft(notes, readWorksheet)).toEqual([
      { ...note(2), by: { writer: "two", step: 1 } },
      { ...note(3), by: { writer: "one", step: 2 } },
    ]);
    one.clear("mine");
    expect(notesLeft(notes, readWorksheet)).toHaveLength(1);
  });

  test("what is no note, or one of a newer version, is left alone; other things in the store are not looked at", () => {
    const notes = instantMemory();
    notes.kept.set("eavesdrip:newest:a:mine", "{");
    notes.kept.set("eavesdrip:newest:b:mine", JSON.stringify({ version: 2, ...note(1) }));
    notes.kept.set("eavesdrip:newest:c:mine", JSON.stringify({ version: 1, ...note(1), worksheet: 5 }));
    notes.kept.set("somebody:else", "7");
    expect(notesLeft(notes, readWorksheet)).toEqual([]);
    expect(notes.kept.size).toBe(4);
  });

  test("a state too long for a note, or refused, is said, and no older note outlives it", () => {
    const notes = instantMemory();
    const journal = makeJournal(notes, "one");
    journal.note(note(1));
    const long = { ...gallons(2), made_by: "x".repeat(1_000_001) };
    expect(journal.note(note(2, { worksheet: long }))).toBeNull();
    expect(notesLeft(notes, readWorksheet)).toEqual([]);
    journal.note(note(1));
    notes.refuse = true;
    expect(journal.note(note(3))).toBeNull();
    expect(notesLeft(notes, readWorksheet)).toEqual([]);
  });

  test("a note taken up goes, unless a newer one stands in its place", () => {
    const notes = instantMemory();
    const journal = makeJournal(notes, "one");
    journal.note(note(1));
    const [taken] = notesLeft(notes, readWorksheet);
    journal.note(note(2));
    if (taken) dropNote(notes, taken);
    expect(notesLeft(notes, readWorksheet)).toMatchObject([{ at: 2 }]);
  });
});

describe("what a page that is gone left", () => {
  test("is kept under its own sheet, and that sheet opens", async () => {
    const { notes, kept, begin } = setUp();
    makeJournal(notes, "gone").note(note(5));
    expect(await begin()).toEqual({ sheet: "mine", refused: null, notice: "" });
    expect(await kept("mine")).toEqual(gallons(5));
    expect(notesLeft(notes, readWorksheet)).toEqual([]);
  });

  test("goes over what the same page had kept before, whatever revision it knew of", async () => {
    const { notes, shelf, kept, begin } = setUp();
    const journal = makeJournal(notes, "gone");
    const by = journal.note(note(5));
    await shelf.save({ ...note(5), ...(by ? { by } : {}) });
    journal.note(note(6));
    await begin();
    expect(await kept("mine")).toEqual(gallons(6));
    expect(await shelf.list()).toMatchObject({ value: [{ id: "mine", revision: 2 }] });
  });

  test("never goes over what the same page kept later: an old note that came back brings nothing back", async () => {
    const { notes, shelf, kept, begin } = setUp();
    const journal = makeJournal(notes, "gone");
    journal.note(note(5));
    const old = new Map(notes.kept);
    const by = journal.note(note(6));
    await shelf.save({ ...note(6), ...(by ? { by } : {}) });
    for (const [key, text] of old) notes.kept.set(key, text);
    await begin();
    expect(await kept("mine")).toEqual(gallons(6));
    expect(await shelf.list()).toMatchObject({ value: [{ id: "mine", revision: 1 }] });
    expect(notesLeft(notes, readWorksheet)).toEqual([]);
  });

  test("goes beside what another tab changed meanwhile, and that is said", async () => {
    const { notes, kept, begin } = setUp();
    makeJournal(notes, "one").note(note(5));
    makeJournal(notes, "two").note(note(6));
    const taken = await begin();
    expect(taken.sheet).toBe("sheet-1");
    expect(taken.notice).toContain("(copy)");
    expect(await kept("mine")).toEqual(gallons(5));
    expect(await kept("sheet-1")).toMatchObject({ cards: gallons(6).cards });
  });

  test("of a tab that is still there is left to it", async () => {
    const { notes, kept, begin } = setUp(["one"]);
    makeJournal(notes, "one").note(note(5));
    expect(await begin()).toMatchObject({ sheet: null });
    expect(await kept("mine")).toBeNull();
    expect(notesLeft(notes, readWorksheet)).toHaveLength(1);
  });

  test("in this very tab opens before what a later tab left", async () => {
    const { notes, begin } = setUp([], "this");
    makeJournal(notes, "this").note(note(5));
    makeJournal(notes, "other").note(note(6, { id: "theirs" }));
    expect(await begin()).toMatchObject({ sheet: "mine" });
  });

  test("and the slow store refuses stays noted, and is given back to be opened", async () => {
    const notes = instantMemory();
    makeJournal(notes, "gone").note(note(5));
    const shelf = makeShelf(
      memoryStore(() => new DOMException("no", "QuotaExceededError")),
      countingId(),
    );
    const taken = await takeUp({ notes, shelf, tab: { before: null, isGone: async () => true } });
    expect(taken).toMatchObject({ sheet: null, refused: { id: "mine", worksheet: gallons(5) } });
    expect(notesLeft(notes, readWorksheet)).toHaveLength(1);
  });
});
