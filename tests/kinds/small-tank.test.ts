// A watering larger than what its small tank holds: the pump's time, and the wait for the tank to fill again.

import { describe, expect, test } from "vitest";
import type { Worksheet } from "../../src/document/worksheet.ts";
import {
  cautionIds,
  type Givens,
  given,
  numberAt,
  sheetOf,
  type Whole,
  workedOut,
} from "./made-up-sheets.ts";

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
      cell: ["battery", { charged: "mains" }],
      lifter: ["pump", { powered_by: "cell" }],
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

/** Worked out with its beds watered at an hour. */
const wateredAt = (hour: number, sheet: Worksheet) =>
  workedOut({
    ...sheet,
    cards: sheet.cards.map((card) =>
      card.id === "site" ? { ...card, givens: { water_at: given([hour, "h"]) } } : card,
    ),
  });

describe("a tub of 44 gal on a float of the usual band, refilled through a hole until after dark", () => {
  const filled = (gallons: number, hole: number) =>
    wateredAt(
      7,
      sheetOf({
        up: [
          "tank",
          {
            ...{ capacity: [100_000, "gal"], water_height: [8, "ft"] },
            ...{ ground_height: [6, "ft"], start_share: [100, "%"] },
          },
        ],
        tub: ["tank", { capacity: [gallons, "gal"], water_height: [24, "in"], outlet_height: [0, "in"] }],
        feed: [
          "line",
          {
            ...{ from: "up", to: "tub", length: [100, "ft"] },
            ...{ shut_level: [22, "in"], valve_bore: [hole, "mm"] },
          },
        ],
        can: ["carry", { from: "tub" }],
        plot: ["bed", { watered_by: ["can"], length: [40, "ft"], width: [10, "ft"] }],
        roofed: ["roof", { footprint: [3000, "ft2"], drains_to: "up" }],
      }),
    );
  const said = (whole: Whole) => whole.results.get("season.binding");

  test("says the tub whichever way it ends after dark, on the same days, and a tub of 100 gal changes both", () => {
    // Of a brim-full upper tank the faster takes about 14.7 h to 98 %: past the 12.7 h from seven to the latest sunset here.
    const slow = filled(44, 0.78);
    const faster = filled(44, 0.85);
    const bigger = filled(100, 0.85);
    for (const whole of [slow, faster]) {
      expect(said(whole)).toMatchObject({ value: "tankful" });
      expect(numberAt(whole, "feed.refill_time")).toBeGreaterThan(14 * 3600);
    }
    expect(numberAt(faster, "feed.refill_time")).toBeLessThan(0.9 * numberAt(slow, "feed.refill_time"));
    // Within one day of the 20 seasons: by the next watering a closing valve leaves the slow one some 40 mL short of its shut level.
    const days = (whole: Whole) => numberAt(whole, "season.days_short") * numberAt(whole, "season.seasons");
    expect(Math.abs(days(faster) - days(slow))).toBeLessThan(1.01);
    expect(said(bigger)).not.toMatchObject({ value: "tankful" });
    expect(numberAt(bigger, "season.days_short")).toBeLessThan(numberAt(slow, "season.days_short") / 2);
  });
});
