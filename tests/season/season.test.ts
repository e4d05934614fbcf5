// The whole season: what it promises of beds, hands, charge and hold-back, and what no network may break.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";
import { bedDemand } from "../../src/season/demand.ts";
import { STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { runSeason } from "../../src/season/run.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import {
  battery,
  bed,
  carry,
  crop,
  delivery,
  draw,
  inputOf,
  LITRE,
  line,
  MM,
  ran,
  recordOf,
  roof,
  seattle,
  steadyEto,
  tank,
} from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const dry = (days = 365) => recordOf(new Float64Array(days), YEAR);
const SUMMER = { start: "05-01", end: "08-31" };

function demandOf(part = bed(), record: DailyRecord = dry(), dates = SUMMER) {
  const answer = dailyEto(record, steadyEto(4 * MM));
  if ("failed" in answer) throw new Error(answer.failed);
  const demand = bedDemand(part, dates, record, answer.eto, 1);
  if ("none" in demand) throw new Error(demand.none);
  return demand;
}

describe("what a bed needs", () => {
  test("is the sum of potential use over the efficiency on a dry bed, to 0.1 %", () => {
    // 30 days of the initial stage: 0.6 x 4 mm x 10 m2 x 30 = 720 L, and what the bare ground lost before, over 0.8.
    const dates = { start: "05-01", end: "05-30" };
    const answer = ran(watered(dates), dry()).beds[0];
    expect(answer?.need).toBeCloseTo((0.6 * 4 * MM * 10 * 30 + (answer?.owed ?? 0)) / 0.8, 9);
    expect(answer?.potential).toBeCloseTo(0.6 * 4 * MM * 10 * 30, 9);
    expect(demandOf(bed(), dry(), dates).potential).toBeCloseTo(0.6 * 4 * MM * 10 * 30, 9);
    // In 120 days without rain all that can dry from bare ground, but for a hair of the second stage.
    expect(answer?.owed).toBeCloseTo(19 * MM * 10, 4);
  });

  test("is the same when nobody waters the bed, and no rain falls", () => {
    const dates = { start: "05-01", end: "05-30" };
    const answer = ran(inputOf({ ...dates, beds: [bed({ wateredBy: [] })] }), dry());
    expect(answer.totals.need).toBeCloseTo(ran(watered(dates), dry()).totals.need, 12);
    expect(answer.totals.got).toBe(0);
    expect(answer.totals.shareMet).toBeLessThan(0.8);
    expect(answer.totals.binding).toBe("unwatered");
  });

  test("does not move with the sowing while the crop stays inside the season, ETo being constant", () => {
    const use = (planted: string) =>
      demandOf(bed({ crops: [crop({ planted })] }), dry(), { start: "03-01", end: "11-30" }).potential;
    expect(use("04-10") / use("06-20")).toBeCloseTo(1, 9);
  });

  test("is untouched by rain under cover, and less by it in the open", () => {
    const rainy = recordOf(
      Float64Array.from({ length: 365 }, (_, day) => (day % 5 === 0 ? 6 * MM : 0)),
      YEAR,
    );
    const need = (covered: boolean, record: DailyRecord) =>
      ran(watered({ beds: [bed({ covered })] }), record).beds[0]?.need ?? Number.NaN;
    expect(need(true, rainy)).toBe(need(true, dry()));
    expect(need(false, rainy)).toBeLessThan(need(false, dry()) * 0.95);
  });

  test("on a peak day is the full-grown crop's use over the efficiency where nothing changes from day to day", () => {
    const demand = demandOf();
    expect(demand.peakDayNeed).toBeCloseTo((1.15 * 4 * MM * 10) / 0.8, 9);
    // Easy water 0.416 x 45 mm = 18.7 mm: four whole days of 4.6 mm.
    expect(demand.easyDepth).toBeGreaterThanOrEqual(0.416 * 0.15 * 0.3);
    // The peak begins with its first full day, and the week before that drank a little less.
    expect(demand.easyDepth).toBeLessThan(0.42 * 0.15 * 0.3);
    expect(demand.wateringInterval).toBe(4 * DAY);
    expect(demand.wateringVolume).toBeCloseTo(4 * demand.peakDayNeed, 12);
    expect(demand.daysWithNeed).toBe(123);
  });

  test("gives its reason where nothing grows in the season", () => {
    const answer = dailyEto(dry(), steadyEto(4 * MM));
    const eto = "eto" in answer ? answer.eto : new Float64Array(0);
    expect(bedDemand(bed({ crops: [] }), SUMMER, dry(), eto, 1)).toEqual({ none: "nothing grows in it" });
    expect(bedDemand(bed(), { start: "01-01", end: "03-01" }, dry(), eto, 1)).toHaveProperty("none");
  });
});

const watered = (more: Partial<SeasonInput> = {}) =>
  inputOf({ ...SUMMER, tanks: [tank(100, { startShare: 1 })], carries: [carry()], beds: [bed()], ...more });

describe("a bed with water enough", () => {
  test("is never short and uses all it could", () => {
    const { totals, beds } = ran(watered(), dry());
    expect(totals.shareMet).toBe(1);
    expect(totals.daysShort).toBe(0);
    expect(totals.binding).toBeNull();
    expect(beds[0]?.got).toBeGreaterThan(0.9 * totals.need);
    expect(totals.balanceError).toBeLessThan(1e-9);
  });

  test("gets what it needs in each season, to one watering, rain and all", () => {
    const answer = ran(watered({ eto: steadyEto(3 * MM) }), seattle());
    const part = answer.beds[0];
    expect(part?.shareMet).toBe(1);
    // Water short at the season's end is not refilled, and what was short at its start is.
    const watering = (0.15 * 0.3 * 0.8 * 10) / 0.8;
    expect(part?.got).toBeLessThanOrEqual((part?.need ?? 0) * (1 + 1e-12));
    expect((part?.need ?? 0) - (part?.got ?? 0)).toBeLessThan(watering);
  });

  test("by a fixed rule gets what is due, whatever the soil says; its share is of its thirst, and how far the rule was kept is told beside it", () => {
    const fixed = bed({ rule: { kind: "fixed", volume: 0.05, every: 3 * DAY } });
    const full = ran(watered({ beds: [fixed] }), dry()).beds[0];
    expect(full?.ruleKept).toBe(1);
    // 4 mm of water every third day: less than it drinks at its peak.
    expect(full?.shareMet).toBeLessThan(1);
    expect(full?.daysShort).toBeGreaterThan(10);
    expect(full?.binding).toBe("rule");
    const soak = (full?.owed ?? 0) / 0.8;
    expect((full?.got ?? 0) + (full?.pastRoots ?? 0)).toBeCloseTo(soak + 0.05 * (Math.ceil(123 / 3) - 1), 9);
    const half = ran(watered({ beds: [fixed], minutesPerDay: 2 * 180 }), dry()).beds[0];
    expect(half?.ruleKept).toBeCloseTo((41 * 0.032) / (40 * 0.05 + soak), 9);
    expect(half?.shareMet).toBeLessThan(full?.shareMet ?? 0);
    expect(half?.daysShort).toBeGreaterThan(full?.daysShort ?? Infinity);
    expect(half?.binding).toBe("hands");
  });
});

describe("what is lacked most often", () => {
  const binding = (more: Partial<SeasonInput>, record = dry()) => ran(watered(more), record).totals.binding;

  test("is hands, pump time or the battery when one of them is too little", () => {
    expect(binding({ minutesPerDay: 180 })).toBe("hands");
    const pumped = bed({ wateredBy: ["pump"] });
    expect(binding({ beds: [pumped], deliveries: [delivery({ flows: [1e-7] })] })).toBe("pump_time");
    const weak = battery({
      usable: 2000,
      charged: "in_place",
      dryCharge: Array(12).fill(2000),
      wetCharge: Array(12).fill(2000),
    });
    const run = ran(
      watered({ beds: [pumped], deliveries: [delivery({ battery: "battery" })], batteries: [weak] }),
      dry(),
    );
    expect(run.totals.binding).toBe("energy");
    expect(run.batteries[0]?.lowestShare).toBeCloseTo(0, 9);
    expect(run.batteries[0]?.daysEmpty).toBeGreaterThan(10);
    expect(run.totals.energyBalanceError).toBeLessThan(1e-9);
  });

  test("is rain when the tank was never filled, storage when it spilled before, a refill when the next tank still holds water", () => {
    expect(binding({ tanks: [tank(1)], roofs: [roof()] })).toBe("rain");
    const early = Float64Array.from({ length: 365 }, (_, day) => (day > 121 && day < 130 ? 0.03 : 0));
    expect(
      binding(
        { tanks: [tank(0.1, { startShare: 1 })], roofs: [roof()], beds: [bed({ covered: true })] },
        recordOf(early, YEAR),
      ),
    ).toBe("storage");
    expect(
      binding({
        tanks: [tank(50, { startShare: 1, floor: 1 }), tank(0.1, { id: "tub" })],
        lines: [line({ opening: 1e-9 })],
        carries: [carry({ from: "tub" })],
      }),
    ).toBe("refill");
  });

  test("what one source cannot give is tried from the next", () => {
    const two = watered({
      beds: [bed({ wateredBy: ["pump", "cans"] })],
      tanks: [tank(0.05, { id: "small", startShare: 1 }), tank(100, { startShare: 1 })],
      deliveries: [delivery({ from: "small" })],
    });
    const answer = ran(two, dry());
    expect(answer.deliveries[0]?.seasonVolume).toBeCloseTo(0.05, 9);
    expect(answer.totals.shareMet).toBe(1);
  });
});

describe("holding back", () => {
  // A drum that cannot carry two equal beds through a dry season.
  const scarce = (holdDays: number) =>
    ran(
      watered({
        holdDays,
        tanks: [tank(2, { startShare: 1 })],
        beds: [bed({ id: "first", priority: 1 }), bed({ id: "second", priority: 2 })],
      }),
      dry(),
    );
  const shares = (holdDays: number) =>
    scarce(holdDays).beds.map(({ shareMet }) => shareMet ?? 0) as [number, number];

  test("keeps water for the bed that comes first, the more the longer it holds", () => {
    const [noneFirst, noneSecond] = shares(0);
    const [weekFirst, weekSecond] = shares(7);
    const [monthFirst, monthSecond] = shares(30);
    expect(weekFirst).toBeGreaterThan(noneFirst);
    expect(monthFirst).toBeGreaterThan(weekFirst);
    expect(weekSecond).toBeLessThan(noneSecond);
    expect(monthSecond).toBeLessThan(weekSecond);
  });

  test("is written down as what bound the second bed while the drum still has water", () => {
    expect(scarce(30).totals.unmetByBound.held_back).toBeGreaterThan(0);
    expect(scarce(0).totals.unmetByBound.held_back).toBe(0);
  });
});

describe("days of autonomy", () => {
  test("are the reachable water over the peak day's draw, and double with the tank", () => {
    const days = (volume: number) =>
      ran(watered({ tanks: [tank(volume, { outlet: 0.1 })] }), dry()).totals.daysOfAutonomy ?? 0;
    const draws = (1.15 * 4 * MM * 10) / 0.8;
    expect(days(2) / DAY).toBeCloseTo((2 * 0.9) / draws, 9);
    expect(days(4) - days(2)).toBeCloseTo(((2 * 0.9) / draws) * DAY, 3);
  });

  test("of a tank that only feeds another by a line count the water above the line's end", () => {
    const { tanks } = ran(
      watered({
        tanks: [tank(5, { id: "high", floor: 0, startShare: 1 }), tank(0.2, { startShare: 1 })],
        lines: [line({ from: "high", to: "tank", startHeight: 0, endHeight: 0.4 })],
      }),
      dry(),
    );
    expect(tanks[0]?.reachable).toBeCloseTo(5 * 0.6, 9);
    expect(tanks[0]?.daysOfAutonomy).toBeCloseTo((3 / ((1.15 * 4 * MM * 10) / 0.8)) * DAY, 3);
  });

  test("from the worst date are no more than from the peak day where need is the same every year", () => {
    const { totals } = ran(watered({ tanks: [tank(2, { startShare: 1 })] }), dry());
    expect(totals.worstDateLasts).toBeCloseTo(totals.daysOfAutonomy ?? 0, 3);
  });

  test("from the worst date count what other draws take as well; those of the peak day are the beds' alone", () => {
    const beds = (1.15 * 4 * MM * 10) / 0.8;
    const { totals } = ran(watered({ tanks: [tank(2, { startShare: 1 })], draws: [draw(3 * beds)] }), dry());
    expect(totals.daysOfAutonomy).toBeCloseTo((2 / beds) * DAY, 3);
    expect(totals.worstDateLasts).toBeCloseTo((2 / (4 * beds)) * DAY, 3);
  });
});

describe("a season that cannot be run says why", () => {
  test("naming the first missing day", () => {
    const rain = new Float64Array(365);
    rain[40] = Number.NaN;
    expect(runSeason(watered(), recordOf(rain, YEAR))).toMatchObject({
      at: YEAR + 40,
      failed: expect.stringContaining("2021-02-10"),
    });
  });

  test("without a whole season, or without evapotranspiration", () => {
    expect(runSeason(watered(), dry(100))).toHaveProperty("failed");
    const hargreaves = { ...steadyEto(0), method: "hargreaves" as const, months: null };
    expect(runSeason(watered({ eto: hargreaves }), dry())).toMatchObject({
      failed: expect.stringContaining("no temperatures"),
    });
  });

  test("and an overflow that runs in a circle is cut, told, and lost to the ground", () => {
    const circle = inputOf({
      roofs: [roof({ drainsTo: "a" })],
      tanks: [tank(1, { id: "a", overflowsTo: "b" }), tank(1, { id: "b", overflowsTo: "a" })],
    });
    const answer = ran(circle, recordOf(new Float64Array(365).fill(0.01), YEAR));
    expect(answer.leftOut.map(({ id }) => id)).toEqual(["a"]);
    expect(answer.totals.balanceError).toBeLessThan(1e-9);
    expect(answer.totals.spill).toBeGreaterThan(300);
  });
});

test("a season may wrap the new year", () => {
  const between = (start: string, end: string) =>
    ran(
      inputOf({ start, end, beds: [bed({ wateredBy: [], crops: [crop({ planted: start })] })] }),
      dry(365 * 3),
    );
  const wrapped = between("11-01", "02-28");
  expect(wrapped.totals.seasons).toBe(2);
  // Each day dries alike: in a season of as many days, 120, within a year its crops would use as much.
  expect(wrapped.beds[0]?.potential).toBeCloseTo(between("03-01", "06-28").beds[0]?.potential ?? 0, 9);
  expect(wrapped.totals.need).toBeGreaterThan(1);
});

test("losses to the air are 1.05 ETo over the open water, and a leak runs on until the tank is dry", () => {
  // FAO-56 Table 12: open water under 2 m deep, 1.05.
  const open = ran(inputOf({ tanks: [tank(10, { startShare: 1, openArea: 2 })] }), dry()).tanks[0];
  expect(open?.evaporated).toBeCloseTo(365 * 1.05 * 4 * MM * 2, 9);
  const leaky = ran(inputOf({ tanks: [tank(1, { startShare: 1, leak: 0.02 / DAY })] }), dry()).tanks[0];
  // 1 m3 less 0.02 a day: after the 49th day a day's leak is left.
  expect(leaky?.stored[48]).toBeCloseTo(0.02, 12);
  expect(leaky?.stored[50]).toBeCloseTo(0, 12);
  expect(leaky?.leaked).toBeCloseTo(1, 9);
});

/** A random place: roofs, tanks in an overflow chain, lines to tubs, draws, beds, batteries. */
const places = fc
  .record({
    tanks: fc.integer({ min: 1, max: 5 }),
    beds: fc.integer({ min: 0, max: 4 }),
    rule: fc.constantFrom("spill_first" as const, "use_first" as const),
    seeds: fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
  })
  .map(({ tanks: count, beds: bedCount, rule, seeds }) => {
    const next = () => seeds.next().value as number;
    const pick = (many: number) => Math.min(many - 1, Math.floor(next() * many));
    const tanks = Array.from({ length: count }, (_, i) =>
      tank(0.05 + next() * 3, {
        id: `t${i}`,
        vessel: { form: next() < 0.3 ? "lying" : "upright", height: 0.5 + next(), volume: 0.05 + next() * 3 },
        floor: next() * 2,
        outlet: next() * 0.1,
        openArea: next() < 0.4 ? next() : 0,
        overflowsTo: next() < 0.6 ? `t${pick(count)}` : null,
        startShare: next(),
        leak: next() < 0.3 ? next() * 1e-7 : 0,
      }),
    );
    const lines = Array.from({ length: pick(5) }, (_, i) => {
      const [from, to] = [pick(count), pick(count)];
      if (from === to) return null;
      const [source, target] = [tanks[from] as (typeof tanks)[0], tanks[to] as (typeof tanks)[0]];
      const valved = next() < 0.6;
      const level = target.vessel.height * (0.5 + next() / 2);
      return line({
        id: `l${i}`,
        from: source.id,
        to: next() < 0.05 ? null : target.id,
        startHeight: source.floor + source.outlet,
        endHeight: target.floor + (valved ? level : next() * 0.1),
        opening: valved ? 1.2e-5 : null,
        shutLevel: valved ? level : null,
        valveBand: next() < 0.5 ? 0.03 : 0,
        checkValve: next() < 0.3,
      });
    }).filter((part) => part !== null);
    const rules = [
      { kind: "fixed" as const, volume: next() * 0.2, every: DAY * (1 + pick(5)) },
      { kind: "weekdays" as const, volume: next() * 0.2, days: [1 + pick(7), 1 + pick(7)] },
      { kind: "weekdays" as const, volume: null, days: [1 + pick(7), 4] },
    ];
    const cell = battery({
      usable: 1e4 + next() * 1e5,
      charged: (["mains", "in_place", "carried", "swapped"] as const)[pick(4)] ?? "mains",
      carriedEvery: 1 + pick(9),
      dryCharge: Array.from({ length: 12 }, () => next() * 2e4),
      wetCharge: Array.from({ length: 12 }, () => next() * 1e4),
      selfDischarge: next() * 0.01,
      leastChargingTemperature: next() < 0.5 ? 273.15 : null,
    });
    return inputOf({
      ...SUMMER,
      storageRule: rule,
      holdDays: pick(8),
      minutesPerDay: next() < 0.3 ? null : next() * 7200,
      roofs: Array.from({ length: 1 + pick(3) }, (_, i) =>
        roof({
          id: `r${i}`,
          footprint: 5 + next() * 50,
          wettingLoss: next() * MM,
          firstFlush: next() * MM,
          drainsTo: next() < 0.9 ? `t${pick(count)}` : null,
        }),
      ),
      tanks,
      lines,
      draws: Array.from({ length: pick(3) }, (_, i) =>
        draw(next() * 0.05, { id: `d${i}`, from: `t${pick(count)}`, every: DAY * (1 + next() * 3) }),
      ),
      deliveries: [
        delivery({ id: "p0", from: `t${pick(count)}`, battery: "battery", setUp: next() * 600 }),
        delivery({
          id: "p1",
          from: `t${pick(count)}`,
          pump: "p0",
          depths: [0, 0.3, 1],
          flows: [1e-4, 2e-4, 3e-4],
          powers: [50, 45, 40],
          lowestWater: 0.05,
        }),
      ],
      carries: [carry({ id: "c0", from: `t${pick(count)}` })],
      batteries: [cell],
      beds: Array.from({ length: bedCount }, (_, i) =>
        bed({
          id: `b${i}`,
          area: 1 + next() * 20,
          covered: next() < 0.4,
          priority: 1 + pick(3),
          wateredBy: [["p0"], ["p1", "c0"], ["c0"], ["c0", "p0"], []][pick(5)] ?? [],
          crops: [
            crop({ planted: next() < 0.5 ? "05-10" : "03-20", share: 0.3 + next() * 0.4 }),
            crop({ planted: "06-01", share: next() * 0.3, height: 2, rootEnd: 0.1 + next() }),
          ],
          rule: rules[pick(4)] ?? { kind: "soil" },
          decidesOn: next() < 0.3 ? "morning" : "evening",
          mingled: next() < 0.3,
          youngDays: pick(3) * 5,
          groundWetting:
            next() < 0.3 ? { every: DAY * (1 + pick(5)), depth: 0.02, coarse: false, left: 1 } : null,
          airCorrects: next() < 0.5,
          letGo: next() < 0.3 ? { from: "06-15", dryDays: pick(20) } : null,
        }),
      ),
    });
  });

const twoYears = (() => {
  const whole = seattle();
  const cut = (series: Float64Array | null) => series?.slice(0, 731) ?? null;
  return { ...whole, rain: whole.rain.slice(0, 731), highest: cut(whole.highest), lowest: cut(whole.lowest) };
})();

describe("on random places", () => {
  test("water and energy close to 1e-9 of what went through, and no tank leaves its bounds", () => {
    fc.assert(
      fc.property(places, (plan) => {
        const answer = ran(plan, twoYears);
        expect(answer.totals.balanceError).toBeLessThan(1e-9);
        expect(answer.totals.energyBalanceError).toBeLessThan(1e-9);
        for (const { id, stored } of answer.tanks) {
          const most = plan.tanks.find((part) => part.id === id)?.vessel.volume ?? 0;
          expect(Math.min(...stored)).toBeGreaterThanOrEqual(-1e-12);
          expect(Math.max(...stored)).toBeLessThanOrEqual(most * (1 + 1e-12));
        }
        for (const { shareMet } of answer.beds) {
          expect(shareMet ?? 0).toBeGreaterThanOrEqual(0);
          expect(shareMet ?? 0).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("[G11] permuting the parts changes no bit of the answer", () => {
    fc.assert(
      fc.property(places, (plan) => {
        const turned = Object.fromEntries(
          Object.entries(plan).map(([name, part]) => [
            name,
            Array.isArray(part) ? [...part].reverse() : part,
          ]),
        ) as unknown as SeasonInput;
        expect(ran(turned, twoYears)).toEqual(ran(plan, twoYears));
      }),
      { numRuns: 25 },
    );
  });

  test("a bigger covered tank with a fixed demand never meets less", () => {
    const size = fc.double({ min: 0.1, max: 8, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        fc.constantFrom("spill_first" as const, "use_first" as const),
        (a, b, storageRule) => {
          const given = (volume: number) =>
            ran(
              inputOf({ storageRule, roofs: [roof()], tanks: [tank(volume)], draws: [draw(0.25)] }),
              twoYears,
            ).draws[0]?.given ?? 0;
          expect(given(Math.max(a, b))).toBeGreaterThanOrEqual(given(Math.min(a, b)) - 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test("half of gravity's steps move a season's amounts by less than 0.5 % and its counts by at most 1 % or a day", () => {
  const half = {
    first: STEPPING.first / 2,
    shortest: STEPPING.shortest / 2,
    growth: Math.sqrt(STEPPING.growth),
    change: STEPPING.change / 2,
  };
  const tub = (id: string) =>
    tank(0.2, { id, vessel: { form: "upright", height: 0.5, volume: 0.2 }, openArea: 0.4, startShare: 1 });
  const plan = inputOf({
    ...SUMMER,
    roofs: [roof({ drainsTo: "high", footprint: 40 })],
    tanks: [tank(3, { id: "high", floor: 0.4, startShare: 1 }), tub("one"), tub("two")],
    lines: [
      line({ id: "l1", from: "high", to: "one", startHeight: 0.45, endHeight: 0.35, shutLevel: 0.45 }),
      line({
        id: "l2",
        from: "high",
        to: "two",
        startHeight: 0.45,
        endHeight: 0.35,
        shutLevel: 0.45,
        opening: 4e-6,
      }),
    ],
    carries: [carry({ id: "c1", from: "one" }), carry({ id: "c2", from: "two" })],
    beds: [bed({ id: "b1", wateredBy: ["c1"] }), bed({ id: "b2", wateredBy: ["c2"], covered: true })],
  });
  const [whole, halved] = [ran(plan, seattle()), runSeason(plan, seattle(), half)];
  if ("failed" in halved) throw new Error(halved.failed);
  for (const i of [0, 1]) {
    expect((whole.lines[i]?.moved ?? 0) / (halved.lines[i]?.moved ?? 0)).toBeCloseTo(1, 2.3);
    expect((whole.beds[i]?.got ?? 0) / (halved.beds[i]?.got ?? 0)).toBeCloseTo(1, 2.3);
  }
  const days = (answer: typeof whole) => answer.totals.daysShort ?? 0;
  expect(Math.abs(days(whole) - days(halved))).toBeLessThanOrEqual(Math.max(1, 0.01 * days(halved)));
  expect(whole.lines[0]?.longestRun).toBeGreaterThan(600);
});

test("a covered bed gains nothing from rain that falls on it, in the run as in its need", () => {
  const covered = watered({ tanks: [tank(100, { startShare: 1 })], beds: [bed({ covered: true })] });
  expect(ran(covered, twoYears).beds[0]?.given).toEqual(
    ran(covered, { ...twoYears, rain: new Float64Array(731) }).beds[0]?.given,
  );
  expect(ran(covered, twoYears).totals.got / LITRE).toBeGreaterThan(100);
});
