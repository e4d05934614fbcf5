// One tank smaller and bigger: against the textbook loop, where the curve flattens, and the order of the runs.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tankYield } from "../../src/physics/storage-yield.ts";
import { arrivingRain } from "../../src/season/arriving-rain.ts";
import { dailyCatch } from "../../src/season/roof-catch.ts";
import { coarseFirst } from "../../src/studies/coarse-first.ts";
import { kneeOf } from "../../src/studies/knee.ts";
import { SIZE_MULTIPLES, type SizePoint, tankSizes, withTankTimes } from "../../src/studies/tank-sizes.ts";
import { bed, carry, draw, inputOf, LITRE, recordOf, roof, seattle, tank } from "../season/made.ts";

const byMultiple = (points: Iterable<SizePoint>): readonly SizePoint[] =>
  [...points].sort((a, b) => a.multiple - b.multiple);

describe("sizes of one tank", () => {
  test("run from a quarter to four times today's size, which is among them exactly", () => {
    expect(SIZE_MULTIPLES[0]).toBe(0.25);
    expect(SIZE_MULTIPLES[SIZE_MULTIPLES.length - 1]).toBe(4);
    expect(SIZE_MULTIPLES).toContain(1);
    const ratios = SIZE_MULTIPLES.slice(1).map((multiple, place) => multiple / (SIZE_MULTIPLES[place] ?? 0));
    for (const ratio of ratios) expect(ratio).toBeCloseTo(2 ** 0.25, 12);
  });

  test.each(["spill_first", "use_first"] as const)(
    "a fixed demand meets at each size what the textbook loop gives, under %s",
    (storageRule) => {
      const plan = inputOf({ storageRule, roofs: [roof()], tanks: [tank(3)], draws: [draw(300 * LITRE)] });
      const inflow = dailyCatch(roof(), arrivingRain(seattle(), 1), seattle().firstDay);
      const points = byMultiple(tankSizes({ plan, tank: "tank", multiples: SIZE_MULTIPLES }, seattle()));
      expect(points).toHaveLength(SIZE_MULTIPLES.length);
      for (const point of points) {
        const demand = 300 * LITRE;
        const run = tankYield({ inflow, demand, capacity: point.volume, start: 0, rule: storageRule });
        expect(point.volume).toBeCloseTo(3 * point.multiple, 12);
        expect(point.shareMet).toBeCloseTo(run.yield / (demand * inflow.length), 9);
        expect(point.daysShort).toBeCloseTo((inflow.length - run.stepsMet) / 4, 9);
        expect(point.spill).toBeCloseTo(run.spill / 4, 9);
      }
    },
  );

  test("on one covered tank with a fixed demand a bigger tank never meets less and never spills more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.double({ min: 10, max: 800, noNaN: true }),
        fc.constantFrom("spill_first" as const, "use_first" as const),
        (volume, litres, storageRule) => {
          const plan = inputOf({
            storageRule,
            roofs: [roof()],
            tanks: [tank(volume)],
            draws: [draw(litres * LITRE)],
          });
          const points = byMultiple(
            tankSizes({ plan, tank: "tank", multiples: [0.25, 0.5, 1, 2, 4] }, seattle()),
          );
          points.slice(1).forEach((point, place) => {
            const smaller = points[place] as SizePoint;
            expect((point.shareMet ?? 0) + 1e-12).toBeGreaterThanOrEqual(smaller.shareMet ?? 1);
            expect(point.spill).toBeLessThanOrEqual(smaller.spill + 1e-9);
          });
        },
      ),
      { numRuns: 25 },
    );
  });

  test("another size is more vessels alike: volume, open surface and leak grow, height and all else stay", () => {
    const plan = inputOf({ tanks: [tank(2, { openArea: 3, leak: 4e-9 }), tank(5, { id: "other" })] });
    const grown = withTankTimes(plan, "tank", 2);
    expect(grown.tanks).toEqual([tank(4, { openArea: 6, leak: 8e-9 }), tank(5, { id: "other" })]);
    expect(grown.tanks[0]?.vessel.height).toBe(1);
    expect(plan.tanks[0]?.vessel.volume).toBe(2);
  });

  test("with beds the share is the crops', and the point at 1 is the season as it stands", () => {
    const plan = inputOf({
      start: "05-01",
      end: "09-30",
      roofs: [roof({ footprint: 30 })],
      tanks: [tank(0.5)],
      carries: [carry({ roundTime: 0 })],
      beds: [bed()],
    });
    const points = byMultiple(tankSizes({ plan, tank: "tank", multiples: [0.5, 1, 2] }, seattle()));
    const shares = points.map(({ shareMet }) => shareMet ?? -1);
    expect(shares[0]).toBeLessThan(shares[1] ?? 0);
    expect(shares[1]).toBeLessThan(shares[2] ?? 0);
    expect(points[0]?.daysShort).toBeGreaterThan(points[2]?.daysShort ?? 1e9);
  });

  test("today's size comes first, and what is not asked for is not run", () => {
    const plan = inputOf({ roofs: [roof()], tanks: [tank(3)], draws: [draw(300 * LITRE)] });
    const study = tankSizes({ plan, tank: "tank", multiples: SIZE_MULTIPLES }, seattle());
    const first = study.next();
    expect(first.done).toBe(false);
    expect(first.value).toMatchObject({ multiple: 1 });
    expect(study.return(null)).toEqual({ done: true, value: null });
    expect(study.next().done).toBe(true);
  });

  test("says why where the tank is left out or the season cannot be run", () => {
    const gone = tankSizes({ plan: inputOf(), tank: "tank", multiples: [1] }, seattle());
    expect(gone.next()).toEqual({ done: true, value: { failed: "This tank is left out of the season." } });
    const holed = tankSizes(
      { plan: inputOf({ tanks: [tank(1)] }), tank: "tank", multiples: [1] },
      recordOf([0, Number.NaN, 0], 0),
    );
    expect(holed.next().value).toMatchObject({ failed: expect.stringContaining("1970-01-02") });
  });

  test("no share where nothing is asked of the tank", () => {
    const points = tankSizes(
      { plan: inputOf({ tanks: [tank(1)] }), tank: "tank", multiples: [1] },
      seattle(),
    );
    expect(points.next().value).toMatchObject({ shareMet: null, daysShort: null });
  });
});

describe("the point past which more tank buys little", () => {
  const curve = (share: (multiple: number) => number | null) =>
    SIZE_MULTIPLES.map((multiple) => ({ multiple, shareMet: share(multiple) }));

  test("is where a curve of known slope passes half a percent for a tenth more", () => {
    // share = a ln(multiple) gains a ln 1.1 for a tenth: 0.00525 at a = 0.0551, 0.00477 at a = 0.05.
    const bent = curve((multiple) =>
      multiple <= 1 ? 0.5 + 0.0551 * Math.log(multiple) : 0.5 + 0.05 * Math.log(multiple),
    );
    expect(kneeOf(bent)).toBe(1);
  });

  test("is the size at which all is met, on a curve that rises straight to it", () => {
    expect(kneeOf(curve((multiple) => Math.min(1, multiple / 2)))).toBe(2);
  });

  test("is not named while a later step still gains, also where the curve dips before", () => {
    expect(kneeOf(curve((multiple) => (multiple < 2 ? 0.5 : multiple < 2.5 ? 0.45 : 0.6)))).toBe(
      SIZE_MULTIPLES.find((multiple) => multiple > 2.5),
    );
  });

  test("is none where more tank still helps at the end, and where nothing is known", () => {
    expect(kneeOf(curve((multiple) => multiple / 4))).toBeNull();
    expect(kneeOf(curve(() => null))).toBeNull();
    expect(kneeOf([])).toBeNull();
    expect(kneeOf([{ multiple: 1, shareMet: 1 }])).toBeNull();
  });

  test("is the smallest size tried where even that has room enough", () => {
    expect(kneeOf(curve(() => 0.7))).toBe(0.25);
  });
});

test("the order of runs is coarse first and leaves no place out", () => {
  expect(coarseFirst(9, 4)).toEqual([4, 8, 0, 2, 6, 1, 3, 5, 7]);
  expect(coarseFirst(1, 0)).toEqual([0]);
  expect(coarseFirst(0, 0)).toEqual([]);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(), (count, pick) => {
      const order = coarseFirst(count, pick % count);
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, place) => place));
      expect(order[0]).toBe(pick % count);
    }),
  );
});
