// Sentences under answers that are not sure are claims: they agree with the shares they tell of.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  askedSaid,
  beyondSaid,
  doubtName,
  manySaid,
  measuringSaid,
  mostFromSaid,
  othersSaid,
  partSaid,
} from "../../src/telling/not-sure.ts";

const shares = fc
  .array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 0, maxLength: 12 })
  .map((sizes) => {
    const total = Math.max(
      1,
      sizes.reduce((sum, size) => sum + size, 0),
    );
    return sizes
      .map((size) => size / total)
      .sort((a, b) => b - a)
      .map((share, at) => ({ name: `Doubt ${at} (Roof)`, share }));
  });

describe("which doubt matters most", () => {
  test("names the largest, says half of it only where it makes half, and shares only where it is so", () => {
    fc.assert(
      fc.property(shares, (named) => {
        const said = mostFromSaid(named);
        const [first, second] = named;
        if (said.startsWith("No single")) {
          expect(first?.share ?? 0).toBeLessThan(0.05);
          return;
        }
        expect(said).toContain(first?.name);
        const share = first?.share ?? 0;
        if (said.startsWith("Two doubts")) {
          expect(said).toContain(second?.name);
          expect(share - (second?.share ?? 0)).toBeLessThan(0.05);
          return;
        }
        expect(share - (second?.share ?? 0)).toBeGreaterThanOrEqual(0.05);
        if (said.startsWith("Nearly all")) expect(share).toBeGreaterThanOrEqual(0.9);
        if (said.startsWith("Most of the spread")) expect(share).toBeGreaterThanOrEqual(0.5);
        const told = /(\d+) %/.exec(said)?.[1];
        if (told) expect(Math.abs(Number(told) / 100 - share)).toBeLessThanOrEqual(0.005 + 1e-9);
        for (const other of named.slice(1)) expect(said).not.toContain(other.name);
      }),
    );
  });
});

describe("which measurement helps", () => {
  test("a part in words lies no further off than half the way to its neighbors", () => {
    const said = new Map([
      ["next to nothing", 0],
      ["about a tenth", 0.1],
      ["about a fifth", 0.2],
      ["about a third", 1 / 3],
      ["about half", 0.5],
      ["about two thirds", 2 / 3],
      ["about four fifths", 0.8],
    ]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (share) => {
        expect(Math.abs((said.get(partSaid(share)) ?? 9) - share)).toBeLessThanOrEqual(0.101);
      }),
    );
  });

  test("promises a part only where at least a tenth goes, and never of what nothing measures", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean(), (leaves, isFirst) => {
        const said = measuringSaid({ name: "Level", how: "dip it", leaves }, isFirst);
        expect(said.includes("would leave")).toBe(leaves <= 0.9);
        if (leaves <= 0.9) expect(said.toLowerCase()).toContain("dip it");
        if (leaves <= 0.9) expect(said).toContain(partSaid(leaves));
      }),
    );
    expect(measuringSaid(null, false)).toBe("Nothing simple would measure it.");
  });
});

test("a doubt is named by its row and the cards that share it", () => {
  expect(doubtName({ label: "Footprint", titles: ["Barn"] })).toBe("Footprint (Barn)");
  expect(doubtName({ label: "Runs off", titles: ["Barn", "House"] })).toBe("Runs off (Barn and House)");
  expect(doubtName({ label: "Runs off", titles: ["A", "B", "C", "D"] })).toBe("Runs off (4 parts alike)");
});

test("says how many were asked, over the same seasons, and how many were held", () => {
  expect(askedSaid(1, 0, 128, 20)).toBe(
    "One number is not sure: 128 runs, each over the same 20 seasons, eight of ten lie between the ends.",
  );
  expect(askedSaid(12, 3, 1024, 1)).toContain("each over the same season, ");
  expect(askedSaid(12, 3, 1024, null)).toContain("3 more doubts were held as they stand.");
});

test("what else is not sure stands beside what one number makes, and an answer beyond its span says what it goes by", () => {
  expect(othersSaid(10, "40 to 70")).toBe("With 10 other numbers not sure: 40 to 70");
  expect(othersSaid(1, "40 to 70")).toBe("With one other number not sure: 40 to 70");
  expect(othersSaid(0, "42 to 46")).toBe("Eight of ten: 42 to 46");
  expect(manySaid(11)).toBe("11 numbers are not sure.");
  expect(manySaid(1)).toBe("");
  expect(beyondSaid("43", { name: "First flush", taken: "0.02 in", between: "0 to 0.12 in" })).toBe(
    "43 goes by 0.02 in of First flush, which may be 0 to 0.12 in.",
  );
});
