// Where a crop stands: its first coefficient by how often the ground is wetted, the others by the record's own air.

import { describe, expect, test } from "vitest";
import { saturationVapourPressure } from "../../src/physics/air.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { bedDays } from "../../src/season/bed-days.ts";
import type { BedPart, CropPart } from "../../src/season/input.ts";
import { skyOf } from "../../src/season/sky.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import { bed, crop, MM, recordOf } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const at = (month: number, day: number) => dayNumber(2021, month, day) - YEAR;

/** Coefficient of the whole bed on a day. */
function kcOn(part: BedPart, record: DailyRecord, eto: number, day: number): number {
  const sky = skyOf(record, new Float64Array(record.rain.length).fill(eto), 1);
  return (bedDays(part, sky).potential[day] as number) / eto;
}

const plain = recordOf(new Float64Array(365), YEAR);

describe("the first coefficient by how often bare ground is wetted", () => {
  const first = (every: number, depth: number, coarse: boolean, eto: number, left = 1) =>
    kcOn(bed({ groundWetting: { every: every * DAY, depth, coarse, left } }), plain, eto, at(5, 10));

  test("FAO-56 example 25: coarse soil, 20 mm every 3.5 days, 5 mm a day, gives 0.60 (0.605 unrounded)", () => {
    expect(first(3.5, 20 * MM, true, 5 * MM)).toBeCloseTo(0.605, 3);
  });

  test("FAO-56 example 26: 12 mm drip on 0.4 of the ground is 30 mm there, every 2 days: 1.05 on that ground (1.063)", () => {
    const kc = first(2, 30 * MM, false, 4 * MM);
    expect(kc).toBeCloseTo(1.063, 3);
    // The same over the whole bed: 0.42 (0.425 unrounded).
    expect(kc * 0.4).toBeCloseTo(0.425, 3);
  });

  test("rises with every wetting more, and a mulch leaves its share of it", () => {
    const [often, seldom] = [first(1, 10 * MM, false, 4 * MM), first(7, 10 * MM, false, 4 * MM)];
    expect(often).toBeGreaterThan(seldom);
    expect(often).toBeLessThanOrEqual(1.15);
    expect(first(7, 10 * MM, false, 4 * MM, 0.5)).toBeCloseTo(seldom / 2, 12);
  });

  test("leaves the full-grown crop as it was", () => {
    const wetted = bed({ groundWetting: { every: DAY, depth: 10 * MM, coarse: false, left: 1 } });
    expect(kcOn(wetted, plain, 4 * MM, at(7, 20))).toBe(kcOn(bed(), plain, 4 * MM, at(7, 20)));
  });
});

describe("the coefficients of the tables and the record's air", () => {
  /** A year of the same wind and lowest humidity at 30 degrees. */
  const air = (wind: number | null, humidity: number | null): DailyRecord =>
    recordOf(new Float64Array(365), YEAR, {
      highest: new Float64Array(365).fill(303.15),
      lowest: new Float64Array(365).fill(293.15),
      wind: wind === null ? null : new Float64Array(365).fill(wind),
      vapour:
        humidity === null ? null : new Float64Array(365).fill(humidity * saturationVapourPressure(303.15)),
    });
  const maize: Partial<CropPart> = { kcMiddle: 1.2, kcEnd: 0.6, height: 2 };
  const middle = (record: DailyRecord, more: Partial<BedPart> = {}) =>
    kcOn(bed({ airCorrects: true, crops: [crop(maize)], ...more }), record, 5 * MM, at(7, 20));

  test("FAO-56 example 27: maize of 2 m, 1.20, is 1.07 in Taipei and 1.30 in Mocha", () => {
    expect(middle(air(1.3, 0.75))).toBeCloseTo(1.069, 3);
    expect(middle(air(4.6, 0.44))).toBeCloseTo(1.2956, 3);
  });

  test("are left alone under cover, without the user's word, and where no air was measured", () => {
    const dryWind = air(4.6, 0.44);
    expect(middle(dryWind, { covered: true })).toBeCloseTo(1.2, 12);
    expect(middle(dryWind, { airCorrects: false })).toBeCloseTo(1.2, 12);
    expect(middle(plain)).toBeCloseTo(1.2, 12);
  });

  test("without vapour pressure the air is taken as saturated at the lowest temperature, without wind 2 m/s count", () => {
    const lowest = saturationVapourPressure(293.15) / saturationVapourPressure(303.15);
    expect(middle(air(2, null))).toBeCloseTo(1.2 - 0.004 * (lowest * 100 - 45) * (2 / 3) ** 0.3, 9);
    expect(middle(air(null, 0.45))).toBeCloseTo(1.2, 9);
  });

  test("outside what the relation holds for count as its nearest limit", () => {
    expect(middle(air(20, 0.05))).toBe(middle(air(6, 0.2)));
  });
});
