// The coming week: what a bed lacks today, when it asks and for how much, by what means, and whether it will get it.

import { describe, expect, test } from "vitest";
import type { BedWeek } from "../../src/season/bed-week.ts";
import { comingDays, usualDrying } from "../../src/season/coming-days.ts";
import type { BedPart, SeasonInput } from "../../src/season/input.ts";
import { type WeekGiven, weekPlan } from "../../src/season/week-plan.ts";
import { calendarDate, dayNumber, weekday } from "../../src/units/calendar.ts";
import { happening } from "./carried.ts";
import {
  bed,
  carry,
  crop,
  delivery,
  inputOf,
  LITRE,
  MM,
  recordOf,
  roof,
  seattle,
  steadyEto,
  tank,
} from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const dry = (days = 365) => recordOf(new Float64Array(days), YEAR);
/** A full-grown crop that uses 4 mm a day, 5 mm at the hose, and asks once 24 mm are gone. */
const steady: Partial<BedPart> = {
  crops: [crop({ planted: "05-01", stages: [0, 0, 120, 0], kcMiddle: 1, rootStart: 0.3 })],
};
// p = 0.4 + 0.04 (5 - 4) = 0.44 of the 45 mm that 0.3 m of soil hold.
const ASKS_AT = 0.44 * 0.15 * 0.3;
const TODAY = dayNumber(2021, 6, 15);

const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    tanks: [tank(5, { startShare: 1 })],
    carries: [carry()],
    beds: [bed(steady)],
    ...more,
  });
const given = (more: Partial<WeekGiven> = {}): WeekGiven => ({
  today: TODAY,
  days: 7,
  drying: "usual",
  levels: {},
  charges: {},
  lastSoaked: {},
  ...more,
});

function weekOf(more: Partial<SeasonInput> = {}, now: Partial<WeekGiven> = {}, record = dry()): BedWeek {
  const answer = weekPlan(plan(more), record, given(now));
  if ("failed" in answer) throw new Error(answer.failed);
  const week = answer.beds[0];
  if (!week) throw new Error("no bed");
  return week;
}

describe("what a bed lacks today", () => {
  test("is its crops' use since it was last soaked through", () => {
    const week = weekOf({}, { lastSoaked: { bed: TODAY - 3 } });
    expect(week.lacks).toBeCloseTo((3 * 4 * MM * 10) / 0.8, 12);
    expect(week.lacksShare).toBeCloseTo((3 * 4 * MM) / ASKS_AT, 9);
    expect(week.assumed).toBe(false);
  });

  test("is less by the rain that the record holds since then, and none of it under cover", () => {
    const rain = new Float64Array(365);
    rain[TODAY - 1 - YEAR] = 6 * MM;
    const lacks = (covered: boolean) =>
      weekOf(
        { beds: [bed({ ...steady, covered })] },
        { lastSoaked: { bed: TODAY - 3 } },
        recordOf(rain, YEAR, { madeUp: false }),
      ).lacks;
    expect(lacks(false)).toBeCloseTo((6 * MM * 10) / 0.8, 12);
    expect(lacks(true)).toBeCloseTo((12 * MM * 10) / 0.8, 12);
  });

  test("is what it usually is on this day of the year where no soak of the last 60 days is known, and says so", () => {
    // Refilled each fourth morning, it lacks 4, 8, 12 or 16 mm in the evenings of the fortnight around: 8 or 12 in the middle.
    for (const lastSoaked of [{}, { bed: TODAY - 61 }]) {
      const week = weekOf({}, { lastSoaked });
      expect(week.assumed).toBe(true);
      expect([8, 12]).toContainEqual(Math.round((week.lacks * 0.8) / 10 / MM));
    }
    expect(weekOf({}, { lastSoaked: { bed: TODAY - 60 } }).assumed).toBe(false);
  });
});

describe("the week's waterings", () => {
  test("come in time, a day before the easy water is gone: soaked on Monday, asked for every fourth day after", () => {
    // 19.8 mm at 4 mm a day: four mornings after the soak one more day would be all of it.
    const monday = dayNumber(2021, 6, 14);
    expect(weekday(monday)).toBe(1);
    const week = weekOf({}, { today: monday, days: 14, lastSoaked: { bed: monday } });
    expect(week.waterings.map(({ date }) => date - monday)).toEqual([4, 8, 12]);
    expect(week.waterings.map((watering) => watering.weekday)).toEqual([5, 2, 6]);
    expect(week.each).toBeCloseTo((4 * 4 * MM * 10) / 0.8, 12);
    expect(week.outlook).toBe("all");
    expect(week.bound).toBeNull();
    expect(week.use).toBeCloseTo((14 * 4 * MM * 10) / 0.8, 12);
  });

  test("on set weekdays are on those, each with its amount", () => {
    const rule = { kind: "weekdays" as const, days: [2, 5], volume: 68 * LITRE };
    const week = weekOf({ beds: [bed({ ...steady, rule })] });
    expect(week.waterings.map((watering) => [watering.weekday, watering.asked])).toEqual([
      [2, 68 * LITRE],
      [5, 68 * LITRE],
    ]);
  });

  test("say what each takes by every means alone: minutes of the pump, or rounds and cans", () => {
    const rule = { kind: "weekdays" as const, days: [2, 5], volume: 68 * LITRE };
    const { ways } = weekOf(
      {
        beds: [bed({ ...steady, rule, wateredBy: ["pump", "cans"] })],
        deliveries: [delivery({ setUp: 120 })],
      },
      { levels: { tank: 1 } },
    );
    // 68 L at 0.2 L/s; 9 cans of 8 L, two at a time.
    expect(ways).toEqual([
      { id: "pump", time: expect.closeTo(340, 6), setUp: 120, trips: 0, cans: 0, reach: 5 },
      { id: "cans", time: 5 * 180, setUp: 0, trips: 5, cans: 9, reach: 5 },
    ]);
  });

  test("outside the season, or where nothing grows, are none", () => {
    expect(weekOf({}, { today: dayNumber(2021, 10, 1) }).outlook).toBe("asks_nothing");
    const { outlook, lacks, each, ways } = weekOf({ beds: [bed({ crops: [] })] });
    expect({ outlook, lacks, each, ways }).toEqual({
      outlook: "asks_nothing",
      lacks: 0,
      each: null,
      ways: [],
    });
  });
});

describe("whether a bed will get it", () => {
  test("follows today's level, and says what stands in the way", () => {
    const low = weekOf({}, { levels: { tank: 0.02 } });
    expect(low.outlook).toBe("some");
    expect(low.given).toBeCloseTo(0.1, 12);
    expect(low.bound).toBe("unroofed");
    expect(weekOf({ roofs: [roof()] }, { levels: { tank: 0.02 } }).bound).toBe("rain");
    expect(weekOf({}, { levels: { tank: 0 } }).outlook).toBe("none");
    expect(weekOf({ minutesPerDay: 180 }).bound).toBe("hands");
  });

  test("counts a watering once, however often the bed has to ask for it again", () => {
    const low = weekOf({}, { levels: { tank: 0.02 } });
    const full = weekOf();
    expect(low.waterings.map(({ date, asked }) => [date, asked])).toEqual(
      full.waterings.map(({ date, asked }) => [date, asked]),
    );
    // It goes on asking to the week's end, for what was short and what its crops use meanwhile and for no more.
    expect(low.asked).toBeLessThanOrEqual((low.lacks + low.use) * (1 + 1e-9));
    expect(low.asked).toBeLessThan(1.2 * full.asked);
    expect(full.outlook).toBe("all");
  });

  test("lets a watering that one morning's water or hands cannot do be done on the days after", () => {
    // Two rounds of 16 L a morning, of the 250 L that it lacks; on a set weekday there is one morning only.
    const rule = { kind: "weekdays" as const, days: [2], volume: null };
    const slow = weekOf(
      { minutesPerDay: 2 * 180, beds: [bed(steady)] },
      { days: 5, lastSoaked: { bed: TODAY - 5 } },
    );
    expect(slow.waterings[0]?.from.length).toBeGreaterThan(1);
    expect(slow.waterings[0]?.bound).toBe("hands");
    const weekly = weekOf({ minutesPerDay: 2 * 180, beds: [bed({ ...steady, rule })] });
    expect(weekly.waterings[0]?.given).toBeCloseTo(32 * LITRE, 12);
  });

  test("comes to what its lines come to, on late days too, and a watering once begun asks for the rest of this morning's", () => {
    const slow = weekPlan(plan({ minutesPerDay: 2 * 180 }), dry(), given({ lastSoaked: { bed: TODAY - 5 } }));
    const begun = weekPlan(
      plan(),
      dry(),
      given({ lastSoaked: { bed: TODAY - 5 }, happened: [happening("gave", "bed", TODAY, 0.1)] }),
    );
    for (const answer of [slow, begun]) {
      if ("failed" in answer) throw new Error(answer.failed);
      const [week] = answer.beds;
      const sum = answer.lines.reduce((all, { volume }) => all + volume, 0);
      expect(week?.given).toBeCloseTo(sum, 12);
      expect(week?.waterings[0]?.date).toBe(answer.lines[0]?.day);
      expect(week?.waterings[0]?.asked).toBeCloseTo(answer.lines[0]?.asked ?? 0, 12);
    }
  });

  test("promises what is left of today's minutes: a watering noted this morning took its share of them", () => {
    // Half an hour is ten rounds of 3 minutes and 16 L; what was noted took seven, of which the last was half full.
    const two = {
      minutesPerDay: 10 * 180,
      beds: [bed({ ...steady, id: "a" }), bed({ ...steady, id: "b", priority: 2 })],
    };
    const both = { a: TODAY - 8, b: TODAY - 8 };
    const gave = (litres: number, more = {}) => [happening("gave", "a", TODAY, litres * LITRE, more)];
    const today = (happened: WeekGiven["happened"] = []) => {
      const answer = weekPlan(plan(two), dry(), given({ lastSoaked: both, happened }));
      if ("failed" in answer) throw new Error(answer.failed);
      const own = answer.lines.filter(({ day }) => day === TODAY);
      return { trips: own.reduce((sum, { trips }) => sum + trips, 0), answer };
    };
    expect(today().trips).toBe(10);
    expect(today(gave(6.5 * 16)).trips).toBe(3);
    expect(today(gave(6.5 * 16, { by: "cans", minute: 400 })).trips).toBe(3);
    // Tomorrow has all its minutes again.
    const all = today(gave(1000));
    expect(all.trips).toBe(0);
    const next = all.answer.lines.filter(({ day }) => day === TODAY + 1);
    expect(next.reduce((sum, { trips }) => sum + trips, 0)).toBe(10);
    expect(all.answer.refused.filter(({ day }) => day === TODAY).map(({ why }) => why)).toContain("hands");
  });

  test("goes by priority: of two beds on a low tank the first is served and the second gets what is left", () => {
    const answer = weekPlan(
      plan({
        beds: [bed({ ...steady, id: "a", priority: 2 }), bed({ ...steady, id: "b", priority: 1 })],
      }),
      dry(),
      given({ days: 4, levels: { tank: 0.05 } }),
    );
    const outlooks = "failed" in answer ? [] : answer.beds.map(({ id, outlook }) => [id, outlook]);
    expect(outlooks).toEqual([
      ["a", "some"],
      ["b", "all"],
    ]);
  });

  test("holds back by what the whole record says of the beds before, not by the week alone", () => {
    const second = (holdDays: number) => {
      const answer = weekPlan(
        plan({
          holdDays,
          beds: [bed({ ...steady, id: "a", priority: 1 }), bed({ ...steady, id: "b", priority: 2 })],
        }),
        dry(),
        given({ levels: { tank: 0.2 }, lastSoaked: { a: TODAY } }),
      );
      return "failed" in answer ? null : answer.beds[1]?.bound;
    };
    expect(second(0)).toBeNull();
    // 30 peak days of the first bed are 1.5 m3, more than the 1 m3 there is.
    expect(second(30)).toBe("held_back");
  });

  test("names the first day on which crops would hold back were nobody to water", () => {
    const soaked = weekOf({}, { lastSoaked: { bed: TODAY } });
    // After five days 20 mm are short, more than the 19.8 in easy reach.
    expect(soaked.thirstyFrom).toBe(TODAY + 5);
    expect(weekOf({}, { days: 4, lastSoaked: { bed: TODAY } }).thirstyFrom).toBeNull();
  });

  test("says what stands in the tanks by now: a dip less what was given since", () => {
    const gave = happening("gave", "bed", TODAY - 2, 0.1);
    const answer = weekPlan(
      plan({ tanks: [tank(5)] }),
      dry(),
      given({
        happened: [happening("dipped", "tank", TODAY - 4, 0.5, { side: "before" }), gave],
        levels: {},
      }),
    );
    expect("failed" in answer ? null : answer.now["tank"]).toBeCloseTo(2.4, 9);
  });

  test("says which tanks' levels nobody gave", () => {
    const answer = weekPlan(
      plan({ tanks: [tank(5), tank(1, { id: "tub" })] }),
      dry(),
      given({ levels: { tub: 0.5 } }),
    );
    expect("failed" in answer ? null : answer.assumedTanks).toEqual(["tank"]);
  });
});

describe("a bed that may be let go", () => {
  const letGo = { from: "06-01", dryDays: 20 };
  const gone = (rainOn: number | null, today = TODAY) => {
    const rain = new Float64Array(365);
    if (rainOn !== null) rain[rainOn - YEAR] = 9 * MM;
    return weekOf({ beds: [bed({ ...steady, letGo })] }, { today }, recordOf(rain, YEAR, { madeUp: false }));
  };

  test("has been, where the record holds so dry a spell before today", () => {
    expect(gone(null).outlook).toBe("asks_nothing");
    expect(gone(dayNumber(2021, 5, 31)).outlook).toBe("all");
  });

  test("has not, where the record ends before today and nobody knows", () => {
    expect(gone(null, dayNumber(2022, 6, 15)).outlook).toBe("all");
  });
});

describe("days that lie ahead", () => {
  const eto = Float64Array.from({ length: 1461 }, (_, day) => (day < 365 ? 2 : day < 730 ? 4 : 6) * MM);

  test("dry as the mean of the years around the date, or as nine years in ten stay under", () => {
    const date = dayNumber(2030, 7, 1);
    // 2, 4, 6 and 6 mm a day.
    expect(usualDrying(eto, YEAR, date, "usual")).toBeCloseTo(4.5 * MM, 12);
    expect(usualDrying(eto, YEAR, date, "hot")).toBeCloseTo(6 * MM, 12);
  });

  test("are the record's before today and usual ones from then on, without rain", () => {
    const record = recordOf(new Float64Array(365).fill(3 * MM), YEAR, { madeUp: false });
    const dates = { first: TODAY - 2, today: TODAY, last: TODAY + 1 };
    const coming = comingDays(record, new Float64Array(365).fill(5 * MM), dates, "usual");
    expect([...coming.record.rain]).toEqual([3 * MM, 3 * MM, 0, 0]);
    expect(coming.record.firstDay).toBe(TODAY - 2);
    expect([...coming.eto].map((depth) => Math.round(depth / MM))).toEqual([5, 5, 5, 5]);
  });

  test("can be years after the record's end", () => {
    const answer = weekPlan(
      plan({ eto: steadyEto(4 * MM) }),
      seattle(),
      given({ today: dayNumber(2026, 6, 15), lastSoaked: { bed: dayNumber(2026, 6, 10) } }),
    );
    expect("failed" in answer ? null : answer.beds[0]?.lacksShare).toBeCloseTo((5 * 4 * MM) / ASKS_AT, 9);
  });
});

describe("beds to be planted", () => {
  const TWO_ROUNDS = 2 * 180;
  const late = (days: number): BedPart => {
    const { month, day } = calendarDate(TODAY + days);
    const on = [month, day].map((part) => String(part).padStart(2, "0")).join("-");
    return bed({
      ...steady,
      id: "late",
      priority: 2,
      crops: [...(steady.crops ?? []), crop({ planted: on })],
    });
  };
  /** The first bed of each day of the week, and of the season's own run from there. */
  const firstOf = (planted: number, more: Partial<SeasonInput> = {}) => {
    const beds = [bed({ ...steady, id: "early", priority: 1 }), late(planted)];
    const input = plan({ beds, minutesPerDay: TWO_ROUNDS, ...more });
    const soaked = { levels: { tank: 1 }, lastSoaked: { early: TODAY - 9, late: TODAY - 9 } };
    const answer = weekPlan(input, dry(), given(soaked));
    if ("failed" in answer) throw new Error(answer.failed);
    const first = [...answer.lines, ...answer.refused].filter(({ day }) => day === TODAY);
    return first.map((one) => `${one.bed}${"volume" in one ? "" : " none"}`);
  };

  test("come first on a day whose time does not do for all (common practice, no source), that day and three before it", () => {
    for (const days of [0, 1, 3]) expect(firstOf(days)).toEqual(["late", "early none"]);
    expect(firstOf(4)).toEqual(["early", "late none"]);
    // What was planted yesterday is in the ground.
    expect(firstOf(-1)).toEqual(["early", "late none"]);
  });

  test("wait for their turn where there is time for all, or where nobody says how much there is", () => {
    expect(firstOf(1, { minutesPerDay: 24 * 3600 })).toEqual(["early", "late"]);
    expect(firstOf(1, { minutesPerDay: null })).toEqual(["early", "late"]);
  });

  test("[G9] come first in the season's own run as in the week's, though that ends before the planting", () => {
    const input = plan({
      beds: [bed({ ...steady, id: "early", priority: 1 }), late(8)],
      minutesPerDay: TWO_ROUNDS,
    });
    const answer = weekPlan(input, dry(), given({ lastSoaked: { early: TODAY - 9, late: TODAY - 9 } }));
    const longer = weekPlan(
      input,
      dry(),
      given({ lastSoaked: { early: TODAY - 9, late: TODAY - 9 }, days: 20 }),
    );
    if ("failed" in answer || "failed" in longer) throw new Error("failed");
    expect(answer.lines).toEqual(longer.lines.filter(({ day }) => day < TODAY + 7));
    // Five days on it is three days to its planting: within this week, though not within its days.
    const on = (day: number) =>
      answer.lines.filter((line) => line.day === TODAY + day).map((line) => line.bed);
    expect([on(4)[0], on(5)[0]]).toEqual(["early", "late"]);
  });
});
