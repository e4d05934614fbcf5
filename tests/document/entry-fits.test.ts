// An edit asks whether its entry fits without the checker of whole worksheets: both must say the same.

import fc from "fast-check";
import { expect, test } from "vitest";
import { entryFits, ORIGINS } from "../../src/document/entry-fits.ts";
import { LIMITS } from "../../src/document/limits.ts";
import { plainCopy } from "../../src/document/plain.ts";
import { entryShape } from "../../src/document/shape.ts";
import type { Entry } from "../../src/document/worksheet.ts";

/** Mostly what fits, so that one wrong part decides. */
const mostly = (good: fc.Arbitrary<unknown>, bad: fc.Arbitrary<unknown>) =>
  fc.oneof({ weight: 12, arbitrary: good }, { weight: 1, arbitrary: bad });
const text = (most: number) =>
  mostly(
    fc.constantFrom(0, 3, most).map((length) => "x".repeat(length)),
    fc.constant("x".repeat(most + 1)),
  );
const number = mostly(fc.integer({ min: -9, max: 9 }), fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY));
const point = fc.array(number, { maxLength: LIMITS.point + 1 });
const content = fc.record(
  {
    crop: mostly(text(LIMITS.title), number),
    planted: text(LIMITS.title),
    share: mostly(number, fc.string()),
    until: mostly(text(LIMITS.title), fc.constant(null)),
    trained: mostly(fc.boolean(), number),
    more: fc.string(),
  },
  { requiredKeys: ["crop", "planted", "share"] },
);
const scalar = fc.oneof(number, text(LIMITS.text), fc.constant(null));
const list = mostly(
  fc.array(mostly(fc.oneof(scalar, point, content), fc.boolean()), { maxLength: 4 }),
  fc.constantFrom(LIMITS.list, LIMITS.list + 1).map((length) => Array.from({ length }, () => 1)),
);
const origin = mostly(fc.constantFrom(...ORIGINS), fc.constantFrom("heard", 3));
const value = mostly(fc.oneof(scalar, list), fc.oneof(fc.boolean(), content));
const told = fc.record(
  { value, unit: mostly(text(LIMITS.unit), number), from: origin, more: fc.string() },
  { requiredKeys: ["value", "unit"] },
);
const spans = fc.record(
  { value: fc.oneof(number, value), unit: fc.constant("gal"), low: number, high: number },
  { requiredKeys: ["value", "unit"] },
);
const entry = fc.oneof(told, spans);

test("an entry fits just where the checker of whole worksheets takes it", () => {
  let [fit, unfit] = [0, 0];
  fc.assert(
    fc.property(entry, (made) => {
      const taken = plainCopy(made).ok && entryShape.safeParse(made).success;
      expect(entryFits(made as Entry)).toBe(taken);
      if (taken) fit += 1;
      else unfit += 1;
    }),
    { numRuns: 3000 },
  );
  // The made-up entries try both.
  expect(Math.min(fit, unfit)).toBeGreaterThan(100);
});
