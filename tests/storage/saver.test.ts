import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven, setWorksheet } from "../../src/document/edits.ts";
import { makeJournal, notesLeft } from "../../src/storage/journal.ts";
import { makeSaver } from "../../src/storage/saver.ts";
import { makeShelf, type Saved } from "../../src/storage/shelf.ts";
import type { Kept } from "../../src/storage/store-failure.ts";
import { fixture } from "../document/made-up.ts";
import { countingId, instantMemory, memoryStore } from "./made-up.ts";

const gallons = (amount: number) =>
  setGiven(fixture(), "blue_tank", "capacity", { value: amount, unit: "gal" });

/** Lets the store take the steps it has begun. */
async function turns() {
  for (let turn = 0; turn < 4; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

function setUp(refuse: () => Error | null = () => null) {
  const store = memoryStore(refuse);
  const shelf = makeShelf(store, countingId());
  const told: Kept<Saved>[] = [];
  const notes = instantMemory();
  const saver = makeSaver({
    shelf,
    journal: makeJournal(notes, "this page"),
    id: "mine",
    revision: 0,
    now: () => 42,
    onSaved: (outcome) => told.push(outcome),
  });
  const kept = () => (store.kept.get("sheet:mine") as { worksheet: unknown } | undefined)?.worksheet;
  return { store, shelf, told, notes, saver, kept };
}

test("an edit is kept within a second though further edits keep coming, and only the newest is written", async () => {
  const { saver, told, kept } = setUp();
  for (let amount = 1; amount <= 9; amount += 1) {
    saver.change(gallons(amount));
    vi.advanceTimersByTime(100);
    await turns();
  }
  expect(told.length).toBeGreaterThan(1);
  await saver.flush();
  expect(told.length).toBeLessThan(5);
  expect(kept()).toEqual(gallons(9));
  expect(saver.place()).toEqual({ id: "mine", revision: told.length });
});

test("a flush keeps at once what waits, and with nothing waiting writes nothing", async () => {
  const { saver, told, kept } = setUp();
  await saver.flush();
  expect(told).toEqual([]);
  saver.change(gallons(5));
  await saver.flush();
  expect(kept()).toEqual(gallons(5));
  vi.advanceTimersByTime(5000);
  await saver.flush();
  expect(told).toHaveLength(1);
});

test("quick saves in a row never conflict with themselves", async () => {
  const { saver, shelf, told } = setUp();
  const flushes = [1, 2, 3, 4].map((amount) => {
    saver.change(gallons(amount));
    return saver.flush();
  });
  await Promise.all(flushes);
  expect(told.every((outcome) => outcome.ok && outcome.value.conflict === null)).toBe(true);
  expect(await shelf.list()).toMatchObject({ ok: true, value: [{ id: "mine" }] });
});

test("after a conflict the work goes on in the copy", async () => {
  const { saver, shelf, told } = setUp();
  saver.change(gallons(1));
  await saver.flush();
  await shelf.save({ id: "mine", basedOn: 1, worksheet: gallons(77), at: 1 });
  saver.change(gallons(2));
  await saver.flush();
  expect(told[1]).toMatchObject({
    ok: true,
    value: { id: "sheet-1", conflict: { title: expect.stringContaining("(copy)") } },
  });
  saver.change(setWorksheet(gallons(3), { title: "Now a copy" }));
  await saver.flush();
  expect(saver.place()).toEqual({ id: "sheet-1", revision: 2 });
  expect(await shelf.open("mine", 1)).toMatchObject({ value: { sheet: { worksheet: gallons(77) } } });
});

test("a refused save is told, and tried again at the next flush", async () => {
  let isFull = true;
  const { saver, told, kept } = setUp(() => (isFull ? new DOMException("no", "QuotaExceededError") : null));
  saver.change(gallons(8));
  await saver.flush();
  expect(told[0]).toMatchObject({ ok: false, failure: { reason: "full" } });
  isFull = false;
  await saver.flush();
  expect(told[1]).toMatchObject({ ok: true });
  expect(kept()).toEqual(gallons(8));
});

test("an edit is noted before anything else happens, and the note goes once the edit is kept", async () => {
  const { saver, notes } = setUp();
  saver.change(gallons(5));
  expect(notesLeft(notes, readWorksheet)).toMatchObject([
    { id: "mine", basedOn: 0, at: 42, worksheet: gallons(5) },
  ]);
  await saver.flush();
  expect(notesLeft(notes, readWorksheet)).toEqual([]);
  expect(saver.isIdle()).toBe(true);
});

test("an edit made while a save runs stays noted until it is kept itself", async () => {
  const { saver, notes, kept } = setUp();
  saver.change(gallons(5));
  const first = saver.flush();
  await new Promise((resolve) => setImmediate(resolve));
  saver.change(gallons(6));
  await first;
  expect(kept()).toEqual(gallons(5));
  expect(notesLeft(notes, readWorksheet)).toMatchObject([{ id: "mine", basedOn: 1, worksheet: gallons(6) }]);
  expect(saver.isIdle()).toBe(false);
  await saver.flush();
  expect(notesLeft(notes, readWorksheet)).toEqual([]);
});

test("a refused save leaves the note where it is", async () => {
  const { saver, notes } = setUp(() => new DOMException("no", "QuotaExceededError"));
  saver.change(gallons(8));
  await saver.flush();
  expect(notesLeft(notes, readWorksheet)).toMatchObject([{ worksheet: gallons(8) }]);
});

test("where no note can be made, the slow store is written at once", async () => {
  const { saver, notes, kept } = setUp();
  notes.refuse = true;
  saver.change(gallons(8));
  vi.advanceTimersByTime(1);
  await turns();
  expect(kept()).toEqual(gallons(8));
});

test("after a conflict the note of what goes on in the copy names the copy", async () => {
  const { saver, shelf, notes } = setUp();
  await shelf.save({ id: "mine", basedOn: 0, worksheet: gallons(77), at: 1 });
  saver.change(gallons(2));
  const first = saver.flush();
  await new Promise((resolve) => setImmediate(resolve));
  saver.change(gallons(3));
  await first;
  expect(notesLeft(notes, readWorksheet)).toMatchObject([
    { id: "sheet-1", basedOn: 1, worksheet: gallons(3) },
  ]);
});
