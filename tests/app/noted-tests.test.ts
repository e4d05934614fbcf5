// A bucket timed in season stands on the card as if it had been typed there, and goes again with its note.

import { expect, test } from "vitest";
import { withTest } from "../../src/app/noted-tests.ts";
import { noted } from "../../src/document/notes.ts";
import type { Note, Worksheet } from "../../src/document/worksheet.ts";
import { fixture } from "../document/made-up.ts";

const card = (id: string, kind: string, givens = {}) => ({ id, kind, title: id, givens, measured: {} });
const link = (value: string) => ({ value, unit: "" });
const sheet = (): Worksheet => {
  const { notes: _notes, ...bare } = fixture();
  const own = bare.cards.filter(({ kind }) => ["site", "weather", "season", "cost"].includes(kind));
  return {
    ...bare,
    units: "us",
    cards: [
      ...own,
      card("barrel", "tank"),
      card("tub", "tank"),
      card("hose", "line", { from: link("barrel"), to: link("tub") }),
      card("pump", "delivery", { from: link("tub") }),
    ],
  };
};
let made = 0;
const note = (what: string, where: string, more: Partial<Note> = {}): Note => ({
  id: String(++made).padStart(32, "0"),
  day: "2026-07-10",
  minute: made,
  what,
  where,
  ...more,
});
const bucket = (where: string, seconds: number) =>
  note("bucket", where, { value: 5, unit: "gal", with: { value: seconds, unit: "s" } });
const undid = ({ id, where }: Note) => note("undid", where, { undoes: id });
const after = (worksheet: Worksheet, ...notes: readonly Note[]): Worksheet =>
  notes.reduce((sheet, one) => withTest(noted(sheet, one), one), worksheet);
const find = (worksheet: Worksheet, id: string) => worksheet.cards.find((one) => one.id === id);

test("at a pump's hose it is the card's own bucket, with the hose that it was timed at", () => {
  const pump = find(after(sheet(), bucket("pump", 75)), "pump");
  expect(pump?.givens).toMatchObject({
    bucket_volume: { value: 5, unit: "gal", from: "measured" },
    bucket_time: { value: 75, unit: "s", from: "measured" },
  });
  expect(Object.keys(pump?.givens ?? {}).some((name) => name.startsWith("tested_"))).toBe(true);
});

test("at a line it is the flow that was measured, and so is a refill of the tank that one line fills", () => {
  const flow = { value: 4, unit: "gpm", from: "measured" };
  expect(find(after(sheet(), bucket("hose", 75)), "hose")?.measured["flow"]).toEqual(flow);
  const refill = note("timed", "tub", { value: 40, unit: "gal", with: { value: 10, unit: "min" } });
  expect(find(after(sheet(), refill), "hose")?.measured["flow"]).toEqual(flow);
  // Nothing fills the barrel but its roof.
  const barrel = note("timed", "barrel", { value: 40, unit: "gal", with: { value: 10, unit: "min" } });
  expect(after(sheet(), barrel).cards).toEqual(sheet().cards);
});

test("taken back, the one before it stands again, and nothing where there was none", () => {
  const [first, second] = [bucket("pump", 75), bucket("pump", 80)];
  const both = after(sheet(), first, second);
  expect(find(both, "pump")?.givens["bucket_time"]?.value).toBe(80);
  const back = after(both, undid(second));
  expect(find(back, "pump")?.givens["bucket_time"]?.value).toBe(75);
  expect(after(back, undid(first)).cards).toEqual(sheet().cards);
});

test("what was typed since stays", () => {
  const one = bucket("hose", 75);
  const noticed = after(sheet(), one);
  const typed = {
    ...noticed,
    cards: noticed.cards.map((own) =>
      own.id === "hose" ? { ...own, measured: { flow: { value: 3, unit: "gpm" } } } : own,
    ),
  };
  expect(find(after(typed, undid(one)), "hose")?.measured["flow"]?.value).toBe(3);
});

test("of a tank that two hoses fill, a refill teaches the one that is named, and none where none is", () => {
  const two = {
    ...sheet(),
    cards: [...sheet().cards, card("second", "line", { from: link("barrel"), to: link("tub") })],
  };
  const refill = (more: Partial<Note> = {}) =>
    note("timed", "tub", { value: 40, unit: "gal", with: { value: 7200, unit: "s" }, ...more });
  const flows = (worksheet: Worksheet) =>
    ["hose", "second"].map((id) => find(worksheet, id)?.measured["flow"] !== undefined);
  expect(flows(after(two, refill({ by: "second" })))).toEqual([false, true]);
  expect(flows(after(two, refill()))).toEqual([false, false]);
  expect(flows(after(sheet(), refill()))).toEqual([true, false]);
});
