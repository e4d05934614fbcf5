// How a bed asks: on set weekdays, daily while its plants are young, at its shallowest crop, and not at all once let go.

import { describe, expect, test } from "vitest";
import { atOnce } from "../../src/season/at-once.ts";
import { bedDays } from "../../src/season/bed-days.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";
import { bedDemand } from "../../src/season/demand.ts";
import type { BedPart, SeasonInput } from "../../src/season/input.ts";
import { skyOf as skyUnder } from "../../src/season/sky.ts";
import { dayNumber, weekday } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import { bed, carry, crop, inputOf, MM, ran, recordOf, seattle, steadyEto, tank } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const SUMMER = { start: "05-01", end: "08-31" };
const dry = () => recordOf(new Float64Array(365), YEAR);
const at = (date: string) => dayNumber(2021, Number(date.slice(0, 2)), Number(date.slice(3))) - YEAR;

const watered = (part: BedPart, more: Partial<SeasonInput> = {}) =>
  inputOf({ ...SUMMER, tanks: [tank(100, { startShare: 1 })], carries: [carry()], beds: [part], ...more });

const givenDays = (part: BedPart, record = dry()) => {
  const given = ran(watered(part), record).beds[0]?.given ?? new Float64Array(0);
  return [...given.keys()].filter((day) => (given[day] as number) > 0);
};

const skyOf = (eto: number, days = 365) => ({
  firstDay: YEAR,
  arriving: new Float64Array(days),
  eto: new Float64Array(days).fill(eto),
});

describe("set weekdays", () => {
  test("the days of the week are those of the calendar", () => {
    // 2021-05-04 was a Tuesday, 1969-12-28 a Sunday.
    expect([weekday(dayNumber(2021, 5, 4)), weekday(dayNumber(1969, 12, 28))]).toEqual([2, 7]);
  });

  test("get the set amount on every Tuesday and Friday of the season and on no other day", () => {
    const rule = { kind: "weekdays" as const, volume: 0.068, days: [2, 5] };
    const days = givenDays(bed({ rule }));
    // A Saturday: the day of planting, on which its ground is soaked whatever the rule.
    expect(days[0]).toBe(at("05-01"));
    expect(new Set(days.slice(1).map((day) => weekday(YEAR + day)))).toEqual(new Set([2, 5]));
    // 2021-05-04 to 2021-08-31: 18 Tuesdays; 2021-05-07 to 2021-08-27: 17 Fridays.
    expect(days).toHaveLength(36);
    const answer = ran(watered(bed({ rule })), dry()).beds[0];
    const soak = answer?.given[at("05-01")] ?? 0;
    expect(soak).toBeCloseTo((answer?.owed ?? 0) / 0.8, 12);
    expect((answer?.got ?? 0) + (answer?.pastRoots ?? 0)).toBeCloseTo(soak + 35 * 0.068, 9);
    expect(answer?.ruleKept).toBe(1);
  });
});

describe("set weekdays without a set amount", () => {
  const rule = { kind: "weekdays" as const, volume: null, days: [2, 5] };

  test("refill what the soil lacks on those days, so a bed that lasts between them is never short", () => {
    const after = givenDays(bed({ rule })).slice(1);
    expect(new Set(after.map((day) => weekday(YEAR + day)))).toEqual(new Set([2, 5]));
    const answer = ran(watered(bed({ rule })), dry()).beds[0];
    expect(answer?.daysShort).toBe(0);
    expect(answer?.shareMet).toBe(1);
    // What is given is what was used, but for what is short at the end.
    expect(answer?.got).toBeGreaterThan((answer?.need ?? 0) * 0.97);
    expect(answer?.got).toBeLessThanOrEqual(answer?.need ?? 0);
  });

  test("is measured by thirst, not by what was due", () => {
    const sand = bed({ rule: { ...rule, days: [1] }, availableWater: 0.06 });
    const answer = ran(watered(sand), dry()).beds[0];
    expect(answer?.daysShort).toBeGreaterThan(20);
    expect(answer?.shareMet).toBeLessThan(1);
  });
});

describe("given at once", () => {
  const record = dry();
  const drying = dailyEto(record, steadyEto(4 * MM));
  if ("failed" in drying) throw new Error(drying.failed);
  const { eto } = drying;
  const onceOf = (part: BedPart) => {
    const demand = bedDemand(part, SUMMER, record, eto, 1);
    if ("none" in demand) throw new Error(demand.none);
    return { demand, ...atOnce(part, SUMMER, skyUnder(record, eto, 1), demand) };
  };

  test("by the soil is a good watering, and a set amount as it is set, again after the fewest days between", () => {
    const { demand, volume, interval } = onceOf(bed());
    expect([volume, interval]).toEqual([demand.wateringVolume, demand.wateringInterval]);
    const fixed = { kind: "fixed" as const, volume: 0.9, every: 6 * DAY };
    expect(onceOf(bed({ rule: fixed }))).toMatchObject({ volume: 0.9, interval: 6 * DAY });
    // Tuesday to Friday are 3 days, Friday to Tuesday 4; one day alone comes again in a week.
    const days = { kind: "weekdays" as const, volume: 0.5, days: [5, 2] };
    expect(onceOf(bed({ rule: days }))).toMatchObject({ volume: 0.5, interval: 3 * DAY });
    expect(onceOf(bed({ rule: { ...days, days: [1] } })).interval).toBe(7 * DAY);
  });

  test("on a set day what the soil lacks is the most that any watering of the season gives, of one never refused", () => {
    for (const days of [[1], [2, 5], [1, 3, 6]]) {
      const part = bed({ rule: { kind: "weekdays", volume: null, days } });
      const given = ran(watered(part), record).beds[0]?.given ?? new Float64Array(0);
      const most = Math.max(...given.map((volume, day) => (day === at("05-01") ? 0 : volume)));
      expect(onceOf(part).volume / most).toBeCloseTo(1, 9);
    }
  });
});

describe("young plants", () => {
  test("ask every day for the first days after planting, then when their soil does", () => {
    const days = givenDays(bed({ youngDays: 5, crops: [crop({ planted: "05-10" })] }));
    const planted = at("05-10");
    // The first is the soak of what the bare ground lost until then.
    expect(days.filter((day) => day <= planted + 5)).toEqual([0, 1, 2, 3, 4].map((after) => planted + after));
    expect(givenDays(bed({ crops: [crop({ planted: "05-10" })] }))[1]).toBe(planted + 4);
  });
});

describe("several crops in a bed", () => {
  test("that mingle use what FAO-56 example 46 gives maize and squash: 1.14, 1.135 unrounded", () => {
    const flat = { stages: [0, 0, 100, 0] as const, kcInitial: 0, kcEnd: 0, planted: "05-01" };
    const crops = [
      crop({ ...flat, share: 0.3, height: 2, kcMiddle: 1.2 }),
      crop({ ...flat, share: 0.7, height: 0.3, kcMiddle: 0.95 }),
    ];
    const use = (mingled: boolean) =>
      bedDays(bed({ crops, mingled }), skyOf(5 * MM)).potential[at("06-01")] as number;
    expect(use(true) / (5 * MM)).toBeCloseTo(1.135, 3);
    expect(use(false) / (5 * MM)).toBeCloseTo(0.3 * 1.2 + 0.7 * 0.95, 9);
  });

  test("ask when the one with the least water in easy reach does, and a share of nothing decides nothing", () => {
    const deep = crop({ depletion: 0.4, rootStart: 0.3, rootEnd: 0.3, share: 0.5 });
    const shallow = (share: number) => crop({ depletion: 0.2, rootStart: 0.1, rootEnd: 0.1, share });
    const day = at("07-20");
    const days = (crops: readonly ReturnType<typeof crop>[]) => bedDays(bed({ crops }), skyOf(4 * MM));
    const alone = days([shallow(1)]);
    const both = days([deep, shallow(0.5)]);
    expect(both.easy[day]).toBeCloseTo(alone.easy[day] as number, 12);
    expect(both.easy[day]).toBeLessThan(both.readily[day] as number);
    const ghost = days([{ ...deep, share: 1 }, shallow(0)]);
    expect(ghost.easy[day]).toBeCloseTo(ghost.readily[day] as number, 12);
  });

  test("one crop alone asks in time: when another day like the last seven would take it to what it takes without stress", () => {
    const { trigger, easy, readily, potential, total } = bedDays(bed(), skyOf(4 * MM));
    const day = at("07-20");
    // FAO-56 Table 22 footnote 2, by hand: 1.15 x 4 = 4.6 mm a day, p = 0.40 + 0.04 (5 - 4.6) = 0.416.
    expect(total[day]).toBeCloseTo(0.15 * 0.3, 12);
    expect(easy[day]).toBeCloseTo(0.416 * 0.15 * 0.3, 12);
    expect(readily[day]).toBeCloseTo(easy[day] as number, 12);
    expect(trigger[day]).toBeCloseTo((easy[day] as number) - (potential[day] as number), 12);
  });
});

describe("a bed that is let go in a dry spell", () => {
  const letGo = { from: "07-01", dryDays: 10 };

  test("gets no more water from its date on, and the same as ever before it", () => {
    const days = givenDays(bed({ letGo }));
    expect(days.every((day) => day < at("07-01"))).toBe(true);
    expect(days).toEqual(givenDays(bed()).filter((day) => day < at("07-01")));
    // Nothing is held back for another bed: its own rule lets it go.
    expect(ran(watered(bed({ letGo })), dry()).totals.binding).toBe("given_up");
  });

  test("is kept while rain comes often enough, and let go on the morning after the last dry day it takes", () => {
    const rain = new Float64Array(365);
    for (let day = 0; day < at("07-21"); day += 5) rain[day] = 2 * MM;
    const last = at("07-21") - 1 - ((at("07-21") - 1) % 5);
    const days = givenDays(bed({ letGo, covered: true }), recordOf(rain, YEAR));
    expect(days.some((day) => day > at("07-01"))).toBe(true);
    expect(Math.max(...days)).toBeLessThan(last + 11);
    const always = recordOf(new Float64Array(365).fill(2 * MM), YEAR);
    expect(givenDays(bed({ letGo, covered: true }), always)).toEqual(
      givenDays(bed({ covered: true }), always),
    );
  });

  test("frees the water that was held back for it", () => {
    const second = (gone: boolean) =>
      ran(
        watered(bed(), {
          holdDays: 30,
          tanks: [tank(3, { startShare: 1 })],
          beds: [bed({ id: "a", priority: 1, ...(gone ? { letGo } : {}) }), bed({ id: "b", priority: 2 })],
        }),
        dry(),
      ).beds[1]?.got ?? 0;
    expect(second(true)).toBeGreaterThan(second(false));
  });

  test("is watered again in the next season", () => {
    const two = recordOf(new Float64Array(730), YEAR);
    const seasons = ran(watered(bed({ letGo })), two).beds[0]?.seasons ?? [];
    expect(seasons.map(({ year }) => year)).toEqual([2021, 2022]);
    // The second season begins on drier soil than the first, so it takes at least as much.
    expect(seasons[1]?.given).toBeGreaterThanOrEqual(seasons[0]?.given ?? Infinity);
  });
});

describe("deciding on last evening's soil or on this morning's", () => {
  const wet = recordOf(
    Float64Array.from({ length: 365 }, (_, day) => (day % 4 === 0 ? 8 * MM : 0)),
    YEAR,
  );
  const met = (more: Partial<BedPart>) => ran(watered(bed(more)), wet).beds[0]?.got ?? 0;

  test("differ on an open bed: the morning's knows what fell, so it gives less and lets more rain in", () => {
    expect(met({ decidesOn: "morning" })).toBeLessThan(met({ decidesOn: "evening" }));
    const rain = (decidesOn: BedPart["decidesOn"]) =>
      ran(watered(bed({ decidesOn })), wet).beds[0]?.seasons[0]?.rain ?? 0;
    expect(rain("morning")).toBeGreaterThan(rain("evening"));
  });

  test("are the same to the bit under cover, and where no rain falls", () => {
    expect(met({ covered: true, decidesOn: "morning" })).toBe(met({ covered: true, decidesOn: "evening" }));
    const given = (decidesOn: BedPart["decidesOn"]) => ran(watered(bed({ decidesOn })), dry()).beds[0]?.given;
    expect(given("morning")).toEqual(given("evening"));
  });

  test("either way a bed with water enough is never short and gets what it needs, to one watering", () => {
    for (const decidesOn of ["morning", "evening"] as const) {
      const answer = ran(watered(bed({ decidesOn })), seattle()).beds[0];
      expect(answer?.shareMet).toBe(1);
      expect(Math.abs((answer?.got ?? 0) - (answer?.need ?? 0))).toBeLessThan((0.15 * 0.3 * 0.8 * 10) / 0.8);
    }
  });
});

describe("two equal beds on a scarce drum", () => {
  // One bed's season, and no more.
  const beds = (holdDays: number) =>
    ran(
      watered(bed(), {
        holdDays,
        tanks: [tank(6.6, { startShare: 1 })],
        beds: [bed({ id: "first", priority: 1 }), bed({ id: "second", priority: 2 })],
      }),
      dry(),
    ).beds.map(({ daysShort }) => daysShort);

  test("with holding back the first is never stressed while the second goes without; without it, it is", () => {
    const [first, second] = beds(123);
    expect(first).toBe(0);
    expect(second).toBeGreaterThan(30);
    expect(beds(0)[0]).toBeGreaterThan(0);
  });
});

test("a bed's seasons, one by one, are what its means are the means of", () => {
  const answer = ran(watered(bed({ wateredBy: [] }), { eto: steadyEto(5 * MM) }), seattle()).beds[0];
  const mean = (pick: (season: NonNullable<typeof answer>["seasons"][number]) => number) =>
    (answer?.seasons ?? []).reduce((sum, season) => sum + pick(season), 0) / (answer?.seasons.length ?? 0);
  expect(answer?.seasons.map(({ year }) => year)).toEqual([2012, 2013, 2014, 2015]);
  expect(mean(({ need }) => need)).toBeCloseTo(answer?.need ?? Number.NaN, 9);
  expect(mean(({ daysShort }) => daysShort)).toBeCloseTo(answer?.daysShort ?? Number.NaN, 9);
  expect(mean(({ useShare }) => useShare ?? 0)).toBeLessThan(1);
  expect(mean(({ given }) => given)).toBe(0);
});
