// What every bound says: the least allowance of a short watering binds. Expected answers are written down first, worked
// out from the given numbers by hand, independently of this code.

import { describe, expect, test } from "vitest";
import type { SeasonInput, TankPart } from "../../src/season/input.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY, HOUR } from "../../src/units/constants.ts";
import {
  battery,
  bed,
  carry,
  delivery,
  draw,
  inputOf,
  LITRE,
  line,
  MM,
  ran,
  recordOf,
  roof,
  sunny,
  tank,
} from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const GALLON = 3.785411784 * LITRE;
const SUMMER = { start: "05-01", end: "08-31" };
const MAY = dayNumber(2021, 5, 1) - YEAR;

const dry = (days = 365) => recordOf(new Float64Array(days), YEAR);
/** So much rain each day until May, none after. */
const wetWinter = (depth: number) =>
  recordOf(
    Float64Array.from({ length: 365 }, (_, day) => (day < MAY ? depth : 0)),
    YEAR,
  );

const plan = (more: Partial<SeasonInput>) =>
  inputOf({ ...SUMMER, tanks: [tank(100, { startShare: 1 })], carries: [carry()], beds: [bed()], ...more });
const totals = (more: Partial<SeasonInput>, record = dry()) => ran(plan(more), record).totals;

describe("power", () => {
  const hose = { beds: [bed({ wateredBy: ["pump"] }), bed({ id: "other", wateredBy: ["pump"] })] };

  test("of a battery of 1 Ah that nothing charges is what at least 95 % of short days lack", () => {
    // 1 Ah at 12 V, half of it usable: at 40 W and 0.2 L/s it lifts 0.2 L/s x 21600 J / 40 W = 108 L once, of several m3.
    const flat = battery({ usable: 21_600, charged: "in_place" });
    const { shortDaysByBound, binding } = totals({
      ...hose,
      batteries: [flat],
      deliveries: [delivery({ battery: "battery" })],
    });
    const all = Object.values(shortDaysByBound).reduce((sum, days) => sum + days, 0);
    expect(binding).toBe("energy");
    expect(all).toBeGreaterThan(100);
    expect(shortDaysByBound.energy / all).toBeGreaterThanOrEqual(0.95);
  });

  test("of a panel alone that is far too small is what its beds lack", () => {
    const sun = sunny([0, 30], [0, HOUR]);
    expect(totals({ ...hose, deliveries: [delivery({ sun })] }).binding).toBe("energy");
  });

  test("after dark is daylight that is lacked, of whatever size the panel", () => {
    const { binding, shortDaysByBound } = totals({
      ...hose,
      deliveries: [delivery({ sun: sunny([0], [0]) })],
    });
    expect(binding).toBe("daylight");
    expect(shortDaysByBound.energy).toBe(0);
  });

  test("is daylight where all that is left of the day would have given less than half, else the panel's sun", () => {
    // Its 10 m2 hold 45 mm: they want 0.45 / 0.8 = 0.56 m3 at most, which is 2,800 s at 0.2 L/s, and 100 s a day at least.
    const on = (bright: number) =>
      totals({ ...hose, deliveries: [delivery({ sun: sunny([0, 1], [0, bright]) })] });
    expect(on(10).binding).toBe("daylight");
    expect(on(10).shortDaysByBound.energy).toBe(0);
    // The second bed too, which a weak sun leaves no time for.
    expect(on(HOUR).binding).toBe("energy");
    expect(on(HOUR).shortDaysByBound.daylight).toBe(0);
  });
});

describe("an empty tank", () => {
  test("that leaks 2 gal/h into a dry summer has lost its water, whatever the roofs bring", () => {
    // 2 mm a day on 90 m2 bring 180 L, the leak takes 182: it never spills, and no summer rain comes.
    const { binding } = totals(
      { tanks: [tank(3, { startShare: 0.5, leak: (2 * GALLON) / HOUR })], roofs: [roof()] },
      wetWinter(2 * MM),
    );
    expect(binding).toBe("loss");
  });

  test("that spilled all winter lacks storage, not rain", () => {
    const { binding, unmetByBound } = totals({ tanks: [tank(0.5)], roofs: [roof()] }, wetWinter(5 * MM));
    expect(binding).toBe("storage");
    expect(unmetByBound.rain).toBe(0);
  });

  test("that lost and spilled nothing lacks rain", () => {
    expect(totals({ tanks: [tank(0.5)], roofs: [roof()] }).binding).toBe("rain");
  });

  test("that no roof fills lacks one, whatever rain there is, and so does one under it", () => {
    const alone = totals({ tanks: [tank(0.5)] }, wetWinter(5 * MM));
    expect(alone.binding).toBe("unroofed");
    expect(alone.unmetByBound.rain).toBe(0);
    const under = plan({
      tanks: [tank(0.5, { id: "high", floor: 2 }), tank(0.2, { id: "tub" })],
      lines: [line({ from: "high", to: "tub", startHeight: 2, endHeight: 1, shutLevel: 1 })],
      carries: [carry({ from: "tub" })],
    });
    expect(ran(under, wetWinter(5 * MM)).totals.binding).toBe("unroofed");
  });

  test("under one that a roof fills lacks rain, by overflow as by a line", () => {
    // 0.1 mm a day on 90 m2 are 9 L, of which none spills and none comes in summer.
    const below = (more: Partial<SeasonInput>) =>
      totals(
        {
          tanks: [tank(5, { id: "high", floor: 2, overflowsTo: "tub" }), tank(0.2, { id: "tub" })],
          carries: [carry({ from: "tub" })],
          roofs: [roof({ drainsTo: "high" })],
          ...more,
        },
        wetWinter(0.1 * MM),
      ).binding;
    expect(below({})).toBe("rain");
    const joined = line({ from: "high", to: "tub", startHeight: 2, endHeight: 1, shutLevel: 1 });
    expect(below({ lines: [joined] })).toBe("rain");
  });

  test("that ran over into a tank of no use to its bed lacks storage, unless that one waters the bed too", () => {
    // 5 mm a day on 90 m2 are 450 L, all winter, into 500 L: nearly all of it runs over, into 100 m3 that hold it.
    const passing = (more: Partial<SeasonInput>) =>
      totals(
        {
          tanks: [tank(0.5, { overflowsTo: "other" }), tank(100, { id: "other" })],
          roofs: [roof()],
          ...more,
        },
        wetWinter(5 * MM),
      );
    const { binding, unmetByBound, spill } = passing({});
    expect(spill).toBe(0);
    expect(binding).toBe("storage");
    expect(unmetByBound.rain).toBe(0);
    // What the second tank holds is of use then, and a bigger first one would bring no more: all of it came, and went.
    const both = passing({
      carries: [carry(), carry({ id: "more", from: "other" })],
      beds: [bed({ area: 2000, wateredBy: ["cans", "more"] })],
    });
    expect(both.binding).toBe("rain");
    expect(both.unmetByBound.storage).toBe(0);
  });

  test("answers with each litre that it spilled for one litre of shortfall, once", () => {
    // It is brim-full and gets 100 L more on one day, and no rain after: those 100 L can answer for no more than 100.
    const rain = new Float64Array(365);
    rain[MAY - 1] = (100 * LITRE) / 90;
    const { unmetByBound } = totals(
      { tanks: [tank(0.1, { startShare: 1 })], roofs: [roof()], beds: [bed({ covered: true })] },
      recordOf(rain, YEAR),
    );
    expect(unmetByBound.storage).toBeCloseTo(0.1, 9);
    expect(unmetByBound.rain).toBeGreaterThan(1);
  });
});

/** A tub under a big tank, and a bed of 50 m2 that uses about 76 gal a day: 4 mm x 1.15 x 50 m2 / 0.8 = 287 L. */
function tubbed(
  gallons: number,
  more: Partial<Parameters<typeof line>[0]> = {},
  above: Partial<TankPart> = {},
) {
  return plan({
    tanks: [
      tank(400, { id: "high", floor: 2, startShare: 1, ...above }),
      tank(gallons * GALLON, { id: "tub", startShare: 1 }),
    ],
    lines: [
      line({ from: "high", to: "tub", startHeight: 2, endHeight: 1, shutLevel: 1, valveBand: 0.01, ...more }),
    ],
    carries: [carry({ from: "tub" })],
    beds: [bed({ area: 50 })],
  });
}
/** Opening through which 44 gal come in so many hours under 2 m of head: V / t / sqrt(2 g h). */
const openingFor = (hours: number) => (44 * GALLON) / (hours * HOUR) / Math.sqrt(2 * 9.80665 * 2);

describe("a tub of 44 gal under a bed that wants 76", () => {
  // Water at 7, sunset at 45.8 degrees north before 20 in summer: 18 and 15 hours end after dark, before the next watering.
  const slow = ran(tubbed(44, { opening: openingFor(18) }), dry());
  const faster = ran(tubbed(44, { opening: openingFor(15) }), dry());
  const bigger = ran(tubbed(100, { opening: openingFor(15) }), dry());

  test("is itself what is lacked, where its refill ends after dark but before the next watering", () => {
    expect(slow.totals.binding).toBe("tankful");
    expect(slow.lines[0]?.longestRun ?? 0).toBeGreaterThan(13 * HOUR);
    expect(slow.lines[0]?.longestRun ?? DAY).toBeLessThan(DAY);
  });

  test("and a faster refill that still ends after dark changes neither words nor days", () => {
    expect(faster.totals.binding).toBe("tankful");
    expect(faster.totals.daysShort).toBe(slow.totals.daysShort);
  });

  test("and behind a joint it is the tub as well: what comes through it is known there too", () => {
    // The hose to the joint is short and wide, so that the float's opening governs as before.
    const plain = tubbed(44, { opening: openingFor(15) });
    // 22 gal are rinsed from it first, filled in time as it was. Its hose brings 70 gal in a day, of which 48 are left: more
    // than the tub holds; of a hose of which nothing is known it would be the refill.
    const draws = [draw(22 * GALLON, { from: "tub" })];
    expect(ran({ ...plain, draws }, dry()).totals.binding).toBe("tankful");
    const joined = {
      ...plain,
      draws,
      tees: [{ id: "joint", height: 1 }],
      lines: [
        line({ id: "main", from: "high", to: "joint", startHeight: 2, endHeight: 1, bore: 0.1, length: 1 }),
        ...plain.lines.map((one) => ({ ...one, from: "joint", startHeight: 1 })),
      ],
    };
    const { totals: said } = ran(joined, dry());
    expect(said.binding).toBe("tankful");
    expect(said.shortDaysByBound.refill).toBe(0);
    // One too slow for a tubful a day lacks the refill, there as without a joint.
    const slower = {
      ...joined,
      lines: joined.lines.map((one) => (one.id === "main" ? one : { ...one, opening: openingFor(60) })),
    };
    expect(ran(slower, dry()).totals.binding).toBe("refill");
    expect(ran(tubbed(44, { opening: openingFor(60) }), dry()).totals.binding).toBe("refill");
  });

  test("while a tub of 100 gal changes both", () => {
    expect(bigger.totals.binding).not.toBe("tankful");
    expect(bigger.totals.daysShort ?? 99).toBeLessThan(slow.totals.daysShort ?? 0);
  });

  test("and a refill that fits before dark brings a second tankful the same day, if the minutes allow", () => {
    const quick = tubbed(44, { opening: openingFor(3) });
    expect(ran(quick, dry()).totals.daysShort).toBeLessThan((slow.totals.daysShort ?? 0) / 2);
    // 44 gal are 11 rounds of 16 L, of 3 minutes each: 33 minutes are one tankful's and no more.
    const hurried = ran({ ...quick, minutesPerDay: 33 * 60 }, dry());
    expect(hurried.totals.binding).toBe("hands");
  });

  test("and is so where 2 gal are rinsed from it first, filled in time as it was", () => {
    const rinsed = { ...tubbed(44, { opening: openingFor(15) }), draws: [draw(2 * GALLON, { from: "tub" })] };
    expect(ran(rinsed, dry()).totals.binding).toBe("tankful");
    // Twice a day too: 3 h fill it again before dark, and a bed that wants 110 gal lacks a third tankful.
    const twice = {
      ...tubbed(44, { opening: openingFor(3) }),
      draws: rinsed.draws,
      beds: [bed({ area: 80 })],
    };
    expect(ran(twice, dry()).totals.binding).toBe("tankful");
    // Half of it rinsed leaves 22 gal of the tankful; 44 gal in 23 h are 46 by the next day, less those 22 are 24.
    const half = (hours: number) => ({
      ...tubbed(44, { opening: openingFor(hours) }),
      draws: [draw(22 * GALLON, { from: "tub" })],
    });
    expect(ran(half(23), dry()).totals.binding).toBe("tankful");
    // In 30 h they are 35 by the next day: it is not full again, and that leaves less.
    expect(ran(half(30), dry()).totals.binding).toBe("refill");
  });

  test("and of two beds that a tankful would do for each, the second lacks what the first took of it, and never its rule", () => {
    // Each wants 38 gal: of 44 the first leaves 6. A day's refill, 44 in 15 h, is 70, and would leave it 32.
    const two = {
      ...tubbed(44, { opening: openingFor(15) }),
      beds: [bed({ area: 25 }), bed({ id: "other", area: 25, priority: 2 })],
    };
    const { totals: said, beds } = ran(two, dry());
    const [, other] = beds;
    expect(other?.binding).toBe("tankful");
    expect(said.shortDaysByBound.rule).toBe(0);
    // In 30 h the tub is not full again for either of them.
    const slowly = { ...two, lines: tubbed(44, { opening: openingFor(30) }).lines };
    expect(ran(slowly, dry()).beds[1]?.binding).toBe("refill");
  });

  test("and a refill that is not there by the next watering is what is lacked", () => {
    expect(ran(tubbed(44, { opening: openingFor(60) }), dry()).totals.binding).toBe("refill");
  });
});

describe("a line that cannot run", () => {
  const humped = ran(tubbed(44, { opening: 1e-4, blocked: "a hump that no siphon lifts" }), dry());
  const uphill = ran(tubbed(44, { opening: 1e-4, endHeight: 3.5 }), dry());

  test("is what is lacked, over a hump as uphill", () => {
    expect(humped.totals.binding).toBe("line");
    expect(uphill.totals.binding).toBe("line");
    expect(humped.totals.shortDaysByBound).toEqual(uphill.totals.shortDaysByBound);
  });

  test("is not blamed once nothing waits above it", () => {
    const empty = tubbed(44, { blocked: "a hump that no siphon lifts" }, { startShare: 0 });
    expect(ran(empty, dry()).totals.binding).toBe("unroofed");
    const { network: _network, ...parts } = empty;
    expect(totals({ ...parts, roofs: [roof({ drainsTo: "high" })] }).binding).toBe("rain");
  });
});

describe("a bed's own rule", () => {
  test("on Mondays only, with unlimited water, is what it lacks", () => {
    const rule = { kind: "weekdays" as const, days: [1], volume: null };
    const { binding, shortDaysByBound } = totals({ beds: [bed({ rule })] });
    expect(binding).toBe("rule");
    expect(
      Object.entries(shortDaysByBound)
        .filter(([, days]) => days > 0)
        .map(([bound]) => bound),
    ).toEqual(["rule"]);
  });
});

test("a bed that nothing waters lacks what would, not anybody's time", () => {
  const { binding, shortDaysByBound } = totals({ beds: [bed({ wateredBy: [] })] });
  expect(binding).toBe("unwatered");
  expect(shortDaysByBound.hands).toBe(0);
});

test("draws alone say their longest run short: a tank of 10 days, 39 days dry, 29 of them short", () => {
  const rain = new Float64Array(365).fill(1 * MM);
  rain.fill(0, 100, 139);
  // 1 mm on 90 m2 are 90 L a day, three times what is drawn; the tank is full on the evening before the drought.
  const { totals: said } = ran(
    inputOf({
      storageRule: "use_first",
      tanks: [tank(0.3, { startShare: 1 })],
      roofs: [roof()],
      draws: [draw(30 * LITRE)],
    }),
    recordOf(rain, YEAR),
  );
  expect(said.longestShortRun).toBe(29);
  expect(said.drawsShortByBound.storage).toBe(29);
  expect(said.binding).toBe("storage");
});
