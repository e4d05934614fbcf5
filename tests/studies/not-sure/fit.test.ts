// Shares of the first order against functions of which they are known in closed form.

import { randomLcg } from "d3-random";
import { expect, test } from "vitest";
import { fitOf, legendre, shareOf } from "../../../src/studies/not-sure/fit.ts";
import { latinHypercube } from "../../../src/studies/not-sure/latin-hypercube.ts";
import { tries } from "../../tries.ts";

type Over = (places: readonly number[]) => number;

function sharesOf(over: Over, doubts: number, runs: number, seed: number): readonly number[] {
  const places = latinHypercube(doubts, runs, seed);
  const answers = Float64Array.from({ length: runs }, (_, run) => over(places.map((axis) => axis[run] ?? 0)));
  const fit = fitOf(places, answers);
  return places.map((_, doubt) => shareOf(fit, doubt));
}

/** Ishigami & Homma (1990) with 7 and 0.1, angles from -pi to pi. */
const ishigami: Over = (places) => {
  const [one = 0, two = 0, three = 0] = places.map((place) => Math.PI * (2 * place - 1));
  return Math.sin(one) + 7 * Math.sin(two) ** 2 + 0.1 * three ** 4 * Math.sin(one);
};

test("polynomials of the basis have a mean square of 1 and nothing in common", () => {
  const steps = 4000;
  const bases = Array.from({ length: steps }, (_, at) => legendre((at + 0.5) / steps, 8));
  for (let one = 0; one <= 8; one++) {
    for (let other = 0; other <= 8; other++) {
      const mean = bases.reduce((sum, basis) => sum + (basis[one] ?? 0) * (basis[other] ?? 0), 0) / steps;
      expect(mean).toBeCloseTo(one === other ? 1 : 0, 3);
    }
  }
});

// Shares 0.314, 0.442 and 0: closed form, as printed in Saltelli et al. (2008), Global Sensitivity Analysis: The Primer,
// for the Ishigami function, from memory.
const SEEDS = tries(100, 40);
test.each([
  [1024, 0.05, 95],
  [128, 0.1, 90],
])(
  "shares of the Ishigami function out of %i runs, within %f in %i of 100 seeds (40 but for LONG=1)",
  (runs, within, least) => {
    let good = 0;
    for (let seed = 1; seed <= SEEDS; seed++) {
      const shares = sharesOf(ishigami, 3, runs, seed);
      if ([0.314, 0.442, 0].every((share, doubt) => Math.abs((shares[doubt] ?? 1) - share) <= within)) good++;
    }
    expect(good).toBeGreaterThanOrEqual((least / 100) * SEEDS);
  },
);

// Sobol' G function: each doubt alone makes 1 / (3 (1 + a)^2) of variance (Saltelli & Sobol' 1995, from memory); ten of them,
// the a of each by chance.
test("among ten doubts the largest is first in three of four, first or second in nine of ten", () => {
  const chance = randomLcg(42);
  const places = tries(100, 40);
  let [first, second] = [0, 0];
  for (let seed = 1; seed <= places; seed++) {
    const damp = Array.from({ length: 10 }, () => 6 * chance());
    const over: Over = (at) =>
      damp.reduce((product, a, doubt) => (product * (Math.abs(4 * (at[doubt] ?? 0) - 2) + a)) / (1 + a), 1);
    const largest = damp.indexOf(Math.min(...damp));
    const shares = sharesOf(over, 10, 128, seed);
    const rank = shares.filter((share) => share > (shares[largest] ?? 0)).length;
    if (rank === 0) first++;
    if (rank <= 1) second++;
  }
  expect(first).toBeGreaterThanOrEqual(0.75 * places);
  expect(second).toBeGreaterThanOrEqual(0.9 * places);
});

test("shares are at least nought and together at most one, an answer that never moves has none", () => {
  const chance = randomLcg(3);
  for (let seed = 1; seed <= 20; seed++) {
    const noise: Over = () => chance();
    const shares = sharesOf(noise, 6, 128, seed);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-12);
  }
  expect(sharesOf(() => 4, 3, 32, 1)).toEqual([0, 0, 0]);
});
