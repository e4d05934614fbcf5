// What is advised of today's choices: the rule's own, unless another surely loses less by the past years.

import { describe, expect, test } from "vitest";
import type { Weighed } from "../../src/season/advising.ts";
import type { ChoiceName, Run, Tried } from "../../src/season/holding-choices.ts";
import { judgedByOdds } from "../../src/season/judging.ts";

const YEARS = 20;

/** A choice by which the first bed loses so much in each year. */
function tried(choice: ChoiceName, beds: readonly string[], lost: (year: number) => number): Tried {
  const runs = Array.from(
    { length: YEARS },
    (_, year): Run => ({
      lost: Float64Array.of(lost(year), lost(year)),
      shortDays: new Int32Array(2),
      from: new Int32Array(2),
      left: 0,
    }),
  );
  return { choice, beds, orders: new Map(), runs };
}

const judged = (byRule: readonly string[], choices: readonly Tried[]) => {
  const seen: Weighed = {
    asking: ["a", "b"],
    held: [],
    byRule,
    tried: choices,
    worths: [1, 1],
    standing: [],
    first: 0,
  };
  return judgedByOdds(seen, YEARS);
};

describe("what is advised", () => {
  const all = (lost: (year: number) => number) => tried("water_all", [], lost);
  const hold = (lost: (year: number) => number, beds = ["b"]) => tried("hold_back", beds, lost);

  test("is what surely loses less than the rule's own choice", () => {
    const { advised, tie } = judged([], [all(() => 0.3), hold((year) => 0.2 + 0.001 * (year % 3))]);
    expect([advised.choice, tie]).toEqual(["hold_back", false]);
  });

  test("is the rule's own where the years do not tell, and that is a tie", () => {
    // By a hair better on the mean, by much better or worse in each year.
    const swings = (year: number) => 0.3 - 0.001 + (year % 2 === 0 ? 0.1 : -0.1);
    for (const [byRule, own] of [
      [[], "water_all"],
      [["b"], "hold_back"],
    ] as const) {
      const { advised, tie } = judged(byRule, [all(() => 0.3), hold(swings)]);
      expect([advised.choice, tie]).toEqual([own, true]);
    }
  });

  test("waters all where there is plenty, whatever the rule keeps back and however surely that loses less", () => {
    for (const lost of [0.0009, 0.005, 0.0099]) {
      const { advised, tie } = judged(
        ["b"],
        [all(() => lost), hold((year) => lost / 10 + 1e-6 * (year % 2))],
      );
      expect([advised.choice, tie]).toEqual(["water_all", true]);
    }
  });

  test("waters all for a gain that reads as none, and holds back for a small one where water is short", () => {
    const gaining = (gain: number) => hold((year) => 0.3 - gain + 1e-6 * (year % 2));
    expect(judged(["b"], [all(() => 0.3), gaining(0.0004)]).advised.choice).toBe("water_all");
    const small = judged(["b"], [all(() => 0.3), gaining(0.0013)]);
    expect([small.advised.choice, small.tie]).toEqual(["hold_back", false]);
  });

  test("never holds back everybody for a gain that does not matter, and it does for one that does", () => {
    const everybody = (gain: number) => hold((year) => 0.3 - gain + 1e-5 * (year % 2), ["a", "b"]);
    expect(judged(["a", "b"], [all(() => 0.3), everybody(0.0005)]).advised.choice).toBe("water_all");
    expect(judged(["a", "b"], [all(() => 0.3), everybody(0.005)]).advised.choice).toBe("hold_back");
  });

  test("holds back those beds that lose least, each choice told once", () => {
    const both = [all(() => 0.3), hold(() => 0.25), hold(() => 0.2, ["a"]), hold(() => 0.28, ["a", "b"])];
    const { advised, choices } = judged(["a", "b"], both);
    expect(advised.beds).toEqual(["a"]);
    expect(choices.map(({ choice }) => choice)).toEqual(["water_all", "hold_back"]);
  });
});
