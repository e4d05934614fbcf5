// A bed's ground between crops and around roots: nothing of what it lacks is made or lost by what grows in it.

import { describe, expect, test } from "vitest";
import { bedDays } from "../../src/season/bed-days.ts";
import type { BedPart } from "../../src/season/input.ts";
import { fullSoil, moveRoots, passDay } from "../../src/season/soil-step.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, inputOf, MM, ran, recordOf, tank } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const at = (date: string) => dayNumber(2021, Number(date.slice(0, 2)), Number(date.slice(3))) - YEAR;
const sky = (eto: number, rain: Float64Array = new Float64Array(365)) => ({
  firstDay: YEAR,
  arriving: rain,
  eto: new Float64Array(365).fill(eto),
});
const SEASON = { start: "05-01", end: "10-31" };
const answerOf = (
  part: Partial<BedPart>,
  { size = 100, rain = new Float64Array(365) }: { size?: number; rain?: Float64Array } = {},
) =>
  ran(
    inputOf({ ...SEASON, tanks: [tank(size, { startShare: 1 })], carries: [carry()], beds: [bed(part)] }),
    recordOf(rain, YEAR),
  );

describe("bare ground", () => {
  test("loses only what its evaporable layer holds, and an open bed takes its rain back up", () => {
    const rain = new Float64Array(365);
    rain[at("04-20")] = 12 * MM;
    const lacks = (wet: Float64Array) => {
      const days = bedDays(bed({ crops: [crop({ planted: "05-15" })] }), sky(4 * MM, wet));
      const soil = fullSoil();
      for (let day = 0; day < at("05-15"); day++) {
        moveRoots(days, day, soil);
        passDay(days, day, soil, 0);
        expect(soil.depletion).toBe(0);
        expect(soil.rest).toBeLessThanOrEqual(19 * MM + 1e-12);
      }
      return soil.rest;
    };
    // FAO-56 Table 19, loam: 19 mm in all.
    expect(lacks(new Float64Array(365))).toBeCloseTo(19 * MM, 4);
    expect(lacks(rain)).toBeLessThan(19 * MM);
  });

  test("under film stays as it is, under a cover it dries more slowly and no rain comes", () => {
    const owed = (part: Partial<BedPart>) =>
      answerOf({ crops: [crop({ planted: "05-15" })], ...part }).beds[0]?.owed;
    expect(owed({ bareLeft: 0 })).toBe(0);
    const wet = new Float64Array(365).fill(8 * MM);
    const covered = answerOf({ crops: [crop({ planted: "05-15" })], covered: true }, { rain: wet });
    expect(covered.beds[0]?.owed).toBeGreaterThan(18 * MM * 10);
    expect(answerOf({ crops: [crop({ planted: "05-15" })] }, { rain: wet }).beds[0]?.owed).toBeLessThan(
      6 * MM * 10,
    );
  });
});

describe("the first soak", () => {
  const part = { crops: [crop({ planted: "05-15" })] };

  test("is asked for on planting day, by any rule, and drawn from the tank", () => {
    for (const rule of [
      { kind: "soil" },
      { kind: "weekdays", days: [1], volume: null },
      { kind: "fixed", volume: 0.001, every: 10 * 86_400 },
    ] as const) {
      const answer = answerOf({ ...part, rule });
      const given = answer.beds[0]?.given ?? [];
      expect(given[at("05-15")]).toBeCloseTo((answer.beds[0]?.owed ?? 0) / 0.8, 9);
      expect(given[at("05-15")]).toBeGreaterThan(0.2);
      const stored = answer.tanks[0]?.stored ?? [];
      expect((stored[at("05-14")] ?? 0) - (stored[at("05-15")] ?? 0)).toBeCloseTo(given[at("05-15")] ?? 0, 9);
    }
  });

  test("is not asked for outside the season, nor by a bed that is let go", () => {
    expect(answerOf({ crops: [crop({ planted: "04-15" })] }).beds[0]?.given[at("04-15")]).toBe(0);
    const gone = answerOf({ crops: [crop({ planted: "06-15" })], letGo: { from: "05-01", dryDays: 3 } });
    expect(gone.beds[0]?.given[at("06-15")]).toBe(0);
  });
});

test("roots that deepen meet the ground as it is: what was not soaked at planting is missing later", () => {
  const dry = bedDays(bed({ crops: [crop({ planted: "05-15" })] }), sky(4 * MM));
  const soil = { depletion: 0, rest: 30 * MM, layer: 10 * MM, zone: 0 };
  moveRoots(dry, at("05-15"), soil);
  expect(soil.depletion + soil.rest).toBeCloseTo(30 * MM, 12);
  const young = soil.depletion;
  expect(young).toBeGreaterThan(10 * MM);
  moveRoots(dry, at("06-15"), soil);
  expect(soil.depletion).toBeGreaterThan(young);
  expect(soil.depletion + soil.rest).toBeCloseTo(30 * MM, 12);
  // Harvested: all it lacked stays short below.
  moveRoots(dry, at("12-01"), soil);
  expect([soil.depletion, soil.rest]).toEqual([0, expect.closeTo(30 * MM, 12)]);
});

test("a second crop is owed only what the bare ground lost in between, not what the first had left short", () => {
  const short = { stages: [10, 10, 20, 10] as const };
  const answer = answerOf({
    crops: [crop({ planted: "05-15", ...short }), crop({ planted: "07-20", ...short })],
  }).beds[0];
  const once = answerOf({ crops: [crop({ planted: "05-15", ...short })] }).beds[0];
  expect(answer?.owed).toBeGreaterThan(once?.owed ?? Number.NaN);
  expect((answer?.owed ?? 0) - (once?.owed ?? 0)).toBeLessThanOrEqual(19 * MM * 10 + 1e-12);
  expect(answer?.got).toBeLessThanOrEqual((answer?.need ?? 0) * (1 + 1e-12));
});

describe("a wetted share", () => {
  const days = (part: Partial<BedPart>) =>
    bedDays(bed(part), sky(4 * MM, new Float64Array(365).fill(5 * MM)));
  const day = at("07-20");

  test("works on evaporation, on what is held and on rain, and not on a full canopy's thirst", () => {
    const [whole, part] = [days({}), days({ wettedShare: 0.3 })];
    expect(whole.potential[day]).toBeCloseTo(1.15 * 4 * MM, 12);
    // FAO-56 Table 17 and 12, tomato: Kcb 1.10, Kc 1.15.
    expect(part.potential[day]).toBeCloseTo((1.1 + 0.05 * 0.3) * 4 * MM, 12);
    expect(part.total[day]).toBeCloseTo((whole.total[day] as number) * 0.3, 12);
    expect(part.rain[day]).toBeCloseTo((whole.rain[day] as number) * 0.3, 12);
  });

  test("of plants that stand alone drinks for the ground that their canopies cover", () => {
    const alone = days({ wettedShare: 0.3, canopyShare: 0.5 });
    expect(alone.potential[day]).toBeCloseTo((1.1 * 0.5 + 0.05 * 0.3) * 4 * MM, 12);
  });
});
