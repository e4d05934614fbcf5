// Work back against functions whose crossings are known.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inRoundValues, type Wish, workBack } from "../../src/studies/work-back.ts";
import { helping, moving } from "../../src/studies/worth-turning.ts";
import { roundStep, type Scale, scaleBetween } from "../../src/units/scale.ts";

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

/** Whether a step of the hand leads to it. */
const isRound = (scale: Scale, value: number): boolean =>
  roundStep(scale, roundStep(scale, value, 1), -1) === value ||
  roundStep(scale, roundStep(scale, value, -1), 1) === value;

describe("what is offered", () => {
  const inTurn = async (scale: Scale, of: (value: number) => number, present: number, wish: Wish) =>
    inRoundValues(answering(of), scale, wish, await workBack(answering(of), scale, present, wish));

  test("is a step of the hand that does it too, on either side of the edge, the nearest such", async () => {
    const gallons = scaleBetween(20, 5000, "gal");
    const fewer = await inTurn(gallons, (value) => 43 - value / 20, 275, { sense: "at most", target: 15.8 });
    if (fewer.state !== "found") throw new Error(fewer.state);
    expect(fewer.nearest).toEqual({ value: 550, answer: 15.5 });
    const feet = scaleBetween(4, 100, "ft");
    const shorter = await inTurn(feet, (value) => 80 - 3 * value, 40, { sense: "at least", target: 44.6 });
    if (shorter.state !== "found") throw new Error(shorter.state);
    expect(shorter.nearest).toEqual({ value: 11.5, answer: 45.5 });
  });

  test("is what was found where no round value beside it does it", async () => {
    const strip = (value: number) => (value > 20.331 && value < 20.339 ? 1 : (value - 20) / 1000);
    const worked = await inTurn(scaleBetween(20, 21, "m"), strip, 20, { sense: "at least", target: 1 });
    if (worked.state !== "found") throw new Error(worked.state);
    expect(worked.nearest.answer).toBe(1);
    expect(strip(worked.nearest.value)).toBe(1);
  });

  test("is as good as the best there is where none does it, and whole numbers stay the least that do", async () => {
    const hill = (value: number) => -((value - 333.3) ** 2);
    const scale = scaleBetween(100, 900, "gal");
    const never = await inTurn(scale, hill, 100, { sense: "at least", target: 1 });
    if (never.state !== "never" || !never.best) throw new Error(never.state);
    expect(never.best.answer).toBe(hill(never.best.value));
    const cans = await inTurn(scaleBetween(1, 5000, "1", true), (value) => 100 / value, 1, {
      sense: "at most",
      target: 0.73,
    });
    if (cans.state !== "found") throw new Error(cans.state);
    expect(cans.nearest.value).toBe(137);
  });

  test("over random lines it meets the wish, is round, and no nearer round value does", async () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    await fc.assert(
      fc.asyncProperty(
        real(-3, 3).filter((slope) => Math.abs(slope) > 0.01),
        real(50, 4900),
        fc.boolean(),
        async (slope, crossing, atMost) => {
          const scale = scaleBetween(20, 5000, "gal");
          const line = (value: number) => slope * (value - crossing);
          const wish: Wish = { sense: atMost ? "at most" : "at least", target: 0 };
          const isMet = (value: number) => (atMost ? line(value) <= 0 : line(value) >= 0);
          const present = isMet(20) ? 5000 : 20;
          const worked = await inTurn(scale, line, present, wish);
          if (worked.state !== "found") throw new Error(worked.state);
          const { value, answer } = worked.nearest;
          expect(answer).toBe(line(value));
          expect(isMet(value)).toBe(true);
          expect(isRound(scale, value)).toBe(true);
          expect(isMet(roundStep(scale, value, present === 20 ? -1 : 1))).toBe(false);
        },
      ),
    );
  });
});

describe("what is worth turning", () => {
  const ENDS: Readonly<Record<string, readonly (number | null)[]>> = {
    still: [43, 43],
    worse: [50, 43],
    little: [40, 43],
    enough: [43, 12],
    none: [null, null],
  };
  const atEnds = async (number: string) => ENDS[number] ?? [];
  const wish: Wish = { sense: "at most", target: 21 };

  test("the first that comes to the wish, else the first that helps, never one that moves nothing", async () => {
    const all = ["none", "still", "worse", "little", "enough"];
    expect(await helping(all, wish, 43, atEnds)).toBe("enough");
    expect(await helping(all.slice(0, 4), wish, 43, atEnds)).toBe("little");
    expect(await helping(all.slice(0, 3), wish, 43, atEnds)).toBe(null);
    expect(await moving(all, 43, atEnds)).toEqual(["worse", "little", "enough"]);
  });
});
