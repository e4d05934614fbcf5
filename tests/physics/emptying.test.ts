import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import type { GravityLine } from "../../src/physics/gravity-line.ts";
import { openingOf } from "../../src/physics/orifice.ts";
import { emptyingTime, fallingHeadTime, sharedSurface } from "../oracles/emptying.ts";

const hose: GravityLine = {
  length: 3,
  bore: 0.0254,
  roughness: 1.5e-6,
  fittingsK: 1.5,
  opening: null,
  viscosity: 1.14e-6,
};
const opening = openingOf(0.005, 0.62);

describe("joined tanks", () => {
  test("come within 1 mm of each other in the closed-form time to that 1 mm, within 3 %, where the opening governs", () => {
    const surface = sharedSurface(0.26, 0.9);
    const closed = emptyingTime({ surface, opening, from: 0.6, to: 0.001 });
    const through = fallingHeadTime({ line: { ...hose, opening }, surface, from: 0.6, to: 0.001 });
    expect(Math.abs(through / closed - 1)).toBeLessThan(0.03);
    expect(through).toBeGreaterThan(closed);
  });

  test("end like any laminar line: each further halving of the difference takes equally long", () => {
    const bare = { ...hose, fittingsK: 0 };
    const halving = (from: number) => fallingHeadTime({ line: bare, surface: 1, from, to: from / 2 });
    expect(halving(1e-5) / halving(1e-6)).toBeCloseTo(1, 6);
  });
});

describe("fallingHeadTime", () => {
  test("is the closed form when the line is nothing but its opening", () => {
    const heads = fc.double({ min: 0.001, max: 3, noNaN: true });
    fc.assert(
      fc.property(heads, heads, (one, other) => {
        const [to, from] = [Math.min(one, other), Math.max(one, other) + 0.01];
        const line = { ...hose, length: 0, fittingsK: 0, opening };
        const closed = emptyingTime({ surface: 1, opening, from, to });
        expect(fallingHeadTime({ line, surface: 1, from, to }) / closed).toBeCloseTo(1, 8);
      }),
      { numRuns: 50, verbose: 1 },
    );
  });

  test("of two stretches is that of both together", () => {
    const time = (from: number, to: number) => fallingHeadTime({ line: hose, surface: 1, from, to });
    expect((time(2, 0.5) + time(0.5, 0.01)) / time(2, 0.01)).toBeCloseTo(1, 7);
  });

  test("refuses to level out wholly, which takes for ever, or to rise", () => {
    expect(() => fallingHeadTime({ line: hose, surface: 1, from: 1, to: 0 })).toThrow(DomainError);
    expect(() => fallingHeadTime({ line: hose, surface: 1, from: 1, to: 2 })).toThrow(DomainError);
    expect(() => emptyingTime({ surface: 1, opening, from: 1, to: 2 })).toThrow(DomainError);
    expect(() => emptyingTime({ surface: 0, opening, from: 1, to: 0 })).toThrow(DomainError);
  });
});

describe("sharedSurface", () => {
  test("of two alike is half of one, and never more than the smaller", () => {
    expect(sharedSurface(2, 2)).toBe(1);
    expect(sharedSurface(1e12, 3)).toBeCloseTo(3, 9);
  });
});
