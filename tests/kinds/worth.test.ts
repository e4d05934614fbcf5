// What a bed is to its grower: a word or a number of one's own, taken to the season and to no answer of it.

import { describe, expect, test } from "vitest";
import { valueIn } from "../../src/graph/readers.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const bedOf = (givens: Givens): Whole =>
  workedOut(
    sheetOf({
      bed: ["bed", { watered_by: ["cans"], ...givens }],
      cans: ["carry", { from: "tank" }],
      tank: ["tank", { shape: "other", capacity: [400, "gal"], water_height: [4, "ft"] }],
    }),
  );

const worthOf = (whole: Whole): number | undefined =>
  (valueIn(whole.results.get("season.plan")) as SeasonInput | null)?.beds[0]?.worth;

describe("what a bed is to its grower", () => {
  test.each([
    [{}, 3],
    [{ worth: "must_live" }, 10],
    [{ worth: "good_to_have" }, 3],
    [{ worth: "may_go" }, 1],
    [{ worth: "may_go", worth_weight: [4.5, "1"] }, 4.5],
  ] as [Givens, number][])("%j counts %d a square meter", (givens, worth) => {
    expect(worthOf(bedOf(givens))).toBe(worth);
  });

  test("moves no answer of the season by itself", () => {
    const [usual, most] = [bedOf({}), bedOf({ worth: "must_live" })];
    for (const row of ["season_got", "days_short", "season_need", "peak_day_need"])
      expect(numberAt(most, `bed.${row}`), row).toBe(numberAt(usual, `bed.${row}`));
  });
});
