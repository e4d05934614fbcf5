// Single sentences, each with the slip that a random place of the sweep once found in it.

import { describe, expect, test } from "vitest";
import { filledWith } from "../../src/graph/fill.ts";
import type { DayLine } from "../../src/season/day-lines.ts";
import { counted } from "../../src/telling/asked.ts";
import { wateringFacts } from "../../src/telling/bed-day.ts";
import { inDriestYear } from "../../src/telling/few-years.ts";
import { printedFoot } from "../../src/telling/printed.ts";
import { headline, outlookWords, type ToldWeek } from "../../src/telling/week.ts";
import { REASON_OPTIONS, whyShort } from "../../src/telling/words/bounds.ts";
import { dayNumber } from "../../src/units/calendar.ts";

/** To two figures, as a gardener says it. */
const show = (si: number): string => String(Number(si.toPrecision(2)));

const week = (more: Partial<ToldWeek>): ToldWeek => ({
  id: "bed",
  ways: [],
  waterings: [],
  asked: 100,
  given: 100,
  each: 1,
  outlook: "all",
  bound: null,
  lacks: 0,
  lacksShare: 0,
  use: 0,
  thirstyFrom: null,
  assumed: false,
  driver: "either",
  tanks: { reach: ["tote", "tub"], others: false, filled: ["tub"] },
  ...more,
});

describe("one of a thing", () => {
  test("place 20: it freezes on 1 day, not on 1 days; a soak in 1 go", () => {
    expect(filledWith("on {frost_days} days while", () => "1")).toBe("on 1 day while");
    expect(filledWith("in {soak_passes} goes of {each}", (name) => (name === "each" ? "4 gal" : "1"))).toBe(
      "in 1 go of 4 gal",
    );
    expect(filledWith("on {frost_days} days", () => "12")).toBe("on 12 days");
    expect(filledWith("{} waterings a charge", () => "1")).toBe("1 watering a charge");
  });

  test("place 36: a mean of 1.2 days reads as 1 day", () => {
    const told = inDriestYear({ years: 2, short: 1.2, share: 0.98, usual: 1, leftOut: 0, madeUp: false });
    expect(told).toContainEqual(expect.objectContaining({ after: " day" }));
    const result = () => ({ state: "ready", value: 1.2, origin: "computed" }) as const;
    expect(counted({ result, cards: [] }, "season.days_short", "trouble", "day")).toMatchObject({
      after: " day",
    });
  });

  test("place 19: 1 can in 1 trip", () => {
    const ways = [{ id: "cans", time: 60, trips: 1, cans: 1, setUp: 0, reach: 1 }];
    const said = headline({ week: week({ ways }), lines: [lineOn(FRIDAY, 1)], titleOf: (id) => id }, show);
    expect(said).toBe("Friday, 1; or 1 can in 1 trip, 60 with cans");
  });
});

const titleOf = (id: string): string => ({ tote: "Two totes", tub: "Tub", barrel: "Barrel" })[id] ?? id;

const FRIDAY = dayNumber(2020, 7, 24);
const lineOn = (day: number, volume: number): DayLine => {
  const go = { by: "pump", volume, time: 60, trips: 0, hands: 60, setUp: 0, wait: 0 };
  const { by, time, trips, hands } = go;
  return {
    day,
    bed: "bed",
    volume,
    by,
    time,
    trips,
    hands,
    tankfuls: 1,
    waits: [],
    asked: volume,
    why: null,
    goes: [go],
  };
};

describe("a week's waterings", () => {
  const said = (lines: readonly DayLine[], more: Partial<ToldWeek> = {}) =>
    headline({ week: week(more), lines, titleOf }, show);

  test("are told as the lines have them: alike as so much each, others one by one", () => {
    expect(said([lineOn(FRIDAY - 4, 23), lineOn(FRIDAY, 23)])).toBe("Monday and Friday, 23 each");
    expect(said([lineOn(FRIDAY - 4, 44), lineOn(FRIDAY, 33)])).toBe("44 on Monday and 33 on Friday");
  });

  test("are not promised where there is not water for all of them", () => {
    for (const outlook of ["some", "none"] as const) expect(said([lineOn(FRIDAY, 23)], { outlook })).toBe("");
  });

  test("name no other means for what its tank cannot give at once", () => {
    const way = { id: "cans", time: 60, trips: 1, cans: 1, setUp: 0 };
    expect(said([lineOn(FRIDAY, 77)], { ways: [{ ...way, reach: 44 }] })).toBe("Friday, 77");
    expect(said([lineOn(FRIDAY, 40)], { ways: [{ ...way, reach: 44 }] })).toContain("; or 1 can");
  });
});

describe("a tank that is not enough", () => {
  const said = (bound: ToldWeek["bound"], tanks: Partial<ToldWeek["tanks"]> = {}) => {
    const all = { reach: ["tote", "tub"], others: true, filled: ["tub"], ...tanks };
    return outlookWords(week({ bound, given: 40, outlook: "some", tanks: all }), show, titleOf);
  };

  test("is named where the place has others besides, or where it is the only one", () => {
    expect(said("rain")).toBe("There will be 40 of 100: too little water in Two totes and Tub.");
    expect(said("storage", { reach: ["barrel"], others: false })).toContain("too little water in Barrel; ");
    expect(said("loss", { reach: ["barrel"] })).toContain("too little water in Barrel; leaks");
    // Where all there are run out, or many, none is blamed.
    expect(said("rain", { others: false })).toContain("the tanks run out");
    expect(said("rain", { reach: ["a", "b", "c"] })).toContain("the tanks run out");
  });

  test("lacks rain in a season that is known, of which today's page does not speak", () => {
    const label = REASON_OPTIONS.find(({ word }) => word === "rain")?.label;
    expect(label).toBe("the tanks run out, for want of rain");
    expect(whyShort("rain", "either")).toBe("the tanks run out");
  });

  test("that a line fills is named where its size or its refill is what lacks", () => {
    expect(said("refill")).toContain("the refill of Tub comes too late");
    expect(said("tankful")).toContain("a watering takes more than fits in Tub");
    expect(said("refill", { filled: [] })).toContain("the small tank is not full again in time");
    expect(said("hands")).toContain("your time is used up");
  });
});

describe("less that reads as much", () => {
  const short = { bound: "rain", given: 99.9, outlook: "some" } as const;

  test("is told by what is wanting, or as a little less, not as 100 of 100", () => {
    const finely: typeof show = (si) => (si < 1 ? si.toFixed(1) : show(si));
    expect(outlookWords(week(short), finely, titleOf)).toMatch(/^There will be all but 0\.1 of 100: /);
    const day = {
      date: "2021-07-03",
      asked: 100,
      given: 99.9,
      rain: 0,
      stressed: false,
      letGo: false,
      grows: true,
    };
    expect(wateringFacts({ ...day, bound: "rain" }, "either", show)).toMatch(/100, a little short: /);
  });
});

test("place 4: a sheet without a day of making has no day in its foot", () => {
  expect(printedFoot({ datum: "", madeBy: "", madeOn: "" })).toMatch(/Made by nobody named\.$/);
});
