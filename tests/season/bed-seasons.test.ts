// Each bed's seasons and each person's: what they say, and that they add up.

import { describe, expect, test } from "vitest";
import type { SeasonInput } from "../../src/season/input.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import {
  bed,
  carry,
  crop,
  delivery,
  inputOf,
  LITRE,
  MM,
  ran,
  recordOf,
  seattle,
  steadyEto,
  tank,
} from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const SUMMER = { start: "05-01", end: "08-31" };
const dry = () => recordOf(new Float64Array(365), YEAR);
const watered = (more: Partial<SeasonInput> = {}) =>
  inputOf({ ...SUMMER, tanks: [tank(100, { startShare: 1 })], carries: [carry()], beds: [bed()], ...more });
const firstSeason = (more: Partial<SeasonInput>, record = dry()) =>
  ran(watered(more), record).beds[0]?.seasons[0];

describe("likely loss of harvest", () => {
  test("is the yield response times the share of its use that the crop went without, FAO-56 Eq. 90", () => {
    const season = firstSeason({ beds: [bed({ wateredBy: [] })] });
    const share = season?.useShare ?? Number.NaN;
    expect(share).toBeLessThan(0.5);
    expect(season?.losses).toEqual([{ crop: "test crop", loss: Math.min(1, 1.05 * (1 - share)) }]);
  });

  test("is nothing with water enough, and not told where no response is published", () => {
    expect(firstSeason({})?.losses[0]?.loss).toBe(0);
    expect(
      firstSeason({ beds: [bed({ crops: [crop({ yieldResponse: null })] })] })?.losses[0]?.loss,
    ).toBeNull();
  });
});

describe("a bed's season", () => {
  test("says what bound it, and its unmet water adds up to that of the whole", () => {
    const answer = ran(watered({ minutesPerDay: 180 }), seattle());
    const seasons = answer.beds[0]?.seasons ?? [];
    expect(seasons.map(({ binding }) => binding)).toContain("hands");
    const sum = seasons.reduce((total, { unmetByBound }) => total + unmetByBound.hands, 0);
    expect(sum).toBeCloseTo(answer.totals.unmetByBound.hands, 9);
  });

  test("counts the rain that its roots had room for, none under cover", () => {
    expect(firstSeason({}, seattle())?.rain).toBeGreaterThan(0.3);
    expect(firstSeason({ beds: [bed({ covered: true })] }, seattle())?.rain).toBe(0);
    expect(firstSeason({})?.rain).toBe(0);
  });

  test("closes: what came in is what was used, what is short, and what was lost on the way", () => {
    const season = firstSeason({});
    const depletion = ran(watered(), dry()).beds[0]?.depletion ?? new Float64Array(0);
    const end = depletion[dayNumber(2021, 8, 31) - YEAR] as number;
    const potential = (season?.need ?? 0) * 0.8;
    expect((season?.given ?? 0) * 0.8 + end * 10).toBeCloseTo(potential, 9);
  });
});

describe("who goes short first", () => {
  const scarce = ran(
    watered({
      holdDays: 60,
      tanks: [tank(3, { startShare: 1 })],
      beds: [bed({ id: "kept", priority: 1 }), bed({ id: "let_wait", priority: 2 })],
    }),
    dry(),
  );

  test("is the bed with the earliest short day of the driest year, here the one that comes second", () => {
    const dates = scarce.beds.map(({ seasons }) => seasons[0]?.firstShort ?? Infinity);
    expect(dates[1]).toBeLessThan(dates[0] ?? 0);
    expect(scarce.totals.driestYearShortFirst).toEqual({ id: "let_wait", date: dates[1] });
    expect(scarce.shortDay[(dates[1] ?? 0) - YEAR]).toBe(1);
    expect(scarce.shortDay.slice(0, (dates[1] ?? 0) - YEAR)).toEqual(new Uint8Array((dates[1] ?? 0) - YEAR));
  });

  test("is nobody where nothing goes short", () => {
    expect(ran(watered(), dry()).totals.driestYearShortFirst).toBeNull();
    expect(firstSeason({})?.firstShort).toBeNull();
  });
});

describe("what watering asks of one person", () => {
  test("by cans: rounds, minutes, way and weight, from the cans and the rounds", () => {
    const { totals, carries } = ran(watered(), dry());
    const [trips, volume] = [carries[0]?.seasonTrips ?? 0, carries[0]?.seasonVolume ?? 0];
    expect(trips).toBeGreaterThan(volume / (16 * LITRE));
    expect(totals.hands).toEqual({
      trips,
      volume,
      time: trips * 180,
      distance: trips * 2 * 20,
      mass: volume * 1000 + trips * 2 * 1,
    });
  });

  test("by a pump: setting up each time, and the running only where someone holds the hose", () => {
    const pumped = (attended: boolean) =>
      ran(
        watered({ beds: [bed({ wateredBy: ["pump"] })], deliveries: [delivery({ setUp: 300, attended })] }),
        dry(),
      );
    const [held, alone] = [pumped(true), pumped(false)];
    const waterings = (alone.beds[0]?.given ?? new Float64Array(0)).filter((volume) => volume > 0).length;
    expect(alone.totals.hands.time).toBeCloseTo(waterings * 300, 6);
    expect(held.totals.hands.time).toBeCloseTo(waterings * 300 + (held.deliveries[0]?.seasonTime ?? 0), 6);
    expect(held.totals.hands.mass).toBe(0);
  });

  test("season by season adds up to the mean", () => {
    const source = ran(watered({ eto: steadyEto(5 * MM) }), seattle()).carries[0];
    const seasons = source?.seasons ?? [];
    expect(seasons.map(({ year }) => year)).toEqual([2012, 2013, 2014, 2015]);
    for (const [mean, pick] of [
      [source?.seasonVolume, "volume"],
      [source?.seasonTrips, "trips"],
      [source?.seasonHands, "hands"],
      [source?.seasonTime, "time"],
    ] as const) {
      expect(seasons.reduce((sum, season) => sum + season[pick], 0) / 4).toBeCloseTo(mean ?? Number.NaN, 9);
    }
  });
});
