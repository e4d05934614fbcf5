// What is typed on a screen of the beginning, as the worksheet keeps it.

import { expect, test } from "vitest";
import type { Card } from "../../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import { readAnswer, startOf, usualOf } from "../../../src/ui/begin/reading.ts";
import type { Sheet } from "../../../src/ui/sheet.ts";

const sheet = {
  kinds: CARD_KINDS,
  worksheet: () => ({ units: "us" }),
  readOptions: () => ({ locale: "en-US", currency: "$" }),
  showOptions: () => ({ locale: "en-US", currency: "$", units: "us" }),
  unitOf: (id: string) => (id.endsWith("capacity") ? "gal" : "ft"),
  shown: () => "",
} as unknown as Sheet;
const tank: Card = { id: "tank", kind: "tank", title: "Tank", givens: {}, measured: {} };
const holds = { row: "capacity" } as const;

test("a span is kept with its ends, and stands there again when the screen opens anew", () => {
  const read = readAnswer(sheet, tank, holds, "225 to 300 gal");
  const capacity = { value: 262.5, unit: "gal", low: 225, high: 300 };
  expect(read).toEqual({ ok: true, told: { capacity } });
  expect(startOf(sheet, { ...tank, givens: { capacity } }, holds)).toBe("225 to 300");
  expect(readAnswer(sheet, tank, holds, "250 give or take 10 %")).toEqual({
    ok: true,
    told: { capacity: { value: 250, unit: "gal", low: 225, high: 275 } },
  });
});

test("one number is one number, and what is no span says why", () => {
  const one = { ok: true, told: { capacity: { value: 275, unit: "gal" } } };
  expect(readAnswer(sheet, tank, holds, "275")).toEqual(one);
  expect(startOf(sheet, { ...tank, givens: { capacity: { value: 275, unit: "gal" } } }, holds)).toBe("275");
  expect(readAnswer(sheet, tank, holds, "225 to 225 gal")).toMatchObject({ ok: false });
});

test("of two sides the longer is the length, and a bare one is in the unit of the other", () => {
  const size = { row: "length", by: ["length", "width"] } as const;
  const bed: Card = { ...tank, id: "bed", kind: "bed" };
  expect(readAnswer(sheet, bed, size, "30 x 50 in")).toEqual({
    ok: true,
    told: { length: { value: 50, unit: "in" }, width: { value: 30, unit: "in" } },
  });
});

test("the usual value stands in the unit in which is asked: 500 gal an hour are not 8.3 in a minute", () => {
  const pump: Card = { ...tank, id: "pump", kind: "pump" };
  const field = { row: "open_flow", unit: { us: "gph", metric: "L/h" } } as const;
  const anHour = 1892.705892 / 1000 / 3600;
  const usual = { ...sheet, result: () => ({ state: "ready", value: anHour }) } as unknown as Sheet;
  expect(usualOf(usual, pump, field)).toMatch(/^500\sgph$/);
  const metric = { ...usual, worksheet: () => ({ units: "metric" }) } as unknown as Sheet;
  expect(usualOf(metric, pump, field)).toMatch(/^1,?893\sL\/h$/);
});
