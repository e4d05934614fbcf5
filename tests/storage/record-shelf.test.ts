import { describe, expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import { makeRecordShelf } from "../../src/storage/record-shelf.ts";
import { makeShelf } from "../../src/storage/shelf.ts";
import { fixture } from "../document/made-up.ts";
import { countingId, instantMemory, madeUpRecord, memoryStore } from "./made-up.ts";

const HOURS = 3_600_000;
const named = madeUpRecord([0.001, Number.NaN, 0.0254], true);
const stray = madeUpRecord([0.002]);
const naming = setGiven(fixture(), "weather", "record", { value: named.key, unit: "" });

describe("records beside the worksheets", () => {
  test("a record comes back with every day, missing ones too; one not kept is null", async () => {
    const records = makeRecordShelf(memoryStore(), instantMemory());
    await records.keep(named, 0);
    expect(await records.load(named.key)).toEqual({ ok: true, value: named });
    expect(await records.load(stray.key)).toEqual({ ok: true, value: null });
  });

  test("one kept under a key stays: another under the same key does not replace it", async () => {
    const records = makeRecordShelf(memoryStore(), instantMemory());
    await records.keep(named, 0);
    await records.keep({ ...stray, key: named.key }, 1);
    expect(await records.load(named.key)).toEqual({ ok: true, value: named });
  });

  test("what is damaged loads as nothing", async () => {
    const store = memoryStore();
    const records = makeRecordShelf(store, instantMemory());
    for (const record of [
      { ...named, rain: [1, 2] },
      { ...named, highest: new Float64Array(1) },
      { ...named, key: "x" },
      7,
    ]) {
      store.kept.set(`record:${named.key}`, { record, heldAt: 0 });
      expect(await records.load(named.key)).toEqual({ ok: true, value: null });
    }
  });

  test("a record goes when no worksheet names it and no undo list holds it, and not on the day it came", async () => {
    const store = memoryStore();
    const [shelf, records] = [makeShelf(store, countingId()), makeRecordShelf(store, instantMemory())];
    await shelf.save({ id: "mine", basedOn: 0, worksheet: naming, at: 0 });
    await records.keep(named, 0);
    await records.keep(stray, 0);
    expect(await records.prune(new Set(), 23 * HOURS)).toEqual({ ok: true, value: [] });
    expect(await records.prune(new Set([stray.key]), 25 * HOURS)).toEqual({ ok: true, value: [] });
    expect(await records.prune(new Set(), 48 * HOURS)).toEqual({ ok: true, value: [] });
    expect(await records.prune(new Set(), 50 * HOURS)).toEqual({ ok: true, value: [stray.key] });
    await shelf.remove("mine");
    expect(await records.prune(new Set(), 50 * HOURS)).toEqual({ ok: true, value: [named.key] });
  });

  test("a save that cannot be read, or was set aside, still holds the record it names", async () => {
    const store = memoryStore();
    const [shelf, records] = [makeShelf(store, countingId()), makeRecordShelf(store, instantMemory())];
    await records.keep(named, 0);
    store.kept.set("sheet:mine", {
      id: "mine",
      revision: 1,
      savedAt: 0,
      worksheet: { ...naming, version: "?" },
    });
    expect(await records.prune(new Set(), 99 * HOURS)).toEqual({ ok: true, value: [] });
    await shelf.open("mine", 1);
    expect(await records.prune(new Set(), 99 * HOURS)).toEqual({ ok: true, value: [] });
    expect(await records.load(named.key)).toEqual({ ok: true, value: named });
  });

  test("a record is there at once, before the slow store has it: a page that is left right after loses nothing", async () => {
    const [store, notes] = [memoryStore(), instantMemory()];
    void makeRecordShelf({ ...store, update: () => new Promise(() => undefined) }, notes).keep(named, 0);
    const next = makeRecordShelf(store, notes);
    expect(await next.load(named.key)).toEqual({ ok: true, value: named });
    await next.takeUp(1);
    expect([...notes.kept.keys()]).toEqual([]);
    expect(store.kept.has(`record:${named.key}`)).toBe(true);
    expect(await next.load(named.key)).toEqual({ ok: true, value: named });
  });

  test("kept, the note goes; one that finds no room is waited for, and says so until it is kept", async () => {
    const [store, notes] = [memoryStore(), instantMemory()];
    const records = makeRecordShelf(store, notes);
    await records.keep(named, 0);
    expect([...notes.kept.keys()]).toEqual([]);
    notes.refuse = true;
    const keeping = records.keep(stray, 0);
    expect(records.isWaiting()).toBe(true);
    await keeping;
    expect(records.isWaiting()).toBe(false);
  });

  test("a damaged note of a record is nothing, and goes", async () => {
    const [store, notes] = [memoryStore(), instantMemory()];
    notes.set(`eavesdrip:record:${named.key}`, "{");
    const records = makeRecordShelf(store, notes);
    expect(await records.load(named.key)).toEqual({ ok: true, value: null });
    await records.takeUp(0);
    expect([...notes.kept.keys()]).toEqual([]);
  });
});
