// What holds of a bed's need and of what it got whatever the bed and the sky.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mulchedCurve } from "../../src/physics/mulch.ts";
import type { BedPart } from "../../src/season/input.ts";
import { bed, carry, crop, inputOf, MM, ran, recordOf, seattle, steadyEto, tank } from "./made.ts";

const record = seattle();

/** A bed's answer with all the water it asks for, or what a tank of that size gives. */
function answerOf(more: Partial<BedPart>, { sky = record, size = 1000 } = {}) {
  const answer = ran(
    inputOf({
      start: "05-01",
      end: "09-30",
      eto: steadyEto(4 * MM),
      tanks: [tank(size, { startShare: 1 })],
      carries: [carry()],
      beds: [bed(more)],
    }),
    sky,
  ).beds[0];
  if (!answer) throw new Error("no bed");
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
const rules = fc.constantFrom<BedPart["rule"]>(
  { kind: "soil" },
  { kind: "weekdays", days: [1], volume: null },
  { kind: "weekdays", days: [2, 5], volume: 0.1 },
  { kind: "fixed", volume: 0.05, every: 86_400 },
);

/** What the bed's whole ground holds, over the efficiency [m3]: the most that a change of timing can move. */
const held = (part: Partial<BedPart>) => ((part.availableWater ?? 0) * 0.3 * 10) / 0.8;

describe("a bed's need", () => {
  test("under cover never grows with more mulch, whether straw or a factor stands for it", () => {
    fc.assert(
      fc.property(beds, ordered, (made, [less, more]) => {
        const under = { ...partOf(made), covered: true };
        const straw = (cover: number) =>
          answerOf({
            ...partOf(made, (given) => {
              const bare = crop(given);
              return { ...bare, ...mulchedCurve(bare, { middle: 1.1, end: 0.7 }, cover, 0.5) };
            }),
            covered: true,
          }).potential;
        expect(straw(more)).toBeLessThanOrEqual(atMost(straw(less)));
        const factor = (mulchFactor: number) => answerOf({ ...under, mulchFactor }).potential;
        expect(factor(1 - more / 2)).toBeLessThanOrEqual(atMost(factor(1 - less / 2)));
      }),
      { numRuns: 15 },
    );
  });

  test("grows with less rain by no more than the rain that is missing, and shrinks by no more than the ground holds", () => {
    const half = recordOf(
      record.rain.map((depth) => depth / 2),
      record.firstDay,
    );
    fc.assert(
      fc.property(beds, (made) => {
        const part = partOf(made);
        const [wet, dry] = [answerOf(part), answerOf(part, { sky: half })];
        // A watering on the eve of rain lets that rain run through: what timing moves is at most what the ground holds.
        expect(wet.need).toBeLessThanOrEqual(dry.need + held(part));
      }),
      { numRuns: 20 },
    );
  });

  test("is all that its crops could use and that its ground lacked at planting, less the rain it kept; none of that under cover", () => {
    fc.assert(
      fc.property(beds, (made) => {
        const { need, potential, owed, rained } = answerOf(partOf(made));
        expect(need).toBeCloseTo((potential + owed - rained) / 0.8, 9);
        if (made.covered) expect(rained).toBe(0);
      }),
      { numRuns: 30 },
    );
  });
});

describe("what a bed got", () => {
  test("is at most its need, by any rule, with any tank; what is more was poured past its roots", () => {
    fc.assert(
      fc.property(beds, rules, fc.constantFrom(0, 0.3, 3, 1000), (made, rule, size) => {
        const { need, got, pastRoots, given, seasons } = answerOf({ ...partOf(made), rule }, { size });
        expect(got).toBeLessThanOrEqual(atMost(need));
        for (const season of seasons) expect(season.got).toBeLessThanOrEqual(atMost(season.need));
        expect((got + pastRoots) * 4).toBeCloseTo(
          given.reduce((sum, volume) => sum + volume, 0),
          9,
        );
      }),
      { numRuns: 40 },
    );
  });

  test("leaves its share whole exactly where no day was short, and harvest is lost only where one was", () => {
    fc.assert(
      fc.property(beds, rules, fc.constantFrom(0, 0.3, 3, 1000), (made, rule, size) => {
        const { shareMet, daysShort, seasons } = answerOf({ ...partOf(made), rule }, { size });
        expect(shareMet === 1).toBe(daysShort === 0);
        for (const season of seasons) {
          expect(season.useShare === null || season.useShare === 1).toBe(season.daysShort === 0);
          for (const { loss } of season.losses) expect((loss ?? 0) > 0).toBe(season.daysShort > 0);
        }
      }),
      { numRuns: 40 },
    );
  });
});

test("days on which a crop stands outside the season are a count of their own, in no share and no short day", () => {
  // Planted 42 days before the season begins, gone within it; and nobody waters the bed.
  const { outsideDays, daysShort } = answerOf({ wateredBy: [], crops: [crop({ planted: "03-20" })] });
  expect(outsideDays).toBe(42);
  expect(daysShort).toBeLessThanOrEqual(145 - 42);
  expect(answerOf({ crops: [crop({ planted: "05-10" })] }).outsideDays).toBe(1);
});
