// Why a line of the week gives less than is asked for: the least allowance of that very watering, by hand arithmetic.

import { describe, expect, test } from "vitest";
import type { DayLine } from "../../src/season/day-lines.ts";
import type { BedPart, SeasonInput } from "../../src/season/input.ts";
import { weekPlan } from "../../src/season/week-plan.ts";
import { whyShort } from "../../src/telling/words/bounds.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { HOUR } from "../../src/units/constants.ts";
import { bed, carry, crop, draw, inputOf, LITRE, line, MM, recordOf, steadyEto, tank } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const TODAY = dayNumber(2021, 6, 15);

/** Uses 4 mm a day under cover, and asks on its set day for so much, whatever its soil. */
const wanting = (id: string, litres: number, more: Partial<BedPart> = {}): BedPart =>
  bed({
    id,
    covered: true,
    crops: [crop({ planted: "05-01", stages: [0, 0, 120, 0], kcMiddle: 1, rootStart: 0.3 })],
    rule: { kind: "weekdays", days: [1, 2, 3, 4, 5, 6, 7], volume: litres * LITRE },
    wateredBy: ["cans"],
    ...more,
  });

/** A tub of 200 L, full, under a big tank whose hose fills it in 15 h: after dark, and before the next watering. */
function plan(beds: readonly BedPart[], more: Partial<SeasonInput> = {}): SeasonInput {
  const opening = (200 * LITRE) / (15 * HOUR) / Math.sqrt(2 * 9.80665 * 2);
  return inputOf({
    start: "05-01",
    end: "08-31",
    eto: steadyEto(4 * MM),
    tanks: [tank(40, { id: "high", floor: 2, startShare: 1 }), tank(0.2, { id: "tub", startShare: 1 })],
    lines: [
      line({
        from: "high",
        to: "tub",
        startHeight: 2,
        endHeight: 1,
        shutLevel: 1,
        valveBand: 0.01,
        opening,
      }),
    ],
    carries: [carry({ id: "cans", from: "tub" })],
    beds,
    ...more,
  });
}

function today(input: SeasonInput) {
  const answer = weekPlan(input, recordOf(new Float64Array(365), YEAR), {
    today: TODAY,
    days: 1,
    drying: "usual",
    levels: { tub: 1, high: 1 },
    charges: {},
    lastSoaked: {},
  });
  if ("failed" in answer) throw new Error(answer.failed);
  const of = (bed: string, why: DayLine["why"], volume: number) => [
    bed,
    { why, litres: Math.round(volume / LITRE) },
  ];
  return Object.fromEntries([
    ...answer.lines.map(({ bed: id, why, volume }) => of(id, why, volume)),
    ...answer.refused.map(({ bed: id, why }) => of(id, why, 0)),
  ]);
}

describe("a tub of 200 L", () => {
  test("alone before a bed that asks for 250 L holds less than a watering", () => {
    expect(today(plan([wanting("first", 250)]))).toEqual({ first: { litres: 200, why: "tankful" } });
  });

  test("that the bed before has emptied gives the next nothing because of that, whether it asks for more than a tankful or less", () => {
    // Of 250 L the tub's size keeps 50, and what the first drew 200 of them; of 150 L its size keeps none.
    for (const asks of [250, 150])
      expect(today(plan([wanting("first", 200), wanting("second", asks)]))).toMatchObject({
        first: { litres: 200, why: null },
        second: { litres: 0, why: "others_first" },
      });
  });

  test("of which another took some says which kept more: what that drew, or the size of the tub", () => {
    const second = (drew: number, asks: number) =>
      today(plan([wanting("first", drew), wanting("second", asks)]))["second"];
    // 250 - 200 = 50 is more than 40; 240 - 200 = 40 is less than 60.
    expect(second(40, 250)).toEqual({ litres: 160, why: "tankful" });
    expect(second(60, 240)).toEqual({ litres: 140, why: "others_first" });
  });

  test("rinsed from before is no other's watering where that matters less than its size", () => {
    const rinsed = (litres: number) =>
      today(plan([wanting("first", 250)], { draws: [draw(litres * LITRE, { from: "tub" })] }))["first"];
    expect(rinsed(10)).toEqual({ litres: 190, why: "tankful" });
    expect(rinsed(100)).toEqual({ litres: 100, why: "others_first" });
  });

  test("that stands empty while others need the water above is empty, whatever is held back for them", () => {
    // Seven of its days are kept for the first: 4 mm on its 10 m2 over 0.8 are 50 L a day, 350 L. Of 400 L above
    // and 140 in the tub 190 are free, which lets 190 of 240 L through; the tub has 140 for it.
    const second = wanting("second", 240, { priority: 2 });
    const input = plan([wanting("first", 60), second], { holdDays: 7 });
    const told = (high: number) =>
      today({
        ...input,
        tanks: input.tanks.map((one) => (one.id === "high" ? tank(high, { id: "high", floor: 2 }) : one)),
      });
    expect(told(0.4)["second"]).toMatchObject({ litres: 140, why: "others_first" });
    // With 250 L above it 250 + 140 - 350 = 40 L are free: that is less than the tub has.
    expect(told(0.25)["second"]).toMatchObject({ litres: 40, why: "held_back" });
  });
});

test("what others drew first is said with the tank's name, for today and for a day that is past", () => {
  expect(whyShort("others_first", "battery", { reach: "Tub and Totes", filled: "Tub" })).toBe(
    "others draw first on what Tub holds",
  );
  expect(whyShort("others_first", "battery")).toBe("others draw first on what the small tank holds");
});
