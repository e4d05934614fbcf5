// When an empty tank is full, by past years: against counting the days of rain by hand.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { tanksFull } from "../../src/season/tank-full.ts";
import { tankFullSaid } from "../../src/telling/tank-full.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { inputOf, MM, recordOf, roof, tank } from "./made.ts";

const TODAY = dayNumber(2031, 9, 1);

/** So many Octobers from 2001 on, each with rain from its first day and as many days later as its place, for a month. */
function wetOctobers(count: number, more: Partial<DailyRecord> = {}): DailyRecord {
  const firstDay = dayNumber(2001, 1, 1);
  const length = dayNumber(2001 + count + 1, 1, 1) - firstDay;
  const rain = new Float64Array(length);
  for (let place = 0; place < count; place++) {
    const first = dayNumber(2001 + place, 10, 1 + place) - firstDay;
    rain.fill(10 * MM, first, first + 30);
  }
  return recordOf(rain, firstDay, { madeUp: false, ...more });
}

/** A roof that brings a cubic meter a day of it, and a tank that takes three; a tub beside it that no rain fills. */
const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    roofs: [roof({ footprint: 100, runoffCoefficient: 1, wettingLoss: 0, firstFlush: 0 })],
    tanks: [tank(3), tank(0.1, { id: "tub" })],
    ...more,
  });

function full(record: DailyRecord, more: Partial<SeasonInput> = {}) {
  const found = tanksFull(plan(more), record, {
    today: TODAY,
    drying: "usual",
    levels: { tank: 0.7 },
    charges: {},
    lastSoaked: {},
  });
  if ("failed" in found) throw new Error(found.failed);
  return found;
}

describe("the day an empty tank is full", () => {
  test("is the third day of rain, whatever stands in it today; by ranks, and of the tanks that rain fills only", () => {
    const found = full(wetOctobers(19));
    expect(found.tanks).toEqual([
      {
        id: "tank",
        years: 19,
        members: 19,
        half: dayNumber(2031, 10, 12),
        late: dayNumber(2031, 10, 20),
        later: 1,
        never: 0,
      },
    ]);
    expect(tankFullSaid(found.tanks[0] as never, found)).toBe(
      "Full by Oct 12 in a middling year. In the slowest of 19 past years, those known for a year from this day on, not by Oct 20.",
    );
  });

  test("a tank too big for the roof's year is never full, and that is said", () => {
    const found = full(wetOctobers(19), { tanks: [tank(40)] });
    expect(found.tanks[0]).toMatchObject({ half: null, late: null, never: 19 });
    expect(tankFullSaid(found.tanks[0] as never, found)).toBe("Not full within a year in 19 of 19 years.");
  });

  test("made-up weather tells a usual day and no odds; few years say that they are few", () => {
    const madeUp = full(wetOctobers(19, { madeUp: true }));
    expect(tankFullSaid(madeUp.tanks[0] as never, madeUp)).toBe(
      "Full by about Oct 12 in usual weather, without rain not at all. The weather is made up.",
    );
    const few = full(wetOctobers(4));
    expect(few).toMatchObject({ few: true });
    expect(tankFullSaid(few.tanks[0] as never, few)).toMatch(
      /^Full by Oct \d+ in a middling year\. Only 4 years of weather: a rough guess\.$/,
    );
  });
});
