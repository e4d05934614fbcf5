// The year's other moments in words, against winters, tanks, hoses and notes made by chance: each number is the data's own.

import { describe, expect, test } from "vitest";
import { firstFrosts } from "../../src/season/first-frost.ts";
import { ranked } from "../../src/season/tank-full.ts";
import { type FirstFill, firstFill } from "../../src/telling/first-fill.ts";
import { frostSaid } from "../../src/telling/frost-jobs.ts";
import { tankFullSaid } from "../../src/telling/tank-full.ts";
import { type ThisYear, thisYearTold } from "../../src/telling/this-year.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { SHORT_MONTHS } from "../../src/units/calendar-names.ts";
import { recordOf } from "../season/made.ts";
import { dice } from "../sweep/dice.ts";

const SEEDS = Array.from({ length: 200 }, (_, at) => at + 1);
const ZERO = 273.15;

function dayText(date: number): string {
  const { month, day } = calendarDate(date);
  return `${SHORT_MONTHS[month - 1]} ${day}`;
}

describe("the first frost", () => {
  /** By winter the day after July 1 on which it freezes first; null: never. */
  function winters(seed: number): readonly (number | null)[] {
    const d = dice(seed);
    const [never, spread] = [d.pick([0, 0, 0.2, 0.95]), d.pick([3, 40, 100])];
    return Array.from({ length: d.whole(1, 40) }, () => (d.chance(never) ? null : d.whole(80, 80 + spread)));
  }

  function frosts(days: readonly (number | null)[]) {
    // Years without a February 29 of their own would shift a day: that is the calendar's, not the sentence's.
    const from = dayNumber(2001, 7, 1);
    const length = dayNumber(2001 + days.length, 7, 1) - from;
    const lowest = new Float64Array(length).fill(ZERO + 5);
    days.forEach((day, at) => {
      if (day !== null) lowest[dayNumber(2001 + at, 7, 1) - from + day] = ZERO - 1;
    });
    return firstFrosts(recordOf(new Float64Array(length), from, { lowest, madeUp: false }), 0.8);
  }

  test("is said with the winters that froze sooner, or that none did", () => {
    const seen = new Set<string>();
    for (const seed of SEEDS) {
      const days = winters(seed);
      const found = frosts(days);
      if (!found) throw new Error(`no winter of seed ${seed}`);
      const said = frostSaid({ from: "record", madeUp: false, ...found });
      const froze = days.filter((day) => day !== null);
      const [, date] = /^By (\w+ \d+): /.exec(said) ?? [];
      if (date === undefined) {
        seen.add("rarely");
        expect([seed, said]).toEqual([
          seed,
          expect.stringContaining(`It froze in ${froze.length} of ${days.length} winters on record`),
        ]);
        continue;
      }
      const sooner = froze.filter((day) => {
        for (let one = 0; one <= day; one++) if (dayText(dayNumber(2001, 7, 1) + one) === date) return false;
        return true;
      }).length;
      const words =
        days.length === 1
          ? "it froze that day in the one winter on record"
          : sooner === 0
            ? `in ${days.length} winters on record it never froze sooner`
            : `in ${sooner} of ${days.length} winters on record it froze sooner`;
      seen.add(sooner === 0 ? "none" : "some");
      expect([seed, said]).toEqual([seed, expect.stringContaining(`By ${date}: ${words}. `)]);
      // No more than one winter in ten.
      expect(sooner).toBeLessThanOrEqual(days.length / 10);
    }
    expect([...seen].sort()).toEqual(["none", "rarely", "some"]);
  });
});

describe("an empty tank", () => {
  const TODAY = dayNumber(2021, 8, 1);

  test("is full by the middle run's day, and as many runs are slower as it says", () => {
    for (const seed of SEEDS) {
      const d = dice(seed);
      const never = d.pick([0, 0.05, 0.3, 0.7, 1]);
      const days = Array.from({ length: d.whole(10, 60) }, () =>
        d.chance(never) ? null : TODAY + d.whole(0, d.pick([5, 60, 150])),
      );
      const tank = { id: "tank", years: days.length, ...ranked(days) };
      const said = tankFullSaid(tank, { today: TODAY, madeUp: false, few: false, tanks: [tank] });
      const [, middle] = /^Full by (\w+ \d+) in a middling year/.exec(said) ?? [];
      const until = (text: string) =>
        days.filter((day) => day !== null && day <= (dateOf(text) ?? Number.NaN)).length;
      const dateOf = (text: string) =>
        Array.from({ length: 200 }, (_, at) => TODAY + at).find((one) => dayText(one) === text);
      const rank = Math.floor((days.length + 1) / 2);
      if (middle !== undefined) expect([seed, said, until(middle) >= rank]).toEqual([seed, said, true]);
      const [, count, not] =
        /In the (?:(\d+) )?slowest of \d+ past years, those known for a year from this day on, not (by \w+ \d+|within a year)/.exec(
          said,
        ) ?? [];
      if (not !== undefined) {
        const slow =
          not === "within a year"
            ? days.filter((day) => day === null).length
            : days.length - until(not.slice(3));
        expect([seed, said, slow]).toEqual([seed, said, Number(count ?? 1)]);
      }
      const [, none] = /^Not full within a year in (\d+) of/.exec(said) ?? [];
      if (none !== undefined) expect(Number(none)).toBe(days.filter((day) => day === null).length);
      expect([seed, said]).toEqual([seed, expect.not.stringMatching(/undefined|NaN|null/)]);
    }
  });
});

describe("a first filling", () => {
  const show = (si: number, measure: string) => `<${measure} ${si}>`;
  const numbers = (steps: readonly string[]) => [...steps.join(" ").matchAll(/<(\w+) ([\d.e-]+)>/g)];

  function fillOf(seed: number): FirstFill {
    const d = dice(seed);
    const known = <Value>(value: Value): Value | null => (d.chance(0.8) ? value : null);
    return {
      from: known("Totes"),
      to: known("Tub"),
      hasFloat: d.chance(0.5),
      holds: d.between(1, 40) / 1000,
      flow: known(d.between(1, 30) / 1e5),
      clearsFrom: known(d.between(1, 30) / 1e5),
      comesAfter: known(d.whole(5, 900)),
      highs: known(
        Array.from({ length: d.whole(0, 2) }, () => ({
          distance: d.between(1, 40),
          rise: d.between(0.1, 2),
          trouble: d.pick([null, "air", "under_pressure", "siphon", "siphon_too_high"]),
        })),
      ),
      can: known(d.between(5, 12) / 1000),
    };
  }

  test("tells the hose's own water, time, flow and heights, and as many cans as hold it", () => {
    const seen = new Set<string>();
    for (const seed of SEEDS) {
      const fill = fillOf(seed);
      const steps = firstFill(fill, show);
      const highs = fill.highs ?? [];
      const own: readonly (number | null)[] = [
        ...[fill.holds, fill.flow, fill.clearsFrom, fill.comesAfter, fill.can],
        ...highs.flatMap(({ distance, rise }) => [distance, rise]),
      ];
      for (const [, , number] of numbers(steps))
        expect([seed, own.includes(Number(number))]).toEqual([seed, true]);
      const text = steps.join(" ");
      if (highs.some(({ trouble }) => trouble === "siphon_too_high")) {
        seen.add("too high");
        expect(steps).toEqual([]);
        continue;
      }
      expect([seed, text.includes(show(fill.holds, "volume"))]).toEqual([seed, true]);
      const isPrimed = highs.some(({ trouble }) => trouble === "siphon");
      expect([seed, /Shut both ends\. Pour/.test(text)]).toEqual([seed, isPrimed]);
      seen.add(isPrimed ? "primed" : "running");
      const [, cans] = /, (one can|\d+ cans) of/.exec(text) ?? [];
      if (cans !== undefined && fill.can !== null) {
        const count = cans === "one can" ? 1 : Number.parseInt(cans, 10);
        expect([seed, count * fill.can >= fill.holds - 1e-9, (count - 1) * fill.can < fill.holds]).toEqual([
          seed,
          true,
          true,
        ]);
      }
      const slow = fill.flow !== null && fill.clearsFrom !== null && fill.flow < fill.clearsFrom;
      expect([seed, /too slow to carry air out/.test(text)]).toEqual([seed, slow && !isPrimed]);
    }
    expect([...seen].sort()).toEqual(["primed", "running", "too high"]);
  });
});

describe("this year", () => {
  const show = (si: number, measure: string) => `${si} ${measure}`;

  test("sets what was noted beside the middle season, part by part, and says what was not noted", () => {
    for (const seed of SEEDS) {
      const d = dice(seed);
      const some = (ids: readonly string[]) =>
        ids.flatMap((id) => (d.chance(0.6) ? [{ id, amount: d.between(0.1, 9), days: d.whole(1, 30) }] : []));
      const first = dayNumber(2021, 5, 1);
      const year: ThisYear = {
        first,
        last: first + d.whole(0, 100),
        madeUp: d.chance(0.3),
        noted: {
          days: d.whole(0, 30),
          given: some(["a", "b"]),
          unmeasured: some(["a", "b"]),
          dry: some(["a", "b"]),
          dips: some(["tank", "tub"]),
          rain: d.chance(0.5) ? { id: "site", amount: 0.1, days: 3 } : null,
        },
        usual: {
          seasons: 4,
          beds: ["a", "b"].map((id) => ({ id, given: d.between(10, 20) })),
          tanks: ["tank", "tub"].map((id) => ({ id, lowest: d.between(10, 20) })),
          rain: [0.05, 0.08, 0.2, 0.3],
          middleRain: 0.14,
        },
      };
      const { head, rows, missing } = thisYearTold(year, (id) => `<${id}>`, show);
      expect(head).toContain(
        `${dayText(first)} to ${dayText(year.last)}: something was noted on ${year.noted.days} of`,
      );
      const row = (what: string) => rows.find((one) => one.what === what);
      for (const { id, given } of year.usual.beds) {
        const own = year.noted.given.find((one) => one.id === id);
        const dug = year.noted.dry.some((one) => one.id === id);
        expect([seed, id, row(`<${id}>`) !== undefined]).toEqual([seed, id, own !== undefined || dug]);
        if (own) expect(row(`<${id}>`)?.noted).toContain(`${own.amount} volume, noted on`);
        if (own || dug) expect(row(`<${id}>`)?.expected).toBe(`${given} volume`);
      }
      for (const { id, lowest } of year.usual.tanks) {
        const own = year.noted.dips.find((one) => one.id === id);
        expect([seed, row(`<${id}>`)?.noted]).toEqual([
          seed,
          own && expect.stringContaining(`lowest dip ${own.amount} depth`),
        ]);
        if (own) expect(row(`<${id}>`)?.expected).toBe(`${lowest} depth on the lowest evening, refilled`);
        else expect(missing.join(" ")).toMatch(new RegExp(`No dip was noted of .*<${id}>`));
      }
      expect([seed, /2 of 4 years had less/.test(row("Rain in the gauge")?.expected ?? "")]).toEqual([
        seed,
        year.noted.rain !== null && !year.madeUp,
      ]);
      expect(missing.includes("No rain was noted.")).toBe(year.noted.rain === null);
    }
  });
});
