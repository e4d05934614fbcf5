// A watering larger than what its small tank holds: the pump's time, and the wait for the tank to fill again.

import { expect, test } from "vitest";
import { cautionIds, type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const LINE: Givens = { from: "upper", to: "tub", length: [50, "ft"], valve_bore: [4, "mm"] };

function pumpedFrom(tub: Givens, hasLine = true): Whole {
  return workedOut(
    sheetOf({
      upper: [
        "tank",
        {
          capacity: [9000, "gal"],
          water_height: [4, "ft"],
          ground_height: [4, "ft"],
          start_share: [100, "%"],
        },
      ],
      tub: ["tank", { water_height: [24, "in"], outlet_height: [0, "in"], ...tub }],
      ...(hasLine ? { feed: ["line", LINE] as const } : {}),
      lifter: ["pump", {}],
      wand: ["delivery", { pump: "lifter", from: "tub" }],
      plot: ["bed", { watered_by: ["wand"], length: [40, "ft"] }],
    }),
  );
}

test("says both where the tub holds less, and the wait is the refills between the tankfuls", () => {
  const whole = pumpedFrom({ capacity: [44, "gal"] });
  const tankfuls = numberAt(whole, "wand.tankfuls_per_watering");
  expect(tankfuls).toBe(
    Math.ceil(numberAt(whole, "wand.largest_watering") / numberAt(whole, "tub.reachable")),
  );
  expect(tankfuls).toBeGreaterThan(1);
  expect(numberAt(whole, "wand.refill_wait")).toBeCloseTo(
    (tankfuls - 1) * numberAt(whole, "feed.refill_time"),
    6,
  );
  expect(cautionIds(whole)).toContain("wand: waits_for_refill");
});

test("waits for nothing where the tank holds it all", () => {
  const whole = pumpedFrom({ capacity: [500, "gal"] });
  expect(numberAt(whole, "wand.refill_wait")).toBe(0);
  expect(cautionIds(whole)).not.toContain("wand: waits_for_refill");
});

test("where no line fills it again, says that the rest waits for rain", () => {
  const whole = pumpedFrom({ capacity: [44, "gal"] }, false);
  expect(whole.results.get("wand.refill_wait")).toMatchObject({ state: "none" });
  expect(cautionIds(whole)).toContain("wand: more_than_the_tank");
});
