// The advice on years that nothing was tuned on. Not what it should be yet: over the six driest years of one half, in the first
// place, as measured before water was saved up to a mark, it lost 16 % less than seven days kept and was better in 6 of 6, but
// 23 % more than dynamic programming; 5 % are wanted. The record is made here by a chain of wet days that is no part of the
// product, and brought in as a file.

import { beforeAll, describe, expect, test } from "vitest";
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

// What is wanted of it, at the wanted figures, not all of which are met: half an hour and more, asked for by TRIAL=1.
describe.runIf(process.env.TRIAL === "1")(
  "tuned on one half and tried on the driest third of the other, both ways",
  () => {
    let all: readonly Fold[] = [];
    beforeAll(() => {
      all = PLACES.flatMap((place) =>
        ([0, 1] as const).map((half) => fold(place, record, half, { members: 20, most: 17 })),
      );
      console.log(all.map((one) => ({ ...against(one), overBest: sum(one.advice) / sum(one.best) - 1 })));
    }, 7_200_000);

    test("is better than keeping seven days in at least 85 % of the years", () => {
      const each = all.map(against);
      const [better, years] = [sum(each.map((one) => one.better)), sum(each.map((one) => one.years))];
      expect(better / years).toBeGreaterThanOrEqual(0.85);
    });

    test("saves at least 8 % of what seven days lose, and 3 % in each place", () => {
      const [seven, advice] = (["seven", "advice"] as const).map((of) => sum(all.flatMap((one) => one[of])));
      expect(1 - (advice as number) / (seven as number)).toBeGreaterThanOrEqual(0.08);
      for (const one of all) expect(against(one).saved).toBeGreaterThanOrEqual(0.03);
    });

    test("is worse in no year by more than a twentieth of the season's worth", () => {
      for (const { advice, seven } of all)
        for (const [year, loss] of advice.entries())
          expect(loss - (seven[year] as number)).toBeLessThanOrEqual(0.05);
    });

    test("loses at most a twentieth more than dynamic programming in each place", () => {
      for (const one of all) expect(sum(one.advice) / sum(one.best)).toBeLessThanOrEqual(1.05);
    });
  },
);
