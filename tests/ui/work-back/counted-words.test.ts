// A count is taken in the words in which its sentence says it.

import { expect, test } from "vitest";
import { withoutSaid } from "../../../src/ui/work-back/counted-words.ts";

const LEAD = "Beds go short in 13 of 20 made-up seasons; in the worst, 2014, on 43\u00a0days.";

test("the words of the sentence may stand behind the number, one or many of them", () => {
  expect(withoutSaid("10 days", LEAD)).toBe("10");
  expect(withoutSaid("1 day", LEAD)).toBe("1");
  expect(withoutSaid("10\u00a0Days", LEAD)).toBe("10");
  expect(withoutSaid("6 of 20 seasons", LEAD)).toBe("6");
});

test("what is no word of it stays, to be refused by who reads numbers", () => {
  for (const text of ["10", "10 gal", "10 days of rain", "days", "ten days"])
    expect(withoutSaid(text, LEAD)).toBe(text);
});
