// Single sentences, each with the slip that a random place of the sweep once found in it.

import { describe, expect, test } from "vitest";
import { filledWith } from "../../src/graph/fill.ts";
import { counted } from "../../src/telling/asked.ts";
import { wateringFacts } from "../../src/telling/bed-day.ts";
import { inDriestYear } from "../../src/telling/few-years.ts";
import { printedFoot } from "../../src/telling/printed.ts";
import { headline, outlookWords, type ToldWeek } from "../../src/telling/week.ts";

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
    const told = inDriestYear({ years: 2, short: 1.2, share: 0.98, usual: 1, leftOut: 0 });
    expect(told).toContainEqual(expect.objectContaining({ after: " day" }));
    const result = () => ({ state: "ready", value: 1.2, origin: "computed" }) as const;
    expect(counted({ result, cards: [] }, "season.days_short", "trouble", "day")).toMatchObject({
      after: " day",
    });
  });

  test("place 19: 1 can in 1 trip", () => {
    const ways = [{ id: "cans", time: 60, trips: 1, cans: 1, setUp: 0, reach: 1 }];
    const said = headline({ week: week({ ways }), titleOf: (id) => id, weekdays: "Friday", cans: "1" }, show);
    expect(said).toContain("1 can in 1 trip,");
  });
});

const titleOf = (id: string): string => ({ tote: "Two totes", tub: "Tub", barrel: "Barrel" })[id] ?? id;

test("a week's waterings are promised only where there is water for all of them", () => {
  const said = (outlook: ToldWeek["outlook"]) =>
    headline({ week: week({ outlook, each: 23 }), titleOf, weekdays: "Monday and Friday", cans: "9" }, show);
  expect(said("all")).toMatch(/^Monday and Friday, 23/);
  for (const outlook of ["some", "none"] as const)
    expect(said(outlook)).toMatch(/^With enough water: Monday and Friday, 23/);
});

describe("a tank that is not enough", () => {
  const said = (bound: ToldWeek["bound"], tanks: Partial<ToldWeek["tanks"]> = {}) => {
    const all = { reach: ["tote", "tub"], others: true, filled: ["tub"], ...tanks };
    return outlookWords(week({ bound, given: 40, outlook: "some", tanks: all }), show, titleOf);
  };

  test("is named where the place has others besides, or where it is the only one", () => {
    expect(said("rain")).toBe(
      "There will be 40 of 100: too little water in Two totes and Tub, for want of rain.",
    );
    expect(said("storage", { reach: ["barrel"], others: false })).toContain("too little water in Barrel; ");
    expect(said("loss", { reach: ["barrel"] })).toContain("too little water in Barrel; leaks");
    // Where all there are run out, or many, none is blamed.
    expect(said("rain", { others: false })).toContain("the tanks run out, for want of rain");
    expect(said("rain", { reach: ["a", "b", "c"] })).toContain("the tanks run out, for want of rain");
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

  test("is said to be a little less, not 100 of 100", () => {
    expect(outlookWords(week(short), show, titleOf)).toMatch(/^There will be a little less than 100: /);
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
