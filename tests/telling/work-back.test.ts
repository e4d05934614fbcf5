// What working back begins from is a wish that somebody has: more of what is good, less of what is not.

import { describe, expect, test } from "vitest";
import { boundsBehind, likelyWish } from "../../src/telling/work-back.ts";
import type { MeasureName } from "../../src/units/measures.ts";

describe("the first wish is in the good direction", () => {
  const now = 8;
  const MORE: readonly (readonly [string, MeasureName])[] = [
    ["battery.waterings_per_charge", "count"],
    ["season.days_of_autonomy", "span"],
    ["totes.days_of_autonomy", "span"],
    ["tub.shortest_interval", "span"],
    ["season.got", "volume"],
  ];
  const LESS: readonly (readonly [string, MeasureName])[] = [
    ["season.worst_season_days_short", "count"],
    ["season.seasons_short", "count"],
    ["hose.watering_time", "duration"],
    ["hose.refill_wait", "duration"],
    ["cans.trips_per_watering", "count"],
    ["cans.weight_per_trip", "mass"],
    ["season.spill", "volume"],
    ["cost.total", "money"],
  ];
  test.each(MORE)("more is wished of %s", (id, measure) => {
    const wish = likelyWish(id, measure, now);
    expect(wish?.sense).toBe("at least");
    expect(wish?.target).toBeGreaterThan(now);
  });
  test.each(LESS)("less is wished of %s", (id, measure) => {
    const wish = likelyWish(id, measure, now);
    expect(wish?.sense).toBe("at most");
    expect(wish?.target).toBeLessThan(now);
  });
});

test("a share is wished half way to all, never beyond; of a year or an hour nothing is", () => {
  expect(likelyWish("season.share_met", "share", 0.8)).toEqual({ sense: "at least", target: 0.9 });
  expect(likelyWish("season.worst_season", "year", 2014)).toBe(null);
  expect(likelyWish("hose.watering_end", "clock", 7 * 3600)).toBe(null);
});

test("counts are wished whole, and are not what they are already", () => {
  expect(likelyWish("season.seasons_short", "count", 13)?.target).toBe(6);
  expect(likelyWish("battery.waterings_per_charge", "count", 5.3)?.target).toBe(8);
});

test("a part's own time is freed by what it waits for, a short day by what gives out first", () => {
  expect(boundsBehind("hose.refill_wait")).toEqual(["refill"]);
  expect(boundsBehind("season.worst_season_days_short")).toBe(null);
});
