// Work back against functions whose crossings are known, and against a fine sweep.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Wish, workBack } from "../../src/studies/work-back.ts";
import { type Scale, scaleBetween, valuesOf } from "../../src/units/scale.ts";

const answering = (of: (value: number) => number | null) => async (values: readonly number[]) =>
  values.map(of);

const isMet = ({ sense, target }: Wish, answer: number | null) =>
  answer !== null && (sense === "at most" ? answer <= target : answer >= target);

/** Every crossing of a fine sweep, as the middle between its two neighbors. */
function sweptCrossings(of: (value: number) => number | null, scale: Scale, wish: Wish): readonly number[] {
  const values = valuesOf(scale, 4001);
  return values.flatMap((value, at) => {
    const before = values[at - 1];
    if (before === undefined || isMet(wish, of(before)) === isMet(wish, of(value))) return [];
    return [(before + value) / 2];
  });
}

describe("work back", () => {
  test("a straight line is met where it crosses, from the side that meets it", async () => {
    const line = (value: number) => 3 * value - 7;
    const scale = scaleBetween(0, 10, "m");
    const worked = await workBack(answering(line), scale, 0, { sense: "at least", target: 5 });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(worked.nearest.value).toBeGreaterThanOrEqual(4);
    expect(worked.nearest.answer).toBeCloseTo(5, 1);
    expect(worked.others).toEqual([]);
  });

  test("two crossings are both told, the nearest first", async () => {
    const bowl = (value: number) => (value - 5) ** 2;
    const scale = scaleBetween(0, 10, "m");
    const worked = await workBack(answering(bowl), scale, 9, { sense: "at most", target: 4 });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(worked.nearest.value).toBeCloseTo(7, 1);
    expect(worked.others.map(({ value }) => Math.round(value * 10) / 10)).toEqual([3]);
  });

  test("a jump is told at its edge: what is told meets the wish, a thousandth less does not", async () => {
    const step = (value: number) => (value >= 6.283 ? 2 : 30);
    const scale = scaleBetween(1, 10, "m");
    const worked = await workBack(answering(step), scale, 1, { sense: "at most", target: 5 });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(step(worked.nearest.value)).toBe(2);
    expect(step(worked.nearest.value * 0.999)).toBe(30);
  });

  test("of whole numbers, the least that does it: one less does not", async () => {
    const cans = (value: number) => 100 / value;
    for (const high of [40, 5000]) {
      const worked = await workBack(answering(cans), scaleBetween(1, high, "1", true), 1, {
        sense: "at most",
        target: 7,
      });
      if (worked.state !== "found") throw new Error(worked.state);
      expect(worked.nearest.value).toBe(15);
    }
  });

  test("already, never with the best there is, and no answer at all", async () => {
    const scale = scaleBetween(0, 10, "m");
    const wish: Wish = { sense: "at most", target: 5 };
    expect(
      (
        await workBack(
          answering(() => 3),
          scale,
          1,
          wish,
        )
      ).state,
    ).toBe("already");
    const never = await workBack(
      answering((value) => 20 - value),
      scale,
      1,
      wish,
    );
    expect(never).toEqual({ state: "never", best: { value: 10, answer: 10 } });
    expect(
      await workBack(
        answering(() => null),
        scale,
        1,
        wish,
      ),
    ).toEqual({ state: "never", best: null });
  });

  test("a dip narrower than the first look is found", async () => {
    const dip = (value: number) => 10 - 9 * Math.exp(-(((value - 4.321) / 0.12) ** 2));
    const worked = await workBack(answering(dip), scaleBetween(0, 10, "m"), 0, {
      sense: "at most",
      target: 1.5,
    });
    expect(worked.state).toBe("found");
  });

  test("over 200 random functions: what is told meets the wish, and a fine sweep finds no other crossing", async () => {
    const waves = fc.record({
      slope: fc.double({ min: -3, max: 3, noNaN: true }),
      height: fc.double({ min: 0, max: 4, noNaN: true }),
      times: fc.double({ min: 0.2, max: 3, noNaN: true }),
      target: fc.double({ min: -6, max: 6, noNaN: true }),
      present: fc.double({ min: 0, max: 10, noNaN: true }),
      sense: fc.constantFrom<Wish["sense"]>("at most", "at least"),
      steps: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(waves, async ({ slope, height, times, target, present, sense, steps }) => {
        const smooth = (value: number) => slope * (value - 5) + height * Math.sin(times * value);
        const of = (value: number) => (steps ? Math.round(smooth(value)) : smooth(value));
        const [scale, wish] = [scaleBetween(0, 10, "m"), { sense, target }];
        const worked = await workBack(answering(of), scale, present, wish);
        if (worked.state === "already") {
          expect(isMet(wish, of(present))).toBe(true);
          return;
        }
        const swept = sweptCrossings(of, scale, wish);
        if (worked.state === "never") {
          // A target that is only grazed lies between two values of any sweep.
          if (!steps) expect(swept).toEqual([]);
          return;
        }
        const told = [worked.nearest, ...worked.others];
        for (const { value, answer } of told) {
          expect(isMet(wish, of(value))).toBe(true);
          expect(answer).toBe(of(value));
          if (!steps && Math.abs(target) > 0.1)
            expect(Math.abs(answer - target)).toBeLessThanOrEqual(Math.abs(target) * 0.01 + 3e-3);
        }
        const near = (value: number) => told.some((met) => Math.abs(met.value - value) < 0.35);
        // Crossings closer to each other than two of the first values may be told as none.
        const alone = swept.filter(
          (value) => !swept.some((other) => other !== value && Math.abs(other - value) < 0.7),
        );
        for (const value of alone) expect(near(value)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});
