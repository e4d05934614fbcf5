// Made-up worksheets for the tests of documents and of keeping them.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { readWorksheet } from "../../src/document/check.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";

const LINKS: Readonly<Record<string, readonly string[]>> = {
  roof: ["drains_to"],
  line: ["from", "to"],
  bed: ["watered_by"],
};

export const ROLES = {
  isLink: (kind: string, given: string) => LINKS[kind]?.includes(given) ?? false,
  isFormula: (kind: string, given: string) => kind === "own" && given === "formula",
};

export function fixtureText(version: 1 | 2 | 3 | 4 = 4): string {
  return readFileSync(new URL(`../fixtures/worksheet-v${version}.json`, import.meta.url), "utf8");
}

export function fixture(): Worksheet {
  const reading = readWorksheet(JSON.parse(fixtureText()));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.worksheet;
}

export function isDeeplyFrozen(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return true;
  return Object.isFrozen(value) && Object.values(value).every(isDeeplyFrozen);
}

const plainEntry = fc.record(
  {
    value: fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0),
      fc.string({ maxLength: 30 }),
      fc.constant(null),
      fc.array(fc.constantFrom("blue_tank", "shed_roof", "tank_2"), { maxLength: 4 }),
      fc.array(fc.tuple(fc.integer(), fc.integer()), { maxLength: 4 }),
    ),
    unit: fc.constantFrom("gal", "m", ""),
    from: fc.constantFrom("default", "guessed", "borrowed", "label", "measured"),
  },
  { requiredKeys: ["value", "unit"] },
) as fc.Arbitrary<{ value: never; unit: string }>;

const unsureEntry = fc
  .tuple(
    fc.integer({ min: -100, max: 100 }),
    fc.integer({ min: 0, max: 50 }),
    fc.constantFrom("gal", "m", ""),
  )
  .map(([low, wide, unit]) => ({ value: (low + wide / 2) as never, unit, low, high: low + wide }));

export const anyEntry = fc.oneof(plainEntry, unsureEntry) as fc.Arbitrary<{ value: never; unit: string }>;
