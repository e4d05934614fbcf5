// What is noted is ordered as it was entered, whatever chance and the clock do.

import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { noteNow, onItsDay } from "../../src/app/noting.ts";
import { readWorksheet } from "../../src/document/check.ts";
import { inOrder } from "../../src/document/note-order.ts";
import { noted } from "../../src/document/notes.ts";
import type { Note, ToBeNoted } from "../../src/document/worksheet.ts";
import { fixture } from "../document/made-up.ts";

beforeEach(() => {
  vi.useFakeTimers({ now: new Date(2026, 6, 10, 8, 15, 7) });
});
afterEach(() => {
  vi.useRealTimers();
});

const dip = (value: number, day?: string): ToBeNoted => ({
  what: "dipped",
  where: "shed_tank",
  value,
  unit: "in",
  ...(day === undefined ? {} : { day }),
});
function enter(count: number, day: string | undefined, between: () => void): readonly Note[] {
  const notes: Note[] = [];
  for (let place = 0; place < count; place++) {
    between();
    notes.push(noteNow(dip(place, day), notes));
  }
  return notes;
}
const valuesOf = (notes: readonly Note[]) => inOrder(notes).map(({ value }) => value);
const IN_ORDER = Array.from({ length: 40 }, (_, place) => place);

describe("G4: the order of entry is the order of notes", () => {
  test.each([
    ["all in one and the same millisecond", () => {}],
    ["a second apart, from one minute into the next", () => vi.advanceTimersByTime(1000)],
    ["while the clock goes back a second each time", () => vi.setSystemTime(Date.now() - 50)],
  ])("%s", (_, between) => {
    const notes = enter(40, undefined, between);
    expect(valuesOf([...notes].reverse())).toEqual(IN_ORDER);
  });

  test("of an earlier day, of which no minute is known, minutes and reloads apart", () => {
    const notes = enter(40, "2026-07-03", () => vi.advanceTimersByTime(47_000));
    expect(notes.every(({ minute }) => minute === undefined)).toBe(true);
    expect(valuesOf([...notes].reverse())).toEqual(IN_ORDER);
  });

  test("after notes whose ids are of another make", () => {
    const old: Note = { id: "ea5f".padEnd(32, "9"), day: "2026-07-10", minute: 495, ...dip(-1) };
    const notes = [old, noteNow(dip(0), [old])];
    expect(valuesOf(notes)).toEqual([-1, 0]);
  });

  test("and each id is one that a file may have", () => {
    const sheet = enter(3, undefined, () => {}).reduce(noted, fixture());
    expect(readWorksheet(JSON.parse(JSON.stringify(sheet)))).toMatchObject({ ok: true });
  });
});

test("what sets an earlier day's note right is of that day too, unless it says its own; of today it is of now", () => {
  const earlier = noteNow(dip(3, "2026-07-04"), []);
  const today = noteNow(dip(3), []);
  const notes = [earlier, today];
  expect(noteNow(onItsDay(dip(6), notes, earlier.id), notes)).toMatchObject({ day: "2026-07-04", value: 6 });
  expect(noteNow(onItsDay(dip(6), notes, earlier.id), notes).minute).toBeUndefined();
  expect(noteNow(onItsDay(dip(6), notes, today.id), notes)).toMatchObject({ day: "2026-07-10", minute: 495 });
  expect(onItsDay(dip(6, "2026-07-01"), notes, earlier.id).day).toBe("2026-07-01");
  expect(onItsDay(dip(6), notes, undefined)).toEqual(dip(6));
});
