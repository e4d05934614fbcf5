// What stays in the tanks for later: nothing where nothing later pays more, all where all that comes later does.

import { describe, expect, test } from "vitest";
import type { Water } from "../../src/season/later-use.ts";
import { leftFor } from "../../src/season/worth-later.ts";

const DAYS = 20;
const EVEN = { need: 1, comes: 1 };

/** One bed that needs a tenth of a tank of 1 m3 a day and pays so much on each; nothing comes but what is said. */
function water(pays: (day: number) => number, comes = 0): Water {
  const series = (of: (day: number) => number) => Float64Array.from({ length: DAYS }, (_, day) => of(day));
  return {
    capacity: 1,
    uses: [{ bed: "bed", need: series(() => 0.1), pays: series(pays) }],
    comes: Array.from({ length: DAYS }, () => new Float64Array(8).fill(comes)),
  };
}

const left = (one: Water, leaning = EVEN): readonly number[] => [...(leftFor(one, leaning).get("bed") ?? [])];

describe("what is left for later", () => {
  test("is nothing where every day pays the same", () => {
    for (const volume of left(water(() => 3))) expect(volume).toBe(0);
  });

  test("is what the better days need, when only they pay more and no rain comes", () => {
    // Days 15 to 19 pay double: five days of a tenth. Levels are a 39th apart.
    const volumes = left(water((day) => (day < 15 ? 1 : 2)));
    for (const volume of volumes.slice(0, 15)) expect(Math.abs(volume - 0.5)).toBeLessThanOrEqual(2 / 39);
    for (const volume of volumes.slice(15)) expect(volume).toBe(0);
  });

  test("is less by what comes on the better days, and nothing where that is enough", () => {
    const half = left(water((day) => (day < 15 ? 1 : 2), 0.05));
    // On the eve of the better days: the rain of that evening comes too.
    expect(Math.abs((half[14] as number) - 0.25)).toBeLessThanOrEqual(2 / 39);
    for (const volume of left(water((day) => (day < 15 ? 1 : 2), 0.1))) expect(volume).toBeLessThan(1 / 39);
  });

  test("grows with the need that is counted with, and shrinks with what is counted on", () => {
    const one = water((day) => (day < 15 ? 1 : 2), 0.04);
    const on = (leaning: typeof EVEN) => left(one, leaning)[10] as number;
    expect(on({ need: 1.3, comes: 1 })).toBeGreaterThan(on(EVEN));
    expect(on({ need: 1, comes: 1.3 })).toBeLessThan(on(EVEN));
  });

  test("of two beds is more for the one that pays less", () => {
    const good = {
      bed: "good",
      need: new Float64Array(DAYS).fill(0.05),
      pays: new Float64Array(DAYS).fill(3),
    };
    const lesser = { ...good, bed: "lesser", pays: new Float64Array(DAYS).fill(1) };
    const both = leftFor({ ...water(() => 0), uses: [lesser, good] }, EVEN);
    expect(both.get("good")?.[5]).toBe(0);
    // Fourteen days of the better bed are still to come.
    expect(Math.abs((both.get("lesser")?.[5] as number) - 0.7)).toBeLessThanOrEqual(2 / 39);
  });
});
