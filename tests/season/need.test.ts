// What holds of a bed's need whatever the bed and the sky.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mulchedCurve } from "../../src/physics/mulch.ts";
import { bedDemand } from "../../src/season/demand.ts";
import type { BedPart } from "../../src/season/input.ts";
import { bed, crop, MM, recordOf, seattle } from "./made.ts";

const record = seattle();
const season = { start: "05-01", end: "09-30" };
/** Between 0.5 mm a day in winter and 4.5 mm in summer. */
const eto = Float64Array.from(
  record.rain,
  (_, day) => (2.5 + 2 * Math.sin((day / 365.25) * 2 * Math.PI - 1.5)) * MM,
);

function demandOf(more: Partial<BedPart>, sky = record) {
  const answer = bedDemand(bed(more), season, sky, eto, 1);
  if ("none" in answer) throw new Error(answer.none);
  return answer;
}

/** Sums of floats may differ in their last bits. */
const atMost = (more: number) => more * (1 + 1e-12);

const beds = fc.record({
  covered: fc.boolean(),
  availableWater: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  planted: fc.constantFrom("03-20", "05-10", "07-01"),
  second: fc.double({ min: 0, max: 0.5, noNaN: true }),
  mingled: fc.boolean(),
});
type Made = typeof beds extends fc.Arbitrary<infer One> ? One : never;

const partOf = ({ planted, second, ...more }: Made, of = crop): Partial<BedPart> => ({
  ...more,
  crops: [
    of({ planted, share: 1 - second }),
    of({ planted: "06-01", share: second, height: 1.5, rootEnd: 0.2 }),
  ],
});
const share = fc.double({ min: 0, max: 1, noNaN: true });
const ordered = fc.tuple(share, share).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

describe("a bed's need", () => {
  test("never grows with more mulch, whether straw or a factor stands for it", () => {
    fc.assert(
      fc.property(beds, ordered, (made, [less, more]) => {
        const straw = (cover: number) =>
          demandOf(
            partOf(made, (given) => {
              const bare = crop(given);
              return { ...bare, ...mulchedCurve(bare, { middle: 1.1, end: 0.7 }, cover, 0.5) };
            }),
          ).seasonNeed;
        expect(straw(more)).toBeLessThanOrEqual(atMost(straw(less)));
        const factor = (mulchFactor: number) => demandOf({ ...partOf(made), mulchFactor }).seasonNeed;
        expect(factor(1 - more / 2)).toBeLessThanOrEqual(atMost(factor(1 - less / 2)));
      }),
      { numRuns: 60 },
    );
  });

  test("never grows with more rain, or with soil that holds more", () => {
    const half = recordOf(
      record.rain.map((depth) => depth / 2),
      record.firstDay,
    );
    fc.assert(
      fc.property(beds, (made) => {
        const part = partOf(made);
        const need = demandOf(part).seasonNeed;
        // Half the rain leaves sprinkles that no longer count, so it is not half as much that counts, but never more.
        expect(need).toBeLessThanOrEqual(atMost(demandOf(part, half).seasonNeed));
        const held = (part.availableWater ?? 0) * 1.5;
        expect(demandOf({ ...part, availableWater: held }).seasonNeed).toBeLessThanOrEqual(atMost(need));
      }),
      { numRuns: 60 },
    );
  });

  test("is what its crops use less the rain that stood in for it: at most all of it, and all of it under cover", () => {
    fc.assert(
      fc.property(beds, (made) => {
        const { seasonNeed, potential } = demandOf(partOf(made));
        expect(seasonNeed).toBeGreaterThanOrEqual(0);
        expect(seasonNeed).toBeLessThanOrEqual(atMost(potential / 0.8));
        if (made.covered) expect(seasonNeed).toBeCloseTo(potential / 0.8, 12);
      }),
      { numRuns: 60 },
    );
  });

  test("is the crop's, whatever the rule, the hour of deciding and the days of youth", () => {
    const plain = demandOf({}).seasonNeed;
    const others: readonly Partial<BedPart>[] = [
      { rule: { kind: "weekdays", days: [1], volume: 0.01 } },
      { rule: { kind: "fixed", volume: 1, every: 86_400 } },
      { decidesOn: "morning" },
      { youngDays: 20 },
      { letGo: { from: "06-01", dryDays: 1 } },
      { wateredBy: [] },
    ];
    for (const other of others) expect(demandOf(other).seasonNeed).toBe(plain);
  });
});
