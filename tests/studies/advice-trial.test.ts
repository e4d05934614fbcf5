// The advice on years that nothing was tuned on: the driest third of each half of a record of a hundred years, in three places,
// with LONG=1. Not met yet: over the six driest years of one half, in the first place, tuned as before water was saved up to a
// mark, it lost 16 % less than seven days kept and was better in 6 of 6, but dynamic programming lost 19 % less than it did. The record is made here by a chain of wet days that is no part
// of the product, and brought in as a file.

import { describe, expect, test } from "vitest";
import { broughtIn, type Fold, fold, longFile, PLACES } from "./advice-trial.ts";

const LONG = process.env.LONG === "1";
const record = broughtIn(longFile(11));
const sum = (losses: readonly number[]): number => losses.reduce((all, loss) => all + loss, 0);

/** Years in which the advice loses less than seven days kept, of how many, and the share of that loss that it saves. */
function against({ seven, advice }: Pick<Fold, "seven" | "advice">) {
  const better = advice.filter((loss, year) => loss < (seven[year] as number)).length;
  return { better, years: advice.length, saved: 1 - sum(advice) / sum(seven) };
}

test("a file of a hundred years is brought in as one record", () => {
  expect(record.rain.length).toBe(36_525);
});

test.runIf(LONG)(
  "in the driest year of a half the advice loses less than keeping seven days, where the beds are worth unlike",
  () => {
    const [, unlike] = PLACES;
    const one = fold(unlike as (typeof PLACES)[number], record, 0, { members: 6, most: 1, isBest: false });
    expect(against(one).saved).toBeGreaterThan(0.03);
  },
);

describe.runIf(LONG)("tuned on one half and tried on the driest third of the other, both ways", () => {
  const folds = () =>
    PLACES.flatMap((place) =>
      ([0, 1] as const).map((half) => fold(place, record, half, { members: 20, most: 17 })),
    );

  test("is better than keeping seven days, near the best there is, and never much worse", () => {
    const all = folds();
    const each = all.map(against);
    const years = each.reduce((count, one) => count + one.years, 0);
    const better = each.reduce((count, one) => count + one.better, 0);
    const [seven, advice] = (["seven", "advice"] as const).map((of) => sum(all.flatMap((one) => one[of])));
    console.log(
      each,
      all.map((one) => sum(one.advice) / sum(one.best) - 1),
    );
    expect(better / years).toBeGreaterThanOrEqual(0.85);
    expect(1 - (advice as number) / (seven as number)).toBeGreaterThanOrEqual(0.08);
    for (const { saved } of each) expect(saved).toBeGreaterThanOrEqual(0.03);
    for (const one of all)
      for (const [year, loss] of one.advice.entries())
        expect(loss - (one.seven[year] as number)).toBeLessThanOrEqual(0.05);
    for (const one of all) expect(sum(one.advice) / sum(one.best)).toBeLessThanOrEqual(1.05);
  }, 1_800_000);
});
