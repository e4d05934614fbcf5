import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { readWorksheet, SET_ASIDE } from "../../src/document/check.ts";
import { LIMITS } from "../../src/document/limits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { tries } from "../tries.ts";
import { fixture, fixtureText, isDeeplyFrozen } from "./made-up.ts";
import { readWorksheetText } from "./read-text.ts";

function read(data: unknown) {
  const reading = readWorksheet(data);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading;
}

function problems(data: unknown) {
  const reading = readWorksheet(data);
  if (reading.ok) throw new Error("was read");
  return reading.problems;
}

const card = (more: object = {}) => ({
  id: "a_tank",
  kind: "tank",
  title: "A tank",
  givens: {},
  measured: {},
  ...more,
});
const sheet = (...cards: unknown[]) => ({ ...emptyWorksheet(), cards });

describe("a worksheet of the present version", () => {
  test("is read whole: every value, unknown keys too, comes back as it was written", () => {
    const reading = read(JSON.parse(fixtureText()));
    expect(JSON.parse(JSON.stringify(reading.worksheet))).toEqual(JSON.parse(fixtureText()));
    expect(reading).toMatchObject({ readOnly: false, notes: [] });
  });

  test("is frozen through and through, and shares nothing with what was given", () => {
    const given = JSON.parse(fixtureText());
    const { worksheet } = read(given);
    given.cards[3].givens.capacity.value = 1;
    expect(isDeeplyFrozen(worksheet)).toBe(true);
    expect(worksheet.cards[3]?.givens.capacity?.value).toBe(275);
  });

  test("an empty worksheet has the four cards that always exist, and reads back the same", () => {
    const empty = emptyWorksheet({ title: "Mine", made_on: "2026-04-01" });
    expect(empty.cards.map((one) => one.id)).toEqual(["site", "weather", "season", "cost"]);
    expect(read(JSON.parse(JSON.stringify(empty)))).toEqual({
      ok: true,
      worksheet: empty,
      readOnly: false,
      notes: [],
    });
    expect(isDeeplyFrozen(empty)).toBe(true);
  });
});

describe("slips that do no harm", () => {
  test.each([
    ["a missing unit", { value: "metal" }, { value: "metal", unit: "" }],
    ["an empty unit", { value: "metal", unit: null }, { value: "metal", unit: "" }],
    ["a bare number", 3, { value: 3, unit: "" }],
    ["a bare list", ["x"], { value: ["x"], unit: "" }],
    ["an empty origin", { value: 1, unit: "m", from: null }, { value: 1, unit: "m" }],
    ["empty ends", { value: 1, unit: "m", low: null, high: null }, { value: 1, unit: "m" }],
    ["an origin nobody knows", { value: 1, unit: "m", from: "dreamt" }, { value: 1, unit: "m" }],
  ])("%s is put right", (_what, given, expected) => {
    const { worksheet } = read(sheet(card({ givens: { thing: given } })));
    expect(worksheet.cards[0]?.givens.thing).toEqual(expected);
  });

  test("missing givens, measured values and titles are filled in", () => {
    const { worksheet } = read({ version: 1, cards: [{ id: "a_tank", kind: "tank" }] });
    expect(worksheet.cards[0]).toEqual({
      id: "a_tank",
      kind: "tank",
      title: "a_tank",
      givens: {},
      measured: {},
    });
    expect(worksheet.units).toBe("metric");
  });

  test("a broken id, a twin id, an unknown kind and a dead link pass, for the graph to report where they stand", () => {
    const cards = [
      card({ id: "No Good" }),
      card(),
      card(),
      card({ kind: "tnak" }),
      card({ givens: { to: "nobody" } }),
    ];
    expect(read(sheet(...cards)).worksheet.cards).toHaveLength(5);
  });

  test("a card that cannot be read is set aside with the place told, goes back out on saving, and the rest stands", () => {
    const broken = card({ title: "Odd", givens: { capacity: { value: { deep: 1 }, unit: "gal" } } });
    const reading = read(sheet(card(), broken, 5));
    expect(reading.worksheet.cards.map((one) => one.id)).toEqual(["a_tank"]);
    expect((reading.worksheet as Worksheet & { [SET_ASIDE]: unknown })[SET_ASIDE]).toEqual([broken, 5]);
    expect(reading.notes[0]).toMatch(
      /^Card 2 \("Odd"\) was set aside\. cards\[1\]\.givens\.capacity\.value: /,
    );
    expect(reading.notes[1]).toMatch(/^Card 3 was set aside\. cards\[2\]: /);
    const again = read(JSON.parse(JSON.stringify(reading.worksheet)));
    expect(again.worksheet).toEqual(reading.worksheet);
    expect(again.notes).toEqual([]);
  });
});

describe("what is refused, with its place", () => {
  const longText = "x".repeat(LIMITS.text + 1);
  let deep: unknown = 1;
  for (let level = 0; level < LIMITS.depth; level += 1) deep = [deep];
  test.each<[string, unknown, string]>([
    ["no group of values", 7, ""],
    ["nothing", null, ""],
    ["no version", { cards: [] }, "version"],
    ["version nought", { ...sheet(), version: 0 }, "version"],
    ["a broken version", { ...sheet(), version: 1.5 }, "version"],
    ["no cards", { version: 1 }, "cards"],
    ["too many cards", sheet(...Array.from({ length: LIMITS.cards + 1 }, () => card())), "cards"],
    ["unknown units", { ...sheet(), units: "ells" }, "units"],
    ["a locale that is none", { ...sheet(), locale: "no such_thing" }, "locale"],
    ["a date that is none", { ...sheet(), made_on: "today" }, "made_on"],
    ["a text without end", sheet(card({ givens: { note: longText } })), "cards[0].givens.note"],
    [
      "a number without end",
      sheet(card({ givens: { a: { value: Number.POSITIVE_INFINITY } } })),
      "cards[0].givens.a.value",
    ],
    ["no number", sheet(card({ givens: { a: { value: Number.NaN } } })), "cards[0].givens.a.value"],
    [
      "a list without end",
      sheet(card({ givens: { a: Array(LIMITS.list + 1).fill(0) } })),
      "cards[0].givens.a",
    ],
    ["a constructor", sheet(card({ givens: { constructor: { value: 1 } } })), "cards[0].givens.constructor"],
    ["an id that reaches into the objects", sheet(card(), card({ id: "__proto__" })), "cards[1].id"],
    ["an id that is every object's", sheet(card({ id: "constructor" })), "cards[0].id"],
    ["a kind that reaches into the objects", sheet(card({ kind: "__proto__" })), "cards[0].kind"],
    ["a kind that is every object's", sheet(card({ kind: "prototype" })), "cards[0].kind"],
    ["a date object", sheet(card({ made: new Date(0) })), "cards[0].made"],
    ["a function", sheet(card({ run: () => 1 })), "cards[0].run"],
  ])("%s", (_what, data, path) => {
    expect(problems(data)[0]?.path).toBe(path);
    expect(problems(data)[0]?.message).not.toBe("");
  });

  test("a way into the objects themselves", () => {
    const hostile = JSON.parse('{"version":1,"cards":[{"id":"a","__proto__":{"polluted":1}}]}');
    expect(problems(hostile)[0]?.path).toBe("cards[0].__proto__");
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test("nesting too deep, and a ring", () => {
    expect(problems(sheet(card({ deep })))[0]?.message).toBe("This is nested too deeply.");
    const ring: Record<string, unknown> = {};
    ring.again = ring;
    expect(problems(sheet(ring))[0]?.message).toBe("This is nested too deeply.");
  });

  test("an overflowing number in the text", () => {
    const reading = readWorksheetText('{"version":1,"cards":[{"id":"a","givens":{"b":{"value":1e999}}}]}');
    expect(reading).toMatchObject({ ok: false, problems: [{ path: "cards[0].givens.b.value" }] });
  });
});

test("a worksheet of a newer version opens whole and read-only", () => {
  const newer = { ...JSON.parse(fixtureText()), version: 9, weather_of_mars: { red: true } };
  const reading = read(newer);
  expect(reading.readOnly).toBe(true);
  expect(JSON.parse(JSON.stringify(reading.worksheet))).toEqual(newer);
  expect(reading.notes[0]).toContain("newer version (9");
});

describe("the JSON text", () => {
  test.each([
    ['{"version":1,\n "cards":[}', 2, 11],
    ['{"version":1 "cards":[]}', 1, 14],
    ['{"version":01,"cards":[]}', 1, 12],
    ["{'version':1}", 1, 2],
    ['{"version":1,}', 1, 14],
    ['{"a":[1,2', 1, 10],
    ['{"a":1}\n\n x', 3, 2],
    ["", 1, 1],
    ['{"a":"b\nc"}', 1, 6],
    ["[1,]", 1, 4],
  ])("a slip in %j is told at line %i, column %i", (text, line, column) => {
    const reading = readWorksheetText(text);
    expect(reading).toMatchObject({ ok: false, problems: [{ path: `line ${line}, column ${column}` }] });
  });

  test("is read the same with a byte-order mark before it", () => {
    expect(readWorksheetText(`\uFEFF${fixtureText()}`)).toMatchObject({ ok: true, worksheet: fixture() });
  });

  test("a hundred thousand open brackets are refused at once", () => {
    expect(readWorksheetText("[".repeat(100_000)).ok).toBe(false);
    expect(readWorksheetText("[".repeat(50_000) + "]".repeat(50_000)).ok).toBe(false);
  });
});

/** The fixture with one value somewhere in it replaced. */
function withHole(path: readonly number[], value: unknown): unknown {
  const copy = JSON.parse(fixtureText());
  let at = copy;
  for (const [index, pick] of path.entries()) {
    const keys = Object.keys(at);
    if (keys.length === 0) break;
    const key = keys[pick % keys.length] ?? "";
    if (index === path.length - 1 || typeof at[key] !== "object" || at[key] === null) {
      at[key] = value;
      break;
    }
    at = at[key];
  }
  return copy;
}

describe("made-up worksheets, 20,000 with LONG=1", () => {
  const check = (data: unknown) => {
    const reading = readWorksheet(data);
    if (!reading.ok) {
      expect(reading.problems.length).toBeGreaterThan(0);
      return;
    }
    const again = readWorksheet(JSON.parse(JSON.stringify(reading.worksheet)));
    expect(again.ok && again.worksheet).toEqual(reading.worksheet);
    expect(isDeeplyFrozen(reading.worksheet)).toBe(true);
  };

  test(`${tries(10_000)} of any JSON never throw`, () => {
    fc.assert(fc.property(fc.jsonValue({ maxDepth: 6 }), check), { numRuns: tries(5000) });
    const inside = fc.record({
      version: fc.constantFrom(1, 2),
      cards: fc.array(fc.jsonValue({ maxDepth: 5 })),
    });
    fc.assert(fc.property(inside, check), { numRuns: tries(5000) });
  });

  test(`${tries(10_000)} with one value of a good one replaced are read or refused, and what is read reads again the same`, () => {
    const path = fc.array(fc.nat(20), { minLength: 1, maxLength: 7 });
    const hole = fc.property(path, fc.jsonValue({ maxDepth: 4 }), (at, value) => check(withHole(at, value)));
    fc.assert(hole, { numRuns: tries(10_000) });
  });

  test(`${tries(2000)} texts with a piece cut out are refused with a place or read`, () => {
    const text = fixtureText();
    const cut = fc.property(fc.nat(text.length), fc.nat(40), (from, length) => {
      const reading = readWorksheetText(text.slice(0, from) + text.slice(from + length));
      if (!reading.ok) expect(reading.problems[0]?.message).not.toBe("");
    });
    fc.assert(cut, { numRuns: tries(2000) });
  });

  test("whatever is thrown at it, not only JSON, it does not throw", () => {
    fc.assert(
      fc.property(
        fc.anything({ withNullPrototype: true, withDate: true, withMap: true, withTypedArray: true }),
        (data) => {
          expect(typeof readWorksheet(data).ok).toBe("boolean");
        },
      ),
      { numRuns: tries(2000) },
    );
  });
});
