// What the next money buys, in words: whole days of all seasons, and why nothing is suggested.

import { expect, test } from "vitest";
import { aloneSaid, fewerSaid, nextMoneySaid, noneSaid } from "../../src/telling/next-money.ts";
import { alreadySaid, alsoSaid, foundSaid, neverSaid } from "../../src/telling/work-back.ts";

const US = { units: "us", locale: "en-US", currency: "$" } as const;

test("a gutter for forty", () => {
  const bought = { titles: ["a gutter on Porch roof"], cost: 40, saved: 6 };
  expect(nextMoneySaid(bought, 7.5, 4, US)).toBe(
    "Next $40: a gutter on Porch roof, 24 of 30 short days fewer in 4 seasons",
  );
  const both = { titles: ["a lid for Tub", "one more of Totes"], cost: 99.5, saved: 0.25 };
  expect(nextMoneySaid(both, 7.5, 4, US)).toBe(
    "Next $99.50: a lid for Tub and one more of Totes, 1 of 30 short days fewer in 4 seasons",
  );
});

test("all of them, the only one, and one season", () => {
  expect(fewerSaid(2, 2, 3)).toBe("all 6 short days gone in 3 seasons");
  expect(fewerSaid(1, 1, 1)).toBe("the only short day gone in this one season");
  expect(fewerSaid(1, 4, 1)).toBe("1 of 4 short days fewer in this one season");
  expect([0.05, 0, -0.1].map((saved) => aloneSaid(saved, 20))).toEqual(["1 fewer", "none fewer", "2 more"]);
});

test("nothing is suggested without a reason", () => {
  const counts = { priced: 2, affordable: 1 };
  expect(noneSaid(1, 3, counts)).toBe("");
  expect(noneSaid(0, null, counts)).toContain("cannot be run");
  expect(noneSaid(0, 0, counts)).toContain("No day is short");
  expect(noneSaid(0, 3, { priced: 0, affordable: 0 })).toContain("has a price yet");
  expect(noneSaid(0, 3, { priced: 2, affordable: 0 })).toContain("costs more");
  expect(noneSaid(0, 3, counts)).toContain("Nothing with a price");
});

test("worked back: found, also, already and never", () => {
  const met = { value: "612 gal", answer: "5 days" };
  expect(foundSaid(met)).toBe("612 gal does it: 5 days.");
  expect(alsoSaid(met)).toBe("So does 612 gal: 5 days.");
  expect(alreadySaid("3 days")).toBe("It is so already: 3 days.");
  expect(neverSaid(["20 gal", "5,000 gal"], met, false)).toBe(
    "Never from 20 gal to 5,000 gal: nearest is 5 days, at 612 gal.",
  );
  expect(neverSaid(["20 gal", "5,000 gal"], met, true)).toBe(
    `It moves nothing here: ${met.answer} from 20 gal to 5,000 gal.`,
  );
  expect(neverSaid(["1", "6"], null, true)).toBe("Never from 1 to 6: there is no answer anywhere.");
});
