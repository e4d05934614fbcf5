// Days since the first note that no record measured: they rain as in the middling year, and made-up weather never fell.

import { describe, expect, test } from "vitest";
import type { Happened } from "../../src/happened/happened.ts";
import { assumedOf } from "../../src/season/moment-today.ts";
import { prepareSeason } from "../../src/season/run.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { happening, morning } from "./carried.ts";
import { bed, crop, inputOf, MM, recordOf, roof, tank } from "./made.ts";

const FIRST = dayNumber(2001, 1, 1);
const YEARS = 5;
const TODAY = dayNumber(2021, 7, 20);
/** A roof of 20 m2 over a tank of 4 m3 that nothing is taken from. */
const PLAN = inputOf({
  roofs: [roof({ footprint: 20, runoffCoefficient: 1 })],
  tanks: [tank(4)],
  beds: [bed({ wateredBy: [], crops: [crop({ planted: "05-01" })] })],
});

/** So much rain on each July 15, year by year [mm]. */
const JULY = [9, 1, 30, 4, 2];
function record(madeUp: boolean, firstDay = FIRST) {
  const rain = new Float64Array(365 * YEARS + 1);
  JULY.forEach((depth, at) => {
    rain[dayNumber(2001 + at, 7, 15) - FIRST] = depth * MM;
  });
  return recordOf(rain, firstDay, { madeUp });
}

const dip = happening("dipped", "tank", TODAY - 10, 0.25, { side: "before" });
const gauge = (days: number, depth: number): Happened => happening("rain", "site", TODAY - days, depth);
const caught = (happened: readonly Happened[], of = record(true)) =>
  (morning(PLAN, of, TODAY, happened).tanks["tank"] as number) -
  (morning(PLAN, recordOf(new Float64Array(1826), FIRST), TODAY, [dip]).tanks["tank"] as number);
const taken = (happened: readonly Happened[], of = record(true)) => {
  const whole = prepareSeason(PLAN, of);
  if ("failed" in whole) throw new Error(whole.failed);
  const given = { today: TODAY, drying: "usual" as const, levels: {}, charges: {}, lastSoaked: {}, happened };
  return assumedOf(whole, given).rain;
};

describe("rain that nobody measured", () => {
  test("is that of the year whose rain over those days is the middle one, made up or measured", () => {
    // 1, 2, 4, 9 and 30 mm: 4 mm on 20 m2.
    for (const madeUp of [true, false]) expect(caught([dip], record(madeUp))).toBeCloseTo(0.08, 9);
    expect(taken([dip])).toEqual({ first: TODAY - 10, last: TODAY - 1, year: 2004, madeUp: true });
    expect(taken([])).toBeNull();
  });

  test("of a made-up record's own year never fell: it counts as any other", () => {
    // The record's last year is this one, and in it 2 mm are made up; without it 1, 4, 9 and 30: of an even count the drier.
    const shifted = record(true, FIRST + dayNumber(2021, 1, 1) - dayNumber(2005, 1, 1));
    expect(caught([dip], shifted)).toBeCloseTo(0.08, 9);
    const measured = { ...shifted, key: "measured", madeUp: false };
    expect(caught([dip], measured)).toBeCloseTo(0.04, 9);
    expect(taken([dip], measured)).toBeNull();
  });

  test("gives way to the gauge on the days that it tells of, and to nothing else", () => {
    expect(caught([dip, gauge(5, 10 * MM)])).toBeCloseTo(0.2, 9);
    expect(caught([dip, gauge(3, 10 * MM)])).toBeCloseTo(0.08 + 0.2, 9);
    // Read before the note and after it, it tells of all days between.
    expect(caught([dip, gauge(11, 0), gauge(1, 10 * MM)])).toBeCloseTo(0.2, 9);
    expect(taken([dip, gauge(11, 0), gauge(1, 0)])).toBeNull();
    expect(taken([dip, gauge(11, 0), gauge(3, 0)])).toMatchObject({ first: TODAY - 2, last: TODAY - 1 });
  });
});
