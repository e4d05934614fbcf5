// Days since the first note that no record measured: they rain as in the middling year, and made-up weather never fell.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Happened } from "../../src/happened/happened.ts";
import { assumedOf } from "../../src/season/moment-today.ts";
import { prepareSeason } from "../../src/season/run.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { tries } from "../tries.ts";
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
    expect(taken([dip])).toEqual({
      spells: [{ first: TODAY - 10, last: TODAY - 1 }],
      year: 2004,
      madeUp: true,
    });
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
    expect(taken([dip, gauge(11, 0), gauge(3, 0)])).toMatchObject({
      spells: [{ first: TODAY - 2, last: TODAY - 1 }],
    });
    // What the gauge told in between is not among them.
    expect(taken([dip, gauge(8, 0), gauge(5, 3)])?.spells).toEqual([
      { first: TODAY - 10, last: TODAY - 9 },
      { first: TODAY - 4, last: TODAY - 1 },
    ]);
  });

  /** Rain on each of the ten days before today, by year [mm]. */
  const years = fc.array(
    fc.array(fc.constantFrom(...([0, 0, 1, 5, 20] as number[])), { minLength: 10, maxLength: 10 }),
    {
      minLength: YEARS,
      maxLength: YEARS,
    },
  );
  const recordOfYears = (rains: readonly (readonly number[])[]) => {
    const rain = new Float64Array(365 * YEARS + 1);
    rains.forEach((days, at) => {
      days.forEach((depth, day) => {
        rain[dayNumber(2001 + at, 7, 10) + day - FIRST] = depth * MM;
      });
    });
    return recordOf(rain, FIRST, { madeUp: true });
  };
  const middleOf = (sums: readonly number[]) => [...sums].sort((a, b) => a - b)[(YEARS - 1) / 2] as number;

  test("with the gauge it is what was read and the middle of the years' rain on the other days, no more and no less", () => {
    fc.assert(
      fc.property(years, fc.integer({ min: 0, max: 9 }), fc.constantFrom(0, 2, 12), (rains, on, read) => {
        const others = rains.map((days) =>
          days.reduce((sum, fell, day) => (day === on ? sum : sum + fell), 0),
        );
        const whole = rains.map((days) => days.reduce((sum, fell) => sum + fell, 0));
        const of = recordOfYears(rains);
        const noted = [dip, gauge(10 - on, read * MM)];
        expect(caught(noted, of)).toBeCloseTo(20 * MM * (read + middleOf(others)), 9);
        expect(caught([dip], of)).toBeCloseTo(20 * MM * middleOf(whole), 9);
        // A reading of as much as any year had on that day is never worse than none, and one of nothing never better.
        const most = Math.max(...rains.map((days) => days[on] as number));
        const withReading = (depth: number) => caught([dip, gauge(10 - on, depth * MM)], of);
        expect(withReading(most)).toBeGreaterThanOrEqual(caught([dip], of) - 1e-9);
        expect(withReading(0)).toBeLessThanOrEqual(caught([dip], of) + 1e-9);
        expect(withReading(read + 1)).toBeGreaterThan(withReading(read));
      }),
      { numRuns: tries(40) },
    );
  });
});
