import { expect, test } from "vitest";
import { stateTone } from "../../src/telling/state-tone.ts";

test.each([
  ["season.days_short", 40, "trouble"],
  ["season.worst_season_days_short", 0, "growth"],
  ["season.longest_short_run", 3, "trouble"],
  ["bed.share_met", 0.4, "trouble"],
  ["season.share_met", 0.994, "trouble"],
  ["season.share_met", 1, "growth"],
  ["season.reliability_years", 0.4, "trouble"],
  // Neither says that anything is short.
  ["season.short_first_day", 40, null],
  ["bed.shortest_interval", 2, null],
  ["totes.share_full", 0.4, null],
  ["season.short_first", "bed", null],
])("%s at %s is %s", (id, value, tone) => {
  expect(stateTone(id, value)).toBe(tone);
});
