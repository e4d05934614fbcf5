// The known word that a misspelt one is nearest to.

import { expect, test } from "vitest";
import { nearestOf } from "../../src/units/spelling.ts";

const KNOWN = ["capacity", "count", "depth", "base_height"];

test.each([
  ["capacty", "capacity"],
  ["capacitys", "capacity"],
  ["dephts", "depth"],
  ["cuont", "count"],
  ["width", null],
  ["co", null],
  ["", null],
])("%j: %j", (word, near) => {
  expect(nearestOf(word, KNOWN)).toBe(near);
});

test("a known word is nearest to itself, and of equals the first is meant", () => {
  for (const word of KNOWN) expect(nearestOf(word, KNOWN)).toBe(word);
  expect(nearestOf("cart", ["card", "care"])).toBe("card");
});
