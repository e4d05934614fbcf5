// Work back over 200 random questions: what is told is borne out by evaluating again, and a fine sweep agrees with "never".

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Met, type Wish, type WorkedBack, workBack } from "../../src/studies/work-back.ts";
import { type Scale, scaleBetween, valuesOf } from "../../src/units/scale.ts";

type Answer = (value: number) => number;

const GRAZE = 1e-9;

const isMet = ({ sense, target }: Wish, answer: number) =>
  sense === "at most" ? answer <= target : answer >= target;

/** Every whole number, or a fine row of values. */
const swept = (scale: Scale) =>
  scale.whole
    ? Array.from({ length: scale.high - scale.low + 1 }, (_, at) => scale.low + at)
    : valuesOf(scale, 4001);

/** Every crossing of a fine sweep, as the middle between its two neighbors; of whole numbers, every one of them. */
function sweptCrossings(of: Answer, scale: Scale, wish: Wish): readonly number[] {
  const values = swept(scale);
  return values.flatMap((value, at) => {
    const before = values[at - 1];
    if (before === undefined || isMet(wish, of(before)) === isMet(wish, of(value))) return [];
    return [(before + value) / 2];
  });
}

/** Met by more than a graze: where the best there is touches the target within the rounding of doubles, either is right. */
const isMetSomewhere = (of: Answer, scale: Scale, { sense, target }: Wish): boolean =>
  swept(scale).some((value) => (sense === "at most" ? target - of(value) : of(value) - target) > GRAZE);

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Kinds of answers over 0 to 10, or over whole numbers from 1. */
const FAMILIES: Readonly<Record<string, fc.Arbitrary<{ readonly of: Answer; readonly high?: number }>>> = {
  line: fc.tuple(real(-3, 3), real(-4, 4)).map(([slope, shift]) => ({ of: (x) => slope * (x - 5) + shift })),
  "two crossings": fc
    .tuple(real(3, 7), real(0.2, 2), real(-5, 2))
    .map(([middle, width, low]) => ({ of: (x) => ((x - middle) / width) ** 2 + low })),
  "never beyond": fc
    .tuple(real(0.5, 6), real(0.3, 2))
    .map(([most, pace]) => ({ of: (x) => most * (1 - Math.exp(-pace * x)) })),
  jump: fc
    .tuple(real(0.5, 9.5), real(-8, 0), real(0, 8))
    .map(([at, before, after]) => ({ of: (x) => (x >= at ? after : before) })),
  waves: fc
    .tuple(real(-3, 3), real(0, 4), real(0.2, 3))
    .map(([slope, height, times]) => ({ of: (x) => slope * (x - 5) + height * Math.sin(times * x) })),
  steps: fc.tuple(real(-3, 3), real(0, 4), real(0.2, 3)).map(([slope, height, times]) => ({
    of: (x) => Math.round(slope * (x - 5) + height * Math.sin(times * x)),
  })),
  count: fc
    .tuple(fc.integer({ min: 3, max: 60 }), real(1, 40), real(-6, 0))
    .map(([high, most, shift]) => ({ of: (x) => most / x + shift, high })),
  "count of waves": fc
    .tuple(fc.integer({ min: 3, max: 60 }), real(-1, 1), real(0, 4), real(0.1, 1))
    .map(([high, slope, height, times]) => ({
      of: (x) => Math.round(slope * (x - high / 2) + height * Math.sin(times * x)),
      high,
    })),
};

const SMOOTH = new Set(["line", "two crossings", "never beyond", "waves"]);

const questions = fc
  .tuple(fc.constantFrom(...Object.keys(FAMILIES)), real(0, 1), real(-6, 6), fc.boolean())
  .chain(([family, place, target, atMost]) =>
    (FAMILIES[family] as (typeof FAMILIES)[string]).map(({ of, high }) => {
      const scale = high === undefined ? scaleBetween(0, 10, "m") : scaleBetween(1, high, "1", true);
      const raw = scale.low + place * (scale.high - scale.low);
      const wish: Wish = { sense: atMost ? "at most" : "at least", target };
      return { family, of, scale, wish, present: scale.whole ? Math.round(raw) : raw };
    }),
  );

type Asked = {
  readonly family: string;
  readonly of: Answer;
  readonly scale: Scale;
  readonly wish: Wish;
  readonly present: number;
};

/** One step back does not meet it: a whole number beside it, or some value within a thousandth of the way. */
function isEdge({ of, scale, wish, present }: Asked, { value }: Met): boolean {
  if (scale.whole) return [value - 1, value + 1].some((near) => !isMet(wish, of(near)));
  const reach = (scale.high - scale.low) / 1000;
  // The present value does not meet it, however narrow the strip is that it stands in.
  if (Math.abs(value - present) <= reach) return true;
  return valuesOf(scaleBetween(value - reach, value + reach, "m"), 401).some(
    (near) => !isMet(wish, of(near)),
  );
}

/** Within the percent that is promised; of a target near nought, what a millionth of the scale moves the steepest of these answers. */
const isNear = ({ target }: Wish, answer: number): boolean =>
  Math.abs(answer - target) <= Math.max(0.01 * Math.abs(target), 1e-3);

function checkFound(asked: Asked, { nearest, others }: Extract<WorkedBack, { state: "found" }>) {
  const { family, of, scale, wish, present } = asked;
  const told = [nearest, ...others];
  for (const met of told) {
    expect(met.answer).toBe(of(met.value));
    expect(isMet(wish, met.answer)).toBe(true);
    if (SMOOTH.has(family)) expect(isNear(wish, met.answer)).toBe(true);
    else expect(isEdge(asked, met)).toBe(true);
  }
  const away = told.map(({ value }) => Math.abs(value - present));
  expect(away[0]).toBe(Math.min(...away));
  // Of an answer over a span, crossings closer to each other than two of the first values may be told as none.
  const crossings = sweptCrossings(of, scale, wish);
  const apart = scale.whole ? 0 : 0.7;
  const alone = crossings.filter(
    (at) => !crossings.some((other) => other !== at && Math.abs(other - at) < apart),
  );
  for (const at of alone) expect(told.some(({ value }) => Math.abs(value - at) <= 0.5)).toBe(true);
}

describe("work back over random questions", () => {
  test("200 of them: each is borne out by evaluating again, one step less does not do it, and never is never", async () => {
    const seen = new Set<string>();
    await fc.assert(
      fc.asyncProperty(questions, async (asked) => {
        const { family, of, scale, wish, present } = asked;
        const worked = await workBack(async (values) => values.map(of), scale, present, wish);
        seen.add(`${family}: ${worked.state}`);
        expect(worked.state === "already").toBe(isMet(wish, of(present)));
        if (worked.state === "never") {
          expect(isMetSomewhere(of, scale, wish)).toBe(false);
          expect(worked.best?.answer).toBe(of(worked.best?.value ?? Number.NaN));
        }
        if (worked.state === "found") checkFound(asked, worked);
      }),
      { numRuns: 200 },
    );
    for (const family of Object.keys(FAMILIES)) {
      expect([...seen].some((one) => one.startsWith(`${family}:`))).toBe(true);
    }
    for (const state of ["found", "already", "never"])
      expect([...seen].some((one) => one.endsWith(state))).toBe(true);
  });
});
