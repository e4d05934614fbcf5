// The balance of a bed alone, with all the water it asks for, against figures worked out independently of this code from the
// named method: FAO-56 Eq. 52, 58, 82 to 86 and 90, Table 22 footnote 2 day by day, water early in the day.

import { describe, expect, test } from "vitest";
import { stress, yieldLoss } from "../../src/physics/soil-water.ts";
import { bedDays } from "../../src/season/bed-days.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";
import { neverRefused } from "../../src/season/demand.ts";
import type { BedPart } from "../../src/season/input.ts";
import { mayAsk } from "../../src/season/schedule.ts";
import { skyOf } from "../../src/season/sky.ts";
import { fullSoil, isThirsty, moveRoots, passDay } from "../../src/season/soil-step.ts";
import { dayOfSeason, wholeSeasons } from "../../src/season/spans.ts";
import { bed, carry, crop, inputOf, MM, ran, seattle, steadyEto, tank } from "./made.ts";

// Seattle record of the fixtures, 24 ft2 of loam, 12 in of roots, tomato from May 15, season Apr 15 to Oct 15.
const record = seattle();
const SEASON = { start: "04-15", end: "10-15" };
const ETO = {
  ...steadyEto(0),
  method: "hargreaves" as const,
  latitude: (47.6 * Math.PI) / 180,
  months: null,
};
const tomato = (more: Partial<BedPart> = {}): BedPart =>
  bed({
    area: 24 * 0.3048 ** 2,
    crops: [crop({ planted: "05-15", rootEnd: 12 * 0.0254, yieldResponse: 1.05 })],
    availableWater: 0.155,
    rootLimit: 12 * 0.0254,
    efficiency: 1,
    ...more,
  });
const tunnel: Partial<BedPart> = { covered: true, coverFactor: 0.75 };

const reference = dailyEto(record, ETO);
if ("failed" in reference) throw new Error(reference.failed);
const sky = skyOf(record, reference.eto, 1);
const seasons = wholeSeasons(SEASON, record.firstDay, record.rain.length);
const inSeason = dayOfSeason(SEASON, record.firstDay, record.rain.length);

type Asks = (day: number, lack: number, days: ReturnType<typeof bedDays>) => boolean;

/** Asks on the day on which the easy water of that very day is gone. */
const whenGone: Asks = (day, lack, days) => lack >= (days.readily[day] as number);
const on = (...weekdays: number[]): Asks => {
  const rule = { kind: "weekdays" as const, days: weekdays, volume: null };
  return (day, lack) => lack > 0 && mayAsk(rule, record.firstDay + day, 1);
};
const inTime: Asks = (day, lack, days) => lack >= (days.trigger[day] as number);

/** A usual season of a bed whose ground is full at planting: depths [mm], days, shares. */
function balance(part: BedPart, asks: Asks) {
  const made = bedDays(part, sky);
  // Full at planting: no soak is asked for, and nothing is missing when the plants come.
  const days = { ...made, planted: new Uint8Array(made.planted.length) };
  let [given, potential, use, short, waterings, loss] = [0, 0, 0, 0, 0, 0];
  for (const span of seasons) {
    const soil = fullSoil();
    const season = { use: 0, potential: 0 };
    for (let day = span.first; day <= span.last; day++) {
      if ((days.total[day] as number) === 0) continue;
      moveRoots(days, day, soil);
      const lack = Math.max(
        0,
        soil.depletion - (part.decidesOn === "morning" ? (days.rain[day] as number) : 0),
      );
      const poured = asks(day, lack, days) ? lack : 0;
      const came = passDay(days, day, soil, poured);
      given += poured;
      waterings += poured > 0 ? 1 : 0;
      season.use += came.use;
      season.potential += days.potential[day] as number;
      short += isThirsty(days.potential[day] as number, came.use) ? 1 : 0;
    }
    use += season.use;
    potential += season.potential;
    loss += yieldLoss(1.05, season.use / season.potential);
  }
  const mean = (sum: number) => sum / seasons.length;
  return {
    potential: mean(potential) / MM,
    given: mean(given) / MM,
    share: use / potential,
    short: mean(short),
    waterings: mean(waterings),
    loss: mean(loss),
  };
}

describe("a bed's balance alone, asked for when the easy water of that very day is gone", () => {
  test("uses and is given, in the open and under cover, what was worked out apart from this code", () => {
    const open = balance(tomato(), whenGone);
    expect(open.potential).toBeCloseTo(524.1218, 4);
    expect(open.given).toBeCloseTo(431.752, 3);
    expect(open.short).toBe(0);
    expect(balance(tomato(tunnel), whenGone).given).toBeCloseTo(378.217, 3);
    expect(balance(tomato({ decidesOn: "morning" }), whenGone).given).toBeCloseTo(409.259, 3);
  });

  test("on Mondays only is short by so many days, so much of its use and so much of its harvest", () => {
    const mondays = balance(tomato(), on(1));
    expect(mondays.given).toBeCloseTo(418.089, 3);
    expect(mondays.short).toBe(24.25);
    expect(mondays.share).toBeCloseTo(0.945394, 6);
    expect(mondays.loss).toBeCloseTo(0.056813, 6);
  });

  test("on Tuesdays and Fridays is short on hardly two days", () => {
    const twice = balance(tomato(), on(2, 5));
    expect(twice.given).toBeCloseTo(479.315, 3);
    expect(twice.short).toBe(2.25);
  });
});

describe("asking in time, a day like the last seven ahead", () => {
  test("gives what was worked out apart from this code, in so many waterings, and no day is short", () => {
    const open = balance(tomato(), inTime);
    expect(open.given).toBeCloseTo(440.945, 3);
    expect(open.waterings).toBe(27.5);
    expect(open.short).toBe(0);
    const covered = balance(tomato(tunnel), inTime);
    expect(covered.given).toBeCloseTo(383.767, 3);
    expect(covered.waterings).toBe(20.5);
    expect(covered.short).toBe(0);
  });

  test("is what the season's own run does, but for the first soak and the days of the ground between crops", () => {
    const answer = ran(
      inputOf({
        ...SEASON,
        eto: ETO,
        tanks: [tank(1000, { startShare: 1 })],
        carries: [carry()],
        beds: [tomato()],
      }),
      record,
    ).beds[0];
    expect(answer?.shareMet).toBe(1);
    expect(answer?.daysShort).toBe(0);
    const ground = 24 * 0.3048 ** 2;
    const soaked = (answer?.owed ?? 0) / ground / MM;
    expect(soaked).toBeGreaterThan(0);
    // What the ground lacked at planting is poured on top, rain of those first days finding less room in turn.
    expect((answer?.got ?? 0) / ground / MM).toBeGreaterThan(440.945);
    expect((answer?.got ?? 0) / ground / MM).toBeLessThan(440.945 + soaked + 10);
    const days = bedDays(tomato(), sky);
    const never = neverRefused(tomato(), days, (day, lack) =>
      (inSeason[day] as number) > 0 ? (lack >= (days.trigger[day] as number) ? lack : 0) : null,
    );
    for (const [day, depth] of never.entries())
      expect((answer?.given[day] ?? 0) / ground).toBeCloseTo(depth, 9);
  });
});

test("stress of a day is told by that day's easy share: a cool day bears more dryness than a hot one", () => {
  const days = bedDays(tomato(), sky);
  const [hot, cool] = [new Date(Date.UTC(2014, 6, 1)), new Date(Date.UTC(2014, 6, 24))].map(
    (date) => date.getTime() / 86_400_000 - record.firstDay,
  ) as [number, number];
  const share = (day: number) => (days.readily[day] as number) / (days.total[day] as number);
  expect(days.potential[hot]).toBeGreaterThan(days.potential[cool] as number);
  expect(share(hot)).toBeLessThan(share(cool));
  const lack = 0.45 * (days.total[hot] as number);
  expect(stress(lack, days.total[hot] as number, days.readily[hot] as number)).toBeLessThan(1);
});
