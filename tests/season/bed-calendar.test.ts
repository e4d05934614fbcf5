// The calendar of a chosen season: the same days as the whole run's, with what was asked, by whom it was given, and why not.

import { describe, expect, test } from "vitest";
import { type SeasonCalendar, seasonCalendar } from "../../src/season/bed-calendar.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { dayNumber, isoDate } from "../../src/units/calendar.ts";
import { bed, carry, delivery, draw, inputOf, MM, ran, roof, seattle, steadyEto, tank } from "./made.ts";

const plan: SeasonInput = inputOf({
  start: "05-01",
  end: "08-31",
  eto: steadyEto(5 * MM),
  holdDays: 5,
  minutesPerDay: 1800,
  roofs: [roof({ footprint: 20 }), roof({ id: "small", footprint: 4, drainsTo: "tub" })],
  tanks: [tank(1, { startShare: 1 }), tank(0.1, { id: "tub", startShare: 1 })],
  draws: [draw(0.01)],
  carries: [carry()],
  deliveries: [delivery({ from: "tub" })],
  beds: [
    bed({ id: "open", priority: 1, wateredBy: ["pump", "cans"] }),
    bed({ id: "under", covered: true, coverFactor: 0.75, priority: 2 }),
    bed({ id: "weekly", priority: 3, rule: { kind: "weekdays", volume: 0.03, days: [1] } }),
    bed({ id: "gone", priority: 4, letGo: { from: "06-01", dryDays: 3 } }),
  ],
});

function calendarOf(year: number): SeasonCalendar {
  const calendar = seasonCalendar(plan, seattle(), year);
  if ("failed" in calendar) throw new Error(calendar.failed);
  return calendar;
}

const answer = ran(plan, seattle());
const year = calendarOf(2014);
const daysOf = (id: string) => year.beds.find((each) => each.id === id)?.days ?? [];

describe("a season's calendar", () => {
  test("holds every day from the first to the last of each bed, and what the whole run gave on it", () => {
    expect([isoDate(year.first), isoDate(year.last)]).toEqual(["2014-05-01", "2014-08-31"]);
    expect(year.beds.map(({ id }) => id)).toEqual(["gone", "open", "under", "weekly"]);
    for (const { id, days } of year.beds) {
      const whole = answer.beds.find((each) => each.id === id);
      const from = year.first - answer.firstDay;
      expect(days.map(({ date }) => date)).toEqual(Array.from({ length: 123 }, (_, i) => year.first + i));
      expect(days.map(({ given }) => given)).toEqual([...(whole?.given.slice(from, from + 123) ?? [])]);
      expect(days.map(({ depletion }) => depletion)).toEqual([
        ...(whole?.depletion.slice(from, from + 123) ?? []),
      ]);
    }
  });

  test("adds up to what the answer says of that season", () => {
    for (const { id, days } of year.beds) {
      const season = answer.beds.find((each) => each.id === id)?.seasons.find((each) => each.year === 2014);
      const sum = (of: (day: (typeof days)[number]) => number) =>
        days.reduce((total, day) => total + of(day), 0);
      expect(sum(({ given }) => given)).toBeCloseTo(season?.given ?? Number.NaN, 12);
      expect(sum(({ rain }) => rain * 10)).toBeCloseTo(season?.rain ?? Number.NaN, 12);
      expect(sum(({ use }) => use) / sum(({ potential }) => potential)).toBeCloseTo(
        season?.useShare ?? 2,
        12,
      );
      if (id !== "weekly")
        expect(days.filter(({ stressed }) => stressed)).toHaveLength(season?.daysShort ?? -1);
    }
  });

  test("closes each day's soil: water short in the evening is that of the evening before, plus use, less rain and watering", () => {
    for (const { days } of year.beds) {
      for (const [place, day] of days.entries()) {
        const before = days[place - 1];
        if (!before) continue;
        expect(day.kept).toBeLessThanOrEqual((day.given * 0.8) / 10 + 1e-15);
        const lacked = before.depletion + before.rest;
        expect(day.depletion + day.rest).toBeCloseTo(lacked - day.kept - day.rain + day.use + day.dried, 12);
      }
    }
  });

  test("names the sources in order, with their rounds, and they add up to what was given", () => {
    const days = daysOf("open").filter(({ given }) => given > 0);
    expect(days.some(({ from }) => from.map(({ id }) => id).join() === "pump,cans")).toBe(true);
    for (const { from, given } of days) {
      expect(from.reduce((sum, { volume }) => sum + volume, 0)).toBeCloseTo(given, 12);
      for (const gift of from) {
        expect(gift.trips).toBe(gift.id === "cans" ? Math.ceil(gift.volume / 0.016 - 1e-9) : 0);
        expect(gift.time).toBeGreaterThan(0);
      }
    }
  });

  test("says why a bed got less than it asked for, and nothing where all is well", () => {
    for (const { days } of year.beds) {
      for (const day of days) {
        const short = day.asked - day.given > 1e-9 || day.stressed;
        expect(day.bound === null).toBe(!short);
      }
    }
    expect(daysOf("open").some(({ bound }) => bound !== null)).toBe(true);
    expect(daysOf("gone").some(({ letGo, asked }) => letGo && asked === 0)).toBe(true);
    expect(daysOf("gone").some(({ letGo, asked }) => letGo && asked > 0)).toBe(false);
  });

  test("of a year that the record does not hold says so", () => {
    expect(seasonCalendar(plan, seattle(), 1999)).toEqual({
      failed: `The record does not hold the whole season of 1999.`,
      at: null,
    });
  });

  test("of the record's first season is right although that season begins on its first day", () => {
    const from = dayNumber(2012, 1, 1);
    const whole = inputOf({ ...plan, start: "01-01", end: "12-31" });
    const calendar = seasonCalendar(whole, seattle(), 2012);
    expect("failed" in calendar ? null : calendar.first).toBe(from);
    expect("failed" in calendar ? [] : calendar.beds[0]?.days).toHaveLength(366);
  });
});
