// Storage for no failure and reliability, worked by hand and held against the season's own days.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reliabilityOf } from "../../src/season/reliability-of-season.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import {
  bed,
  carry,
  draw,
  inputOf,
  LITRE,
  MM,
  ran,
  recordOf,
  roof,
  seattle,
  steadyEto,
  tank,
} from "./made.ts";

const FIRST = dayNumber(2021, 1, 1);
const YEAR = { start: "01-01", end: "12-31" };

/** A year in which each of nine spells brings its own steady rain; what is over at the end brings what it must. */
function spells(depths: readonly number[], days: number): Float64Array {
  const rain = new Float64Array(365);
  depths.forEach((depth, place) => {
    rain.fill(depth, place * days, (place + 1) * days);
  });
  return rain;
}

describe("storage for no failure", () => {
  test("Loucks and van Beek table 11.2: inflows 1, 3, 3, 5, 8, 6, 7, 2, 1 and a release of 3.5 need 7.5", () => {
    // Read (rain-and-storage reference, SP1). One period is a day here; all other days bring what they take.
    const rain = new Float64Array(365).fill(3.5);
    rain.set([1, 3, 3, 5, 8, 6, 7, 2, 1], 0);
    const answer = ran(
      inputOf({
        roofs: [roof({ footprint: 1, runoffCoefficient: 1 })],
        tanks: [tank(20)],
        draws: [draw(3.5)],
      }),
      recordOf(rain, FIRST),
    );
    // The days between carry the lack of 4 on unchanged, so that the second cycle reads as in the table.
    expect(answer.noFailure).toEqual({ volume: expect.closeTo(7.5, 9) });
  });

  test("leak and open water are demands, rain on open water a supply", () => {
    // By hand: 100 dry days, then 265 wet ones that fill it again. A day takes 10 L, leaks 2 L and dries 1.05 * 4 mm * 0.5 m2.
    const answer = ran(
      inputOf({
        roofs: [roof({ footprint: 1, runoffCoefficient: 1 })],
        tanks: [tank(20, { openArea: 0.5, leak: (2 * LITRE) / DAY })],
        draws: [draw(10 * LITRE)],
      }),
      recordOf(spells([0, 1, 1], 100), FIRST),
    );
    const lost = 100 * (10 + 2 + 1.05 * 4 * 0.5) * LITRE;
    // From day 300 the 65 days to the end of the record are dry as well, and the second cycle begins with their lack.
    expect(answer.noFailure).toEqual({ volume: expect.closeTo(lost * 1.65, 9) });
  });

  test("none, and said why, where less comes in than is asked, and where nothing is asked", () => {
    const dry = { tanks: [tank(1)], draws: [draw(10 * LITRE)] };
    const year = recordOf(new Float64Array(365), FIRST);
    expect(ran(inputOf(dry), year).noFailure).toEqual({
      none: expect.stringContaining("no tank is big enough"),
    });
    expect(ran(inputOf({ tanks: [tank(1)] }), year).noFailure).toEqual({
      none: "nothing is asked of the tanks",
    });
  });

  const garden = (volume: number, area: number) =>
    inputOf({
      start: "04-15",
      end: "10-15",
      storageRule: "use_first",
      eto: steadyEto(3.5 * MM),
      roofs: [roof({ footprint: 120 })],
      tanks: [tank(volume, { startShare: 1 })],
      carries: [carry({ roundTime: 0 })],
      beds: [
        bed({ area }),
        bed({ id: "fixed", area: 2, rule: { kind: "fixed", volume: 15 * LITRE, every: 3 * DAY } }),
      ],
    });

  test("a full tank of that size waters every bed on every day of the record, and one 3 % smaller does not", () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 25, noNaN: true }), (area) => {
        const { noFailure } = ran(garden(1, area), seattle());
        const volume = "volume" in noFailure ? noFailure.volume : Number.NaN;
        expect(volume).toBeGreaterThan(0.1);
        const refused = (size: number) =>
          ran(garden(size, area), seattle()).beds.reduce(
            (sum, { unfilled }) => unfilled.reduce((days, one) => days + one, sum),
            0,
          );
        expect(refused(volume * 1.000001)).toBe(0);
        expect(refused(volume * 0.97)).toBeGreaterThan(0);
      }),
      { numRuns: 12 },
    );
  });
});

describe("reliability of a season", () => {
  test("by volume, the toy series of the reference: 0.82 of the target when it is drawn as given", () => {
    // rain-and-storage reference 4, RRV toy test (computed): target 10, supplied 10, 8, 5, 10, 10, 0, 10, 9, 10, 10.
    const supplied = [10, 8, 5, 10, 10, 0, 10, 9, 10, 10];
    // The tank starts empty and gives on each day what came the evening before; the season is days 2 to 11.
    const rain = new Float64Array(366);
    rain.set(supplied, 0);
    const answer = ran(
      inputOf({
        start: "01-02",
        end: "01-11",
        roofs: [roof({ footprint: 1, runoffCoefficient: 1 })],
        tanks: [tank(20)],
        draws: [draw(10)],
      }),
      recordOf(rain, FIRST),
    );
    expect(reliabilityOf(answer, { start: "01-02", end: "01-11" }).volume).toBeCloseTo(0.82, 12);
    expect(answer.draws[0]?.shareMet).toBeCloseTo(0.82, 12);
    // Ten days of which four are short: 1 - 4 / 10 is the share of days for a draw.
    expect(1 - (answer.draws[0]?.daysShort ?? 0) / 10).toBeCloseTo(0.6, 12);
  });

  test("none rather than 0 where nothing is asked for and no crop stands", () => {
    const year = recordOf(new Float64Array(365), FIRST);
    expect(reliabilityOf(ran(inputOf({ tanks: [tank(1)] }), year), YEAR)).toEqual({
      volume: null,
      days: null,
      years: null,
    });
    const winter = { start: "01-01", end: "02-28" };
    const bare = ran(inputOf({ ...winter, tanks: [tank(1)], carries: [carry()], beds: [bed()] }), year);
    expect(reliabilityOf(bare, winter)).toEqual({ volume: null, days: null, years: null });
  });

  test("0 where a crop stands and never gets a drop, 1 where it is never short", () => {
    const season = { start: "06-01", end: "08-31" };
    const dry = recordOf(new Float64Array(365), FIRST);
    const parts = { ...season, carries: [carry({ roundTime: 0 })], beds: [bed()] };
    const never = reliabilityOf(ran(inputOf({ ...parts, tanks: [tank(1)] }), dry), season);
    expect(never.volume).toBe(0);
    expect(never.years).toBe(0);
    const always = reliabilityOf(
      ran(inputOf({ ...parts, tanks: [tank(100, { startShare: 1 })] }), dry),
      season,
    );
    expect(always).toEqual({ volume: 1, days: 1, years: 1 });
  });

  test("days and years count whole seasons only, from the days themselves", () => {
    const season = { start: "05-01", end: "09-30" };
    const answer = ran(
      inputOf({
        ...season,
        roofs: [roof({ footprint: 20 })],
        tanks: [tank(0.4, { startShare: 1 })],
        carries: [carry({ roundTime: 0 })],
        beds: [bed()],
      }),
      seattle(),
    );
    const { days, years } = reliabilityOf(answer, season);
    expect(days).toBeCloseTo(1 - (answer.totals.daysShort ?? 0) / 153, 12);
    const yearly = [2012, 2013, 2014, 2015].map((year) => {
      const from = dayNumber(year, 5, 1) - answer.firstDay;
      return answer.shortDay.subarray(from, from + 153).some((short) => short === 1);
    });
    expect(years).toBe(yearly.filter((short) => !short).length / 4);
  });
});
