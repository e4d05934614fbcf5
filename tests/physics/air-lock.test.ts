import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type GradeLine,
  gradeLine,
  humpsOf,
  purgeFlow,
  purgeVelocity,
  routeTroubles,
} from "../../src/physics/air-lock.ts";
import { DomainError } from "../../src/physics/domain-error.ts";

const points = (...pairs: (readonly [number, number])[]) =>
  pairs.map(([distance, height]) => ({ distance, height }));

/** Thirty metres from water at 2 m down to a free end at 0.5 m. */
const falling: GradeLine = {
  route: points([0, 1], [30, 0.5]),
  sourceHeight: 2,
  endHeight: 0.5,
  valveHead: 0,
  entryHead: 0,
  siphonLimit: 10,
  flow: 1e-4,
  bore: 0.0159,
};
const over = (...pairs: (readonly [number, number])[]): GradeLine => ({
  ...falling,
  route: points([0, 1], ...pairs, [30, 0.5]),
});

describe("purge", () => {
  test("needs more flow in a wider hose and on a steeper fall", () => {
    expect(purgeFlow(0.0254, 0)).toBeGreaterThan(purgeFlow(0.0159, 0));
    expect(purgeVelocity(0.0159, 0.5)).toBeGreaterThan(purgeVelocity(0.0159, 0.1));
  });

  test("refuses a hose that climbs, or none", () => {
    expect(() => purgeVelocity(0.0159, -0.1)).toThrow(DomainError);
    expect(() => purgeFlow(0, 0)).toThrow(DomainError);
  });
});

describe("gradeLine", () => {
  test("falls evenly from the source's water to the end", () => {
    expect(gradeLine(over([15, 0.4])).map(({ height }) => height)).toEqual([2, 1.25, 0.5]);
  });

  test("stays up when the valve uses the head, and drops at once by what the entry takes", () => {
    expect(gradeLine({ ...falling, valveHead: 1.5 }).map(({ height }) => height)).toEqual([2, 2]);
    expect(gradeLine({ ...falling, entryHead: 0.25 })[0]?.height).toBe(1.75);
    expect(() => gradeLine({ ...falling, route: [] })).toThrow(DomainError);
  });
});

describe("humpsOf", () => {
  const humps = (...pairs: (readonly [number, number])[]) => humpsOf(points(...pairs));

  test("finds none where a hose only falls, only climbs, lies level, or is no more than a point", () => {
    expect(humps([0, 3], [10, 2], [20, 1])).toEqual([]);
    expect(humps([0, 1], [10, 2], [20, 3])).toEqual([]);
    expect(humps([0, 1], [10, 1], [20, 1])).toEqual([]);
    expect(humps([0, 1])).toEqual([]);
    expect(humps()).toEqual([]);
  });

  test("measures the rise from the lowest point since the start", () => {
    expect(humps([0, 3], [10, 1], [20, 2.5], [30, 0])).toEqual([{ distance: 20, height: 2.5, rise: 1.5 }]);
  });

  test("counts a flat top once, where the hose leaves it, and a step in a fall not at all", () => {
    expect(humps([0, 1], [10, 2], [15, 2], [30, 0])).toEqual([{ distance: 15, height: 2, rise: 1 }]);
    expect(humps([0, 3], [10, 2], [15, 2], [30, 0])).toEqual([]);
  });

  test("measures a second hump from the dip since the last higher one, and a higher one from the lowest of all", () => {
    expect(humps([0, 3], [5, 1], [10, 2.5], [15, 2], [20, 2.2], [30, 0])).toEqual([
      { distance: 10, height: 2.5, rise: 1.5 },
      { distance: 20, height: 2.2, rise: expect.closeTo(0.2, 12) },
    ]);
    expect(humps([0, 3], [5, 1], [10, 1.5], [15, 1.2], [20, 2.8], [30, 0]).map(({ rise }) => rise)).toEqual([
      0.5,
      expect.closeTo(1.8, 12),
    ]);
  });

  test("of any route rises above what is before it, and the hose falls right after it", () => {
    // Whole numbers, so that heights and rises add up without rounding, and flat tops come up.
    const routes = fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(routes, (heights) => {
        const route = heights.map((height, index) => ({ distance: index, height }));
        for (const { distance, height, rise } of humpsOf(route)) {
          expect(rise).toBeGreaterThan(0);
          expect(heights[distance + 1]).toBeLessThan(height);
          expect(Math.min(...heights.slice(0, distance))).toBeLessThanOrEqual(height - rise);
        }
        const highest = Math.max(...heights);
        const inside = heights.slice(1, -1).includes(highest) && heights[0] !== highest;
        if (inside && heights[heights.length - 1] !== highest)
          expect(humpsOf(route).some(({ height }) => height === highest)).toBe(true);
      }),
    );
  });
});

describe("routeTroubles", () => {
  test("has nothing to say of a hose that only falls", () => {
    expect(routeTroubles(falling)).toEqual([]);
    expect(routeTroubles(over([10, 0.9], [20, 0.9]))).toEqual([]);
  });

  test("finds a hump over the source's water: a siphon, and one that no air lifts", () => {
    const hump = over([10, 2.5]);
    expect(routeTroubles(hump)).toEqual([{ kind: "siphon", distance: 10, height: 2.5, by: 0.5 }]);
    expect(routeTroubles({ ...hump, siphonLimit: 0.4 })[0]?.kind).toBe("siphon_too_high");
  });

  test("finds a hump above the grade line though below the source's water", () => {
    const [trouble] = routeTroubles(over([5, 0.2], [20, 1.2]));
    expect(trouble).toMatchObject({ kind: "under_pressure", distance: 20 });
    expect(trouble?.by).toBeCloseTo(0.2, 12);
  });

  test("finds a pocket of air behind a low point, only while the flow is too slow to clear it", () => {
    const hump = over([5, 0.3], [10, 0.8]);
    const slow = { ...hump, flow: purgeFlow(0.0159, Math.asin(0.3 / 20)) * 0.99 };
    expect(routeTroubles(slow)).toEqual([{ kind: "air_pocket", distance: 10, height: 0.8, by: 0.5 }]);
    expect(routeTroubles({ ...hump, flow: slow.flow * 1.02 })).toEqual([]);
  });

  test("counts a flat top once, and each of several humps", () => {
    const slow = { ...over([5, 0.3], [8, 0.8], [10, 0.8], [15, 0.3], [18, 0.6]), flow: 1e-6 };
    expect(routeTroubles(slow).map(({ distance }) => distance)).toEqual([10, 18]);
  });
});
