// Places over several doubts: every strip visited once, orders that have nothing to do with each other.

import fc from "fast-check";
import { expect, test } from "vitest";
import { latinHypercube } from "../../../src/studies/not-sure/latin-hypercube.ts";

test("every axis has one place in each of as many strips as there are runs", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 200 }),
      fc.nat(),
      (doubts, runs, seed) => {
        const places = latinHypercube(doubts, runs, seed);
        expect(places.length).toBe(doubts);
        for (const axis of places) {
          const strips = [...axis].map((place) => Math.floor(place * runs)).sort((a, b) => a - b);
          expect(strips).toEqual(Array.from({ length: runs }, (_, at) => at));
        }
      },
    ),
    { numRuns: 60 },
  );
});

test("G1: the same seed gives the same places, another others", () => {
  expect(latinHypercube(3, 20, 7)).toEqual(latinHypercube(3, 20, 7));
  expect(latinHypercube(3, 20, 7)).not.toEqual(latinHypercube(3, 20, 8));
});

test("no two of twelve axes go along with each other by more than three in a hundred", () => {
  for (let seed = 1; seed <= 20; seed++) {
    const places = latinHypercube(12, 128, seed);
    for (const [one, axis] of places.entries()) {
      for (const other of places.slice(0, one)) {
        const common = axis.reduce((sum, place, at) => sum + (place - 0.5) * ((other[at] ?? 0) - 0.5), 0);
        expect(Math.abs((common * 12) / 128)).toBeLessThan(0.03);
      }
    }
  }
});
