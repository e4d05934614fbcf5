// Rain of one's own forecast in today's and the week's lines: they are the season's with it, and say what it spares.

import { describe, expect, test } from "vitest";
import type { Forecast } from "../../src/season/forecast.ts";
import { fromToday } from "../../src/season/from-today.ts";
import type { BedPart, SeasonInput } from "../../src/season/input.ts";
import { type WeekGiven, weekPlan } from "../../src/season/week-plan.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, inputOf, MM, recordOf, steadyEto, tank } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const TODAY = dayNumber(2021, 6, 15);

/** 4 mm a day, asked for at 16 mm: soaked today, it asks on the fourth day from now. */
const own: Partial<BedPart> = {
  crops: [crop({ planted: "05-01", stages: [0, 0, 120, 0], kcMiddle: 1, rootStart: 0.3 })],
};
const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    eto: steadyEto(4 * MM),
    tanks: [tank(5, { startShare: 1 })],
    carries: [carry()],
    beds: [bed(own)],
    ...more,
  });

const GIVEN = {
  today: TODAY,
  drying: "usual" as const,
  levels: { tank: 1 },
  charges: {},
  lastSoaked: { bed: TODAY },
};

function weekOf(forecast: Forecast, more: Partial<WeekGiven> = {}, input = plan()) {
  const record = recordOf(new Float64Array(365), YEAR, { madeUp: false });
  const answer = weekPlan(input, record, { ...GIVEN, days: 7, forecast, ...more });
  if ("failed" in answer) throw new Error(answer.failed);
  return answer;
}

const rain = (day: number, depth: number, chance: number | null = null): Forecast => ({
  [TODAY + day]: { rain: depth, chance, highest: null },
});

describe("rain that is expected", () => {
  const dry = weekOf({});

  test("puts the next watering off, and says which one and until when", () => {
    expect(dry.lines.map(({ day }) => day - TODAY)).toEqual([4]);
    const wet = weekOf(rain(2, 8 * MM));
    expect(wet.lines.map(({ day }) => day - TODAY)).toEqual([6]);
    expect(wet.rains).toEqual([{ day: TODAY + 2, rain: 8 * MM }]);
    expect(wet.spared).toEqual([
      {
        day: TODAY + 4,
        bed: "bed",
        asked: dry.lines[0]?.asked,
        rain: 8 * MM,
        rainOn: TODAY + 2,
        until: TODAY + 6,
      },
    ]);
    expect(weekOf(rain(3, 30 * MM)).spared[0]?.until).toBeNull();
  });

  test("counts where it is likelier than not, or where nobody says how likely", () => {
    for (const chance of [0.5, 0.9, null]) expect(weekOf(rain(2, 8 * MM, chance)).spared).toHaveLength(1);
    const unlikely = weekOf(rain(2, 8 * MM, 0.4));
    expect([unlikely.rains, unlikely.spared, unlikely.lines]).toEqual([[], [], dry.lines]);
  });

  test("spares nothing under cover, and too little rain or rain on a later day than the watering spares nothing", () => {
    const covered = plan({ beds: [bed({ ...own, covered: true })] });
    expect(weekOf(rain(2, 30 * MM), {}, covered).spared).toEqual([]);
    expect(weekOf(rain(2, 0.5 * MM)).spared).toEqual([]);
    expect(weekOf(rain(5, 30 * MM)).lines[0]).toEqual(dry.lines[0]);
    expect(weekOf(rain(5, 30 * MM)).spared).toEqual([]);
  });

  test("on the day of the watering is waited for, as far as it goes", () => {
    // It lacks 16 mm on the morning of the fourth day. With 8 mm on that day it lacks 8, 12 the next and 16 the one after.
    const eight = weekOf(rain(4, 8 * MM));
    expect(eight.lines.map(({ day }) => day - TODAY)).toEqual([6]);
    expect(eight.spared).toMatchObject([{ day: TODAY + 4, rainOn: TODAY + 4, until: TODAY + 6 }]);
    // Unlikely rain is not waited for.
    expect(weekOf(rain(4, 8 * MM, 0.4)).lines).toEqual(dry.lines);
  });

  test("today spares a bed that is overdue just so much: 8 mm on 10 m2 over 0.8 are 100 L", () => {
    const overdue = { lastSoaked: { bed: TODAY - 8 } };
    const asked = (forecast: Forecast) => {
      const [first] = weekOf(forecast, overdue).lines;
      return [first?.day, first?.asked ?? 0] as const;
    };
    const [[, without], [day, withRain]] = [asked({}), asked(rain(0, 8 * MM))];
    expect(day).toBe(TODAY);
    expect(without - withRain).toBeCloseTo(0.1, 9);
    expect(weekOf(rain(0, 80 * MM), overdue).spared[0]).toMatchObject({ day: TODAY, rainOn: TODAY });
  });

  test("today is told alike by how long it lasts and by today's lines", () => {
    const input = plan();
    const record = recordOf(new Float64Array(4 * 365), dayNumber(2017, 1, 1), { madeUp: true });
    const lasts = (forecast: Forecast) => {
      const given = { ...GIVEN, lastSoaked: { bed: TODAY - 20 }, forecast, heldBack: ["bed"] };
      const from = fromToday(input, record, given);
      if ("failed" in from || from.kind !== "usual_and_dry") throw new Error("no two runs");
      const week = weekPlan(input, record, { ...given, days: 7 });
      if ("failed" in week) throw new Error(week.failed);
      return [from.usual.short, [...week.lines, ...week.refused].some(({ day }) => day === TODAY)];
    };
    // Held back it is short today; with 80 mm it is not, and asks for nothing.
    expect(lasts({})).toEqual([TODAY, true]);
    const [short, asks] = lasts(rain(0, 80 * MM));
    expect(asks).toBe(false);
    expect(short).not.toBe(TODAY);
  });

  test("falls on the day itself for a bed that decides in the morning", () => {
    const morning = plan({ beds: [bed({ ...own, decidesOn: "morning" })] });
    const soaked = { lastSoaked: { bed: TODAY - 4 } };
    expect(weekOf({}, soaked, morning).lines[0]?.day).toBe(TODAY);
    expect(weekOf(rain(0, 20 * MM), soaked, morning).spared[0]).toMatchObject({ day: TODAY, rainOn: TODAY });
  });
});
