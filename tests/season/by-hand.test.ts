// What a plan counts on its grower for: batteries that no panel charges where they stand.

import { expect, test } from "vitest";
import { weekPlan } from "../../src/season/week-plan.ts";
import { byHandWords } from "../../src/telling/today.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { battery, bed, crop, delivery, inputOf, recordOf, tank } from "./made.ts";

const FIRST = dayNumber(2020, 1, 1);
// A Monday.
const TODAY = dayNumber(2021, 7, 5);

function counted(charged: "mains" | "in_place" | "carried" | "swapped", wateredBy = ["pump"]) {
  const input = inputOf({
    tanks: [tank(2, { startShare: 1 })],
    batteries: [battery({ id: "cell", charged, carriedEvery: 3 })],
    deliveries: [delivery({ from: "tank", battery: "cell" })],
    beds: [bed({ wateredBy, crops: [crop({ planted: "05-01", stages: [0, 0, 150, 0] })] })],
  });
  const given = {
    today: TODAY,
    days: 7,
    drying: "usual" as const,
    levels: { tank: 1 },
    charges: {},
    lastSoaked: {},
  };
  const plan = weekPlan(input, recordOf(new Float64Array(731), FIRST), given);
  if ("failed" in plan) throw new Error(plan.failed);
  return { plan, said: byHandWords(plan.byHand, { titleOf: () => "Cell" }) };
}

test("a plan whose pump runs on a battery says how that is charged, where no panel does it by itself", () => {
  expect(counted("mains").plan.lines.length).toBeGreaterThan(0);
  expect(counted("mains").said).toEqual(["Counts on Cell being charged in the house each night."]);
  expect(counted("swapped").said).toEqual([
    "Counts on Cell being swapped in the evening for the one at the panel.",
  ]);
  expect(counted("in_place").said).toEqual([]);
});

test("one that is carried is named with its days, one in three", () => {
  const { plan, said } = counted("carried");
  const days = plan.byHand[0]?.days ?? [];
  expect(days.length).toBeGreaterThanOrEqual(2);
  expect(days.every((day, at) => at === 0 || day - (days[at - 1] as number) === 3)).toBe(true);
  expect(said[0]).toMatch(/^Counts on Cell being carried to the panel on \w{3}(, \w{3})* and \w{3}\.$/);
});

test("nothing is counted on where nothing is watered by it", () => {
  expect(counted("mains", []).said).toEqual([]);
});
