// Ends of an answer that is not sure, against sums of even spans whose percentiles are known in closed form.

import { expect, test } from "vitest";
import { latinHypercube } from "../../../src/studies/not-sure/latin-hypercube.ts";
import { spannedOf } from "../../../src/studies/not-sure/not-sure.ts";
import { tries } from "../../tries.ts";

const SEEDS = Array.from({ length: 40 }, (_, at) => at + 1);

function endsOf(doubts: number, runs: number, seed: number, over: (places: readonly number[]) => number) {
  const places = latinHypercube(doubts, runs, seed);
  const answers = Array.from({ length: runs }, (_, run) => over(places.map((axis) => axis[run] ?? 0)));
  const spanned = spannedOf(places, answers);
  if (!spanned) throw new Error("no span");
  return spanned;
}

const total = (places: readonly number[]): number => places.reduce((sum, place) => sum + place, 0);

// One even span: a tenth and nine tenths. Two: the sum of two has the tenth at sqrt(0.2). Three: the density below 1 is
// x^2 / 2, so that a tenth lies below the cube root of 0.6. All by integration, the nine tenths by symmetry.
test.each([
  [1, 0.1],
  [2, Math.sqrt(0.2)],
  [3, Math.cbrt(0.6)],
])("a sum of %i even spans has its tenth at %f, within what 128 runs can tell", (doubts, tenth) => {
  // A quantile of n runs errs by sqrt(p (1 - p) / n) over the density there; the hypercube does no worse than chance.
  const density = doubts === 1 ? 1 : doubts === 2 ? tenth : tenth ** 2 / 2;
  const error = Math.sqrt((0.1 * 0.9) / 128) / density;
  const ends = SEEDS.map((seed) => endsOf(doubts, 128, seed, total));
  for (const { low, high } of ends) {
    expect(Math.abs(low - tenth)).toBeLessThan(4 * error);
    expect(Math.abs(high - (doubts - tenth))).toBeLessThan(4 * error);
  }
  const mean = ends.reduce((sum, { low }) => sum + low, 0) / ends.length;
  // Sorting puts the k-th of n at k / (n + 1), not at k / n: a hundredth of the span at the most.
  expect(Math.abs(mean - tenth)).toBeLessThan(error / 2 + 0.01);
});

test("the doubt that matters most comes first, and measuring it leaves what the others make", () => {
  for (const seed of SEEDS.slice(0, tries(40))) {
    const spanned = endsOf(3, 128, seed, ([one = 0, two = 0, three = 0]) => 10 * two + 3 * one + 2 * three);
    expect(spanned.mostFrom.map(({ doubt }) => doubt)).toEqual([1, 0, 2]);
    // Shares of a sum go with the squares of the spans: 100, 9 and 4 of 113.
    expect(spanned.mostFrom[0]?.share).toBeCloseTo(100 / 113, 1);
    const brute = endsOf(3, 1024, seed, ([one = 0, two = 0, three = 0]) => two + 3 * one + 2 * three);
    // Each end of 128 runs errs by about sqrt(0.09 / 128) over a density of 0.2: three times that of both together.
    expect(Math.abs((spanned.mostFrom[0]?.leaves ?? 0) - (brute.high - brute.low))).toBeLessThan(0.6);
  }
});

test("what is always whole has whole ends, and holds at least eight of ten runs", () => {
  for (const seed of SEEDS) {
    const over = (places: readonly number[]) => Math.floor(7 * total(places));
    const { low, high } = endsOf(2, 128, seed, over);
    expect(Number.isInteger(low) && Number.isInteger(high)).toBe(true);
    const places = latinHypercube(2, 128, seed);
    const inside = Array.from({ length: 128 }, (_, run) => over(places.map((axis) => axis[run] ?? 0)));
    expect(inside.filter((value) => value >= low && value <= high).length).toBeGreaterThanOrEqual(
      0.8 * 128 - 2,
    );
  }
});

test("an answer that is none in most runs has no span, and runs that are not in yet do not count", () => {
  const places = latinHypercube(1, 10, 1);
  expect(spannedOf(places, [1, null, null, null, null, null, null, null, null, 2])).toBeNull();
  expect(spannedOf(places, [1.5, 2.5, 3.5])?.runs).toBe(3);
  expect(spannedOf(places, [])).toBeNull();
});
