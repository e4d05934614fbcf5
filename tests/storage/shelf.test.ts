import { describe, expect, test } from "vitest";
import { setGiven, setWorksheet } from "../../src/document/edits.ts";
import { LIMITS } from "../../src/document/limits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { browserStore } from "../../src/storage/browser-store.ts";
import { chanceId, makeShelf } from "../../src/storage/shelf.ts";
import type { Kept } from "../../src/storage/store-failure.ts";
import { fixture, isDeeplyFrozen } from "../document/made-up.ts";
import { countingId, memoryStore } from "./made-up.ts";

function value<T>(kept: Kept<T>): T {
  if (!kept.ok) throw new Error(kept.failure.text);
  return kept.value;
}

const gallons = (amount: number) =>
  setGiven(fixture(), "blue_tank", "capacity", { value: amount, unit: "gal" });
const request = (worksheet: Worksheet, basedOn: number, at = 1000, id = "mine") => ({
  id,
  basedOn,
  worksheet,
  at,
});

function shelfAndStore() {
  const store = memoryStore();
  return { store, shelf: makeShelf(store, countingId()) };
}

async function openedOn(shelf: ReturnType<typeof makeShelf>, id: string) {
  const opened = value(await shelf.open(id, 5000));
  if (opened.state !== "opened") throw new Error(opened.state);
  return opened.sheet;
}

describe("keeping worksheets", () => {
  test("what is saved opens again the same, frozen, with its revision and time", async () => {
    const { shelf } = shelfAndStore();
    expect(value(await shelf.save(request(gallons(1), 0)))).toEqual({
      id: "mine",
      revision: 1,
      conflict: null,
    });
    expect(value(await shelf.save(request(gallons(2), 1, 2000))).revision).toBe(2);
    const sheet = await openedOn(shelf, "mine");
    expect(sheet).toMatchObject({ id: "mine", revision: 2, savedAt: 2000, readOnly: false, notes: [] });
    expect(sheet.worksheet).toEqual(gallons(2));
    expect(isDeeplyFrozen(sheet.worksheet)).toBe(true);
  });

  test("several are listed with titles and times, the last saved first; removed ones are gone", async () => {
    const { shelf } = shelfAndStore();
    await shelf.save(request(setWorksheet(fixture(), { title: "First" }), 0, 1, "a"));
    await shelf.save(request(setWorksheet(fixture(), { title: "Second" }), 0, 2, "b"));
    expect(value(await shelf.list()).map((sheet) => [sheet.id, sheet.title, sheet.savedAt])).toEqual([
      ["b", "Second", 2],
      ["a", "First", 1],
    ]);
    await shelf.remove("b");
    expect(value(await shelf.list()).map((sheet) => sheet.id)).toEqual(["a"]);
    expect(value(await shelf.open("b", 3))).toEqual({ state: "absent" });
  });

  test("the sheet last worked on is remembered", async () => {
    const { shelf } = shelfAndStore();
    expect(value(await shelf.current())).toBe(null);
    await shelf.setCurrent("mine");
    expect(value(await shelf.current())).toBe("mine");
    await shelf.setCurrent(null);
    expect(value(await shelf.current())).toBe(null);
  });

  test("ids by chance do not come twice in ten thousand", () => {
    expect(new Set(Array.from({ length: 10_000 }, chanceId)).size).toBe(10_000);
  });
});

describe("two tabs", () => {
  test("the second to save what both opened gets a sheet of its own, and both works are there", async () => {
    const { shelf } = shelfAndStore();
    await shelf.save(request(gallons(1), 0));
    await shelf.save(request(gallons(2), 1));
    const second = value(await shelf.save(request(gallons(3), 1)));
    expect(second).toEqual({
      id: "sheet-1",
      revision: 1,
      conflict: { title: "The plot behind the mill (copy)" },
    });
    expect((await openedOn(shelf, "mine")).worksheet).toEqual(gallons(2));
    expect((await openedOn(shelf, "sheet-1")).worksheet).toEqual(
      setWorksheet(gallons(3), { title: "The plot behind the mill (copy)" }),
    );
    expect(value(await shelf.save(request(gallons(4), 1, 9, "sheet-1"))).conflict).toBe(null);
  });

  test("a copy whose title is as long as a title may be can still be opened", async () => {
    const { shelf } = shelfAndStore();
    const long = (volume: number) => setWorksheet(gallons(volume), { title: "x".repeat(LIMITS.title) });
    await shelf.save(request(long(1), 0));
    await shelf.save(request(long(2), 1));
    const { id, conflict } = value(await shelf.save(request(long(3), 1)));
    expect(conflict?.title).toHaveLength(LIMITS.title);
    expect((await openedOn(shelf, id)).worksheet.title).toBe(conflict?.title);
  });

  test("that both did the same is no conflict", async () => {
    const { shelf } = shelfAndStore();
    await shelf.save(request(gallons(1), 0));
    await shelf.save(request(gallons(2), 1));
    expect(value(await shelf.save(request(gallons(2), 1)))).toEqual({
      id: "mine",
      revision: 2,
      conflict: null,
    });
    expect(value(await shelf.list())).toHaveLength(1);
  });

  test("a sheet removed in one tab and edited in the other is kept", async () => {
    const { shelf } = shelfAndStore();
    await shelf.save(request(gallons(1), 0));
    await shelf.remove("mine");
    expect(value(await shelf.save(request(gallons(2), 1)))).toEqual({
      id: "mine",
      revision: 2,
      conflict: null,
    });
  });

  test("twenty saves at once from one revision lose none", async () => {
    const { shelf } = shelfAndStore();
    await shelf.save(request(gallons(0), 0));
    await Promise.all(Array.from({ length: 20 }, (_, index) => shelf.save(request(gallons(index + 1), 1))));
    const ids = value(await shelf.list()).map((sheet) => sheet.id);
    const sheets = await Promise.all(ids.map((id) => openedOn(shelf, id)));
    const amounts = sheets.map((sheet) => sheet.worksheet.cards[3]?.givens.capacity?.value);
    expect(amounts.sort((a, b) => Number(a) - Number(b))).toEqual(
      Array.from({ length: 20 }, (_, index) => index + 1),
    );
  });

  test("an older version never saves over what a newer one kept", async () => {
    const { store, shelf } = shelfAndStore();
    store.kept.set("sheet:mine", {
      id: "mine",
      revision: 1,
      savedAt: 1,
      worksheet: { ...fixture(), version: 9 },
    });
    expect(value(await shelf.save(request(gallons(3), 1))).conflict).not.toBe(null);
    expect((await openedOn(shelf, "mine")).readOnly).toBe(true);
  });
});

describe("a save that cannot be read", () => {
  test.each<[string, unknown]>([
    ["a worksheet cut in half", { id: "mine", revision: 3, savedAt: 1, worksheet: { version: 1 } }],
    ["something else altogether", "hello"],
    ["a save without a worksheet", { id: "mine", revision: 3, savedAt: 1 }],
  ])("%s is set aside whole, reported, and can be taken out as text", async (_what, data) => {
    const { store, shelf } = shelfAndStore();
    store.kept.set("sheet:mine", data);
    expect(value(await shelf.list())).toHaveLength(1);
    const opened = value(await shelf.open("mine", 77));
    expect(opened).toMatchObject({ state: "set_aside", asideKey: "aside:mine:77" });
    expect(opened.state === "set_aside" && opened.problems.length).toBeGreaterThan(0);
    expect(value(await shelf.listAside())).toEqual(["aside:mine:77"]);
    expect(JSON.parse(value(await shelf.asideText("aside:mine:77")) ?? "")).toEqual(data);
    expect(value(await shelf.list())).toEqual([]);
    expect(value(await shelf.open("mine", 78))).toEqual({ state: "absent" });
  });

  test("is not saved over either: the new work goes beside it", async () => {
    const { store, shelf } = shelfAndStore();
    store.kept.set("sheet:mine", "hello");
    expect(value(await shelf.save(request(gallons(1), 3))).id).toBe("sheet-1");
    expect(store.kept.get("sheet:mine")).toBe("hello");
  });
});

describe("a browser that keeps nothing", () => {
  test.each([
    ["full", "QuotaExceededError", "no room"],
    ["refused", "SecurityError", "does not let the page keep"],
    ["refused", "InvalidStateError", "does not let the page keep"],
  ])("is %s on %s, with the file as the way out", async (reason, name, words) => {
    const shelf = makeShelf(
      memoryStore(() => new DOMException("no", name)),
      countingId(),
    );
    const answers = [
      await shelf.save(request(fixture(), 0)),
      await shelf.list(),
      await shelf.open("mine", 1),
      await shelf.current(),
      await shelf.setCurrent("x"),
      await shelf.remove("mine"),
      await shelf.listAside(),
    ];
    for (const answer of answers) {
      expect(answer).toMatchObject({ ok: false, failure: { reason } });
      expect(!answer.ok && answer.failure.text).toContain(words);
      expect(!answer.ok && answer.failure.text).toContain("as a file");
    }
  });

  test("without any database at all is refused, not a throw", async () => {
    expect(typeof indexedDB).toBe("undefined");
    const shelf = makeShelf(browserStore(), countingId());
    expect(await shelf.list()).toMatchObject({ ok: false, failure: { reason: "refused" } });
    expect(await shelf.save(request(fixture(), 0))).toMatchObject({
      ok: false,
      failure: { reason: "refused" },
    });
  });
});
