// One tank smaller and bigger: against the textbook loop, and where the curve flattens.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrivingRain } from "../../src/season/arriving-rain.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { dailyCatch } from "../../src/season/roof-catch.ts";
import { runSeason } from "../../src/season/run.ts";
import { kneeOf } from "../../src/studies/knee.ts";
import { tankYield } from "../oracles/storage-yield.ts";
import { draw, inputOf, LITRE, roof, seattle, tank } from "../season/made.ts";

/** From a quarter to four times in equal ratios. */
const MULTIPLES = Array.from({ length: 17 }, (_, place) => 2 ** (place / 4 - 2));

/** The season with its one tank so many times as big; a share of what the draws were due. */
function sizes(plan: SeasonInput, multiples: readonly number[]) {
  return multiples.map((multiple) => {
    const tanks = plan.tanks.map((part) => ({
      ...part,
      vessel: { ...part.vessel, volume: part.vessel.volume * multiple },
    }));
    const answer = runSeason({ ...plan, tanks }, seattle());
    if ("failed" in answer) throw new Error(answer.failed);
    const [only] = answer.draws;
    const spill = answer.totals.spill;
    const volume = (tanks[0]?.vessel.volume ?? 0) as number;
    return { multiple, volume, shareMet: only?.shareMet ?? null, daysShort: only?.daysShort ?? null, spill };
  });
}

type SizePoint = ReturnType<typeof sizes>[number];

describe("sizes of one tank", () => {
  test.each(["spill_first", "use_first"] as const)(
    "a fixed demand meets at each size what the textbook loop gives, under %s",
    (storageRule) => {
      const plan = inputOf({ storageRule, roofs: [roof()], tanks: [tank(3)], draws: [draw(300 * LITRE)] });
      const inflow = dailyCatch(roof(), arrivingRain(seattle(), 1), seattle().firstDay);
      const points = sizes(plan, MULTIPLES);
      expect(points).toHaveLength(MULTIPLES.length);
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
          const points = sizes(plan, [0.25, 0.5, 1, 2, 4]);
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
});

describe("the point past which more tank buys little", () => {
  const curve = (share: (multiple: number) => number | null) =>
    MULTIPLES.map((multiple) => ({ multiple, shareMet: share(multiple) }));

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
      MULTIPLES.find((multiple) => multiple > 2.5),
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
