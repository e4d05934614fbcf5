// Work back against functions whose crossings are known.

import { describe, expect, test } from "vitest";
import { type Wish, workBack } from "../../src/studies/work-back.ts";
import { scaleBetween } from "../../src/units/scale.ts";

const answering = (of: (value: number) => number | null) => async (values: readonly number[]) =>
  values.map(of);

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

  test("where an answer of whole days comes to just the target on a stretch, the edge of the stretch is told", async () => {
    const days = (value: number) => Math.round(15 - 3 * value);
    const worked = await workBack(answering(days), scaleBetween(0, 10, "m"), 10, {
      sense: "at least",
      target: -6,
    });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(worked.nearest.value).toBeCloseTo(7.166, 2);
  });

  test("a mean of whole days, in steps finer than a percent, is told at the edge of its step too", async () => {
    // Days of twenty seasons, in steps of a twentieth.
    const mean = (value: number) => Math.round((15 - 3 * value) * 20) / 20;
    const scale = scaleBetween(0, 5, "m");
    const worked = await workBack(answering(mean), scale, 0, { sense: "at most", target: 5 });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(mean(worked.nearest.value)).toBe(5);
    expect(mean(worked.nearest.value * 0.999)).toBeGreaterThan(5);
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
    expect(never).toEqual({ state: "never", best: { value: 10, answer: 10 }, still: false });
    expect(
      await workBack(
        answering(() => null),
        scale,
        1,
        wish,
      ),
    ).toEqual({ state: "never", best: null, still: true });
  });

  test("a dip narrower than the first look is found", async () => {
    const dip = (value: number) => 10 - 9 * Math.exp(-(((value - 4.321) / 0.12) ** 2));
    const worked = await workBack(answering(dip), scaleBetween(0, 10, "m"), 0, {
      sense: "at most",
      target: 1.5,
    });
    expect(worked.state).toBe("found");
  });

  test("a narrow step up at the top of a hill of steps is found", async () => {
    const hill = (value: number) => Math.floor(10.003 - (value - 4.217) ** 2);
    const worked = await workBack(answering(hill), scaleBetween(0, 10, "m"), 0, {
      sense: "at least",
      target: 10,
    });
    expect(worked.state).toBe("found");
  });

  test("a steep answer is told in as many figures as it takes to be within a percent of its target", async () => {
    const steep = (value: number) => Math.exp(40 * (value - 9));
    const worked = await workBack(answering(steep), scaleBetween(1, 10, "m"), 1, {
      sense: "at least",
      target: 1.7,
    });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(worked.nearest.answer).toBeGreaterThanOrEqual(1.7);
    expect(worked.nearest.answer).toBeLessThanOrEqual(1.7 * 1.01);
  });
});
