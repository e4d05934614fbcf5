// Rain of one's own forecast in today's and the week's lines: they are the season's with it, and say what it spares.

import { describe, expect, test } from "vitest";
import type { Forecast } from "../../src/season/forecast.ts";
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

function weekOf(forecast: Forecast, more: Partial<WeekGiven> = {}, input = plan()) {
  const record = recordOf(new Float64Array(365), YEAR, { madeUp: false });
  const answer = weekPlan(input, record, {
    today: TODAY,
    days: 7,
    drying: "usual",
    levels: { tank: 1 },
    charges: {},
    lastSoaked: { bed: TODAY },
    forecast,
    ...more,
  });
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

  test("spares nothing under cover, and too little rain or rain after the watering spares nothing", () => {
    const covered = plan({ beds: [bed({ ...own, covered: true })] });
    expect(weekOf(rain(2, 30 * MM), {}, covered).spared).toEqual([]);
    expect(weekOf(rain(2, 0.5 * MM)).spared).toEqual([]);
    expect(weekOf(rain(5, 30 * MM)).lines[0]).toEqual(dry.lines[0]);
    expect(weekOf(rain(5, 30 * MM)).spared).toEqual([]);
  });

  test("falls on the day itself for a bed that decides in the morning", () => {
    const morning = plan({ beds: [bed({ ...own, decidesOn: "morning" })] });
    const soaked = { lastSoaked: { bed: TODAY - 4 } };
    expect(weekOf({}, soaked, morning).lines[0]?.day).toBe(TODAY);
    expect(weekOf(rain(0, 20 * MM), soaked, morning).spared[0]).toMatchObject({ day: TODAY, rainOn: TODAY });
  });
});
