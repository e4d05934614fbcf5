// A share reads as 100 %, and is green, only where all of it is there; a rule is blamed in words that are true of a part of the days.

import { expect, test } from "vitest";
import { stateTone } from "../../src/telling/state-tone.ts";
import { lackedMost } from "../../src/telling/words/bounds.ts";
import { isWholeShare, roundedPercent } from "../../src/units/rounding.ts";

test.each([
  [0.996, 99, "trouble"],
  [0.9999, 99, "trouble"],
  [1, 100, "growth"],
])("a share of %d is shown as %d %% in the color of %s", (share, shown, tone) => {
  expect(roundedPercent(share * 100)).toBe(shown);
  expect(isWholeShare(share)).toBe(shown === 100);
  expect(stateTone("season.share_met", share)).toBe(tone);
});

test("where the rule is short most often, it is not said that no watering fell short: some may have", () => {
  expect(lackedMost("rule", "battery")).not.toMatch(/no watering/);
});
