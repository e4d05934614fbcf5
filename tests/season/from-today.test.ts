// How long it lasts from today: ranks of past years, one's own forecast, and no odds of made-up weather.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { type Expected, type Forecast, forecastText, readForecastText } from "../../src/season/forecast.ts";
import { type AheadGiven, fromToday, inReachOf, middlingOf, runner } from "../../src/season/from-today.ts";
import { STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { momentOf } from "../../src/season/moment.ts";
import type { TodayGiven } from "../../src/season/moment-today.ts";
import { normalScore } from "../../src/season/morning-doubt.ts";
import { dayAtRank, type FromToday, joinedOdds, type Odds } from "../../src/season/odds.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import { pastMornings } from "../../src/season/usual-morning.ts";
import { weekPlan } from "../../src/season/week-plan.ts";
import { expecting, withForecast, yearsAhead } from "../../src/season/years-ahead.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { dice } from "../sweep/dice.ts";
import { bed, carry, crop, inputOf, MM, recordOf, roof, seattle, tank } from "./made.ts";

const FIRST = dayNumber(1991, 1, 1);
const DAYS = dayNumber(2021, 1, 1) - FIRST;
const TODAY = dayNumber(2021, 6, 15);

/** Thirty years; the later the year, the sooner in July its rain ends. */
const thirty = (more: Partial<DailyRecord> = {}): DailyRecord => {
  const rain = new Float64Array(DAYS);
  for (let day = 0; day < DAYS; day++) {
    const { year, month, day: of } = calendarDate(FIRST + day);
    const ends = 31 - (year - 1991);
    if (month < 7 || (month === 7 && of <= ends)) rain[day] = 6 * MM;
  }
  return recordOf(rain, FIRST, { madeUp: false, ...more });
};

const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    tanks: [tank(0.4, { startShare: 1 })],
    roofs: [roof({ footprint: 5 })],
    carries: [carry()],
    beds: [bed({ crops: [crop({ planted: "05-01", stages: [0, 0, 120, 0], kcMiddle: 1, rootStart: 0.3 })] })],
    ...more,
  });

const given = (more: Partial<TodayGiven> = {}): TodayGiven => ({
  today: TODAY,
  drying: "usual",
  levels: { tank: 1 },
  charges: {},
  lastSoaked: { bed: TODAY - 1 },
  ...more,
});

function asked(record: DailyRecord, forecast: Forecast = {}, more: Partial<TodayGiven> = {}) {
  const answer = fromToday(plan(), record, { ...given(more), forecast });
  if ("failed" in answer) throw new Error(answer.failed);
  return answer;
}

function oddsOf(answer: FromToday): Odds {
  if (answer.kind !== "odds") throw new Error(answer.kind);
  return answer;
}

describe("ranks", () => {
  const twenty = Array.from({ length: 20 }, (_, place) => 100 + place);

  test("are k / (n + 1): of twenty the second is sooner in at most one of ten, the tenth in at most half (Weibull 1939)", () => {
    expect(dayAtRank(twenty, 0.1)).toBe(101);
    expect(dayAtRank(twenty, 0.5)).toBe(109);
    expect(dayAtRank(twenty, 0.9)).toBe(117);
    expect(dayAtRank([...twenty].reverse(), 0.1)).toBe(101);
  });

  test("name no day where it is not before the season's end, and the soonest of too few", () => {
    expect(dayAtRank([5, null, null, null, null, null, null, null, null], 0.5)).toBeNull();
    expect(dayAtRank([9, 7, null], 0.1)).toBe(7);
    expect(dayAtRank([], 0.5)).toBeNull();
  });
});

describe("members", () => {
  test("are the weather of every past year from this calendar day on, in today's season", () => {
    const record = thirty();
    const eto = new Float64Array(DAYS).fill(4 * MM);
    const { years, ahead } = yearsAhead(record, eto, { today: TODAY, last: dayNumber(2021, 8, 31) });
    expect(years).toBe(30);
    expect(ahead.map(({ year }) => year)).toEqual(Array.from({ length: 30 }, (_, place) => 1991 + place));
    // In 1991 it rains to July 31: 47 days from June 15 on; in 2020 to July 2.
    expect(ahead[0]?.weather.rain.indexOf(0)).toBe(47);
    expect(ahead[29]?.weather.rain.indexOf(0)).toBe(18);
    expect(ahead[0]?.weather.rain.length).toBe(78);
  });

  test("of fewer than ten years count shifted too, and are fewer years for it", () => {
    const record = { ...seattle(), madeUp: false };
    const eto = new Float64Array(record.rain.length);
    const days = { today: dayNumber(2016, 6, 15), last: dayNumber(2016, 8, 31) };
    const { years, ahead } = yearsAhead(record, eto, days);
    expect([years, ahead.length]).toEqual([4, 20]);
    expect(Math.min(...ahead.map(({ shift }) => shift))).toBe(-10);
    expect(Math.max(...ahead.map(({ shift }) => shift))).toBe(10);
  });

  test("never hold the season of today itself", () => {
    const record = { ...seattle(), madeUp: false };
    const days = { today: dayNumber(2014, 6, 15), last: dayNumber(2014, 8, 31) };
    const { ahead } = yearsAhead(record, new Float64Array(record.rain.length), days);
    expect(new Set(ahead.map(({ year }) => year))).toEqual(new Set([2012, 2013, 2015]));
  });
});

describe("how long it lasts", () => {
  test("comes sooner the sooner the rain ends, and each day is a member's", () => {
    const { ahead, short } = oddsOf(asked(thirty()));
    const days = ahead.map((run) => run.short as number);
    for (let place = 1; place < days.length; place++)
      expect(days[place]).toBeLessThanOrEqual(days[place - 1] as number);
    expect(short.oneInTen).toBe(dayAtRank(days, 0.1));
    expect(days).toContain(short.half);
    expect((short.oneInTen as number) < (short.nineInTen as number)).toBe(true);
  });

  test("with much water is to the season's end, in at least n of n + 1", () => {
    const answer = fromToday(plan({ tanks: [tank(50)] }), thirty(), given());
    if ("failed" in answer || answer.kind !== "odds") throw new Error("no odds");
    expect(answer.short).toEqual({ oneInTen: null, half: null, nineInTen: null });
    expect(answer.reachesEnd).toBeCloseTo(30 / 31, 12);
  });

  test("tells no odds of made-up weather: one usual run and one without any rain, which is not longer", () => {
    const answer = asked(thirty({ madeUp: true }));
    if (answer.kind !== "usual_and_dry") throw new Error(answer.kind);
    expect(Object.keys(answer)).not.toContain("short");
    expect(answer.dry.short as number).toBeLessThan(answer.usual.short as number);
  });

  test("is not asked outside the season", () => {
    expect(asked(thirty(), {}, { today: dayNumber(2021, 10, 1) }).kind).toBe("out_of_season");
  });

  test("[G1] is the same whatever is asked before", () => {
    const once = asked(thirty());
    asked(thirty(), {}, { levels: { tank: 0.2 } });
    expect(asked(thirty())).toEqual(once);
  });
});

describe("some members first", () => {
  test("and the others after, joined, are all of them", () => {
    const all = asked(thirty(), {}, { levels: {} });
    const parts = [0, 1, 2, 3].map((from) => {
      const part = fromToday(plan(), thirty(), given({ levels: {} }), { from, every: 4 });
      if ("failed" in part) throw new Error(part.failed);
      return part;
    });
    expect(parts.map((part) => oddsOf(part).members)).toEqual([8, 8, 7, 7]);
    expect(parts.map((part) => oddsOf(part).awaited)).toEqual([22, 22, 23, 23]);
    for (const order of [parts, [...parts].reverse()]) expect(order.reduce(joinedOdds)).toEqual(all);
  });
});

describe("the doubt of this morning", () => {
  const firstWater = (more: Partial<AheadGiven>) => {
    const answer = fromToday(plan({ tanks: [tank(0.4)], roofs: [] }), thirty(), { ...given(), ...more });
    if ("failed" in answer) throw new Error(answer.failed);
    return oddsOf(answer).ahead.map(({ water }) => water[0] as number);
  };
  const spreadOf = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  };

  test("of a dip is in the members, as wide as it is told and the same on average", () => {
    const levels = { tank: 0.5 };
    const [exact, doubted] = [firstWater({ levels }), firstWater({ levels, dipDoubt: 0.05 })];
    // 0.4 m3 over a metre: a spread of 5 cm is one of 0.02 m3, beside that of the day's own use.
    expect(spreadOf(exact)).toBeLessThan(0.004);
    expect(Math.abs(spreadOf(doubted) - 0.02)).toBeLessThan(0.004);
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(doubted)).toBeCloseTo(mean(exact), 3);
  });

  test("never holds more than the tank or less than nothing", () => {
    for (const water of firstWater({ levels: { tank: 0.99 }, dipDoubt: 0.2 }))
      expect(water).toBeLessThanOrEqual(0.4);
    for (const water of firstWater({ levels: { tank: 0.01 }, dipDoubt: 0.2 }))
      expect(water).toBeGreaterThanOrEqual(0);
  });

  test("of what nobody noted is that of the years: each member starts as it stood in one of them", () => {
    // In each year the rain ended on another day of July.
    const today = dayNumber(2021, 7, 25);
    const past = pastMornings(plan(), thirty(), today).map(({ tanks }) => tanks.tank as number);
    const answer = fromToday(plan(), thirty(), given({ today, levels: {}, lastSoaked: {} }));
    if ("failed" in answer) throw new Error(answer.failed);
    const { ahead } = oddsOf(answer);
    expect(new Set(past).size).toBeGreaterThan(1);
    expect(spreadOf(ahead.map(({ water }) => water[0] as number))).toBeGreaterThan(0);
  });

  test("the score of a share is that of the normal (tables: 1.2816 at 0.9, 1.9600 at 0.975)", () => {
    expect(normalScore(0.5)).toBe(0);
    expect(Math.abs(normalScore(0.9) - 1.2816)).toBeLessThan(0.02);
    expect(Math.abs(normalScore(0.025) + 1.96)).toBeLessThan(0.02);
  });
});

test("[G9] a run from a season's own morning is that season going on: the same short day and the same water, to the bit", () => {
  const record = thirty();
  const input = plan();
  const whole = prepareSeason(input, record);
  const half = prepareSeason(input, record);
  if ("failed" in whole || "failed" in half) throw new Error("no season");
  const stop = dayNumber(2010, 6, 15) - FIRST;
  const last = dayNumber(2010, 8, 31) - FIRST;
  runDays(whole, STEPPING, { first: 0, last });
  runDays(half, STEPPING, { first: 0, last: stop - 1 });
  const cut = (series: Float64Array) => series.slice(stop, last + 1);
  const weather = { rain: cut(record.rain), highest: null, lowest: null, eto: cut(whole.eto) };
  const morning = { input, whole: half, moment: momentOf(half, stop), reach: inReachOf(half), heldBack: [] };
  const { short, water } = runner(morning)(morning.moment, { year: 2010, shift: 0 }, weather);
  const found = whole.shortDay.subarray(stop, last + 1).indexOf(1);
  expect(found).toBeGreaterThan(0);
  expect(short).toBe(FIRST + stop + found);
  expect([...water]).toEqual([...(whole.stored[0] as Float64Array).slice(stop, last + 1)]);
});

describe("one's own forecast", () => {
  const weather = (length = 10) => ({
    rain: new Float64Array(length).fill(1 * MM),
    highest: new Float64Array(length).fill(300),
    lowest: new Float64Array(length).fill(288),
    eto: new Float64Array(length).fill(4 * MM),
  });
  const of = (expected: Partial<Expected>, day = TODAY): Forecast => ({
    [day]: { rain: null, chance: null, highest: null, ...expected },
  });

  test.each([0, 0.05, 0.4, 0.5, 1])(
    "brings its rain in %f of the members and none in the others",
    (chance) => {
      const members = withForecast(
        Array.from({ length: 20 }, () => weather()),
        of({ rain: 9 * MM, chance }, TODAY + 2),
        TODAY,
      );
      expect(members.filter(({ rain }) => rain[2] === 9 * MM).length).toBe(Math.round(20 * chance));
      expect(members.filter(({ rain }) => rain[2] === 0).length).toBe(20 - Math.round(20 * chance));
      expect(members.every(({ rain }) => rain[1] === 1 * MM && rain[3] === 1 * MM)).toBe(true);
    },
  );

  test("brings it in half of them where no chance is stated, other members on other days", () => {
    const both = { ...of({ rain: 9 * MM }), ...of({ rain: 9 * MM }, TODAY + 1) };
    const members = withForecast(
      Array.from({ length: 20 }, () => weather()),
      both,
      TODAY,
    );
    const wet = (day: number) => members.flatMap(({ rain }, place) => (rain[day] === 9 * MM ? [place] : []));
    expect([wet(0).length, wet(1).length]).toEqual([10, 10]);
    expect(wet(0)).not.toEqual(wet(1));
  });

  test("makes a hot day dry as FAO-56 Eq. 52 has it, its range as it was", () => {
    const { eto, highest, lowest } = expecting(weather(), of({ highest: 310 }), TODAY, () => false);
    // (Tmean + 17.8): from 300 and 288 K, mean 20.85 degrees Celsius, to 30.85.
    expect(eto[0]).toBeCloseTo(((4 * MM) / 38.65) * 48.65, 9);
    expect([highest?.[0], lowest?.[0], eto[1]]).toEqual([310, 298, 4 * MM]);
  });

  test("speaks of seven days only", () => {
    const late = expecting(weather(), of({ rain: 9 * MM }, TODAY + 7), TODAY, () => true);
    expect([...late.rain]).toEqual([...weather().rain]);
  });

  test("of much rain makes it last longer, of none not longer", () => {
    const days = (rain: number): Forecast =>
      Object.fromEntries(
        Array.from({ length: 7 }, (_, day) => [TODAY + day, { rain, chance: 1, highest: null }]),
      );
    const dry = recordOf(new Float64Array(DAYS), FIRST, { madeUp: false });
    const halfOf = (forecast: Forecast) =>
      oddsOf(asked(dry, forecast, { levels: { tank: 0.2 } })).short.half as number;
    expect(halfOf(days(20 * MM))).toBeGreaterThan(halfOf({}));
    expect(halfOf(days(0))).toBe(halfOf({}));
  });

  test("of made-up weather makes a usual year no drier where it is likelier than rain is anyway, and the likelier the wetter", () => {
    // Of thirty years' days three in ten are wet.
    const d = dice(7);
    const rain = Float64Array.from({ length: DAYS }, () => (d.chance(0.3) ? 6 * MM : 0));
    const record = recordOf(rain, FIRST, { madeUp: true });
    const week = (chance: number | null): Forecast =>
      Object.fromEntries(
        Array.from({ length: 7 }, (_, day) => [TODAY + day, { rain: 6 * MM, chance, highest: null }]),
      );
    const usual = (forecast: Forecast): number => {
      const answer = asked(record, forecast, { levels: { tank: 0.2 } });
      if (answer.kind !== "usual_and_dry") throw new Error(answer.kind);
      return answer.usual.short ?? answer.last + 1;
    };
    const none = usual({});
    const likelier = [0, 0.2, 0.4, 0.6, 0.8, 1].map((chance) => usual(week(chance)));
    expect(likelier[2]).toBeGreaterThanOrEqual(none);
    expect(likelier).toEqual([...likelier].sort((a, b) => a - b));
    expect(likelier[0]).toBeLessThan(none);
    expect(likelier[5]).toBeGreaterThan(none);
    expect(usual(week(null))).toBe(likelier[5]);
  });

  test("falls here as it is said, where the record's rain is half of what falls here", () => {
    const forecast = { ...of({ rain: 9 * MM, chance: 1 }), ...of({ rain: 4 * MM, chance: 1 }, TODAY + 3) };
    const half = thirty();
    const whole = recordOf(
      half.rain.map((fell) => 2 * fell),
      FIRST,
      { madeUp: false },
    );
    const answer = (record: DailyRecord, rainScale: number) => {
      const lasts = fromToday(plan({ rainScale }), record, { ...given({ levels: { tank: 0.2 } }), forecast });
      const week = weekPlan(plan({ rainScale }), record, { ...given(), forecast, days: 7 });
      if ("failed" in lasts || "failed" in week) throw new Error("no answer");
      return { ahead: oddsOf(lasts).ahead, lines: week.lines, rains: week.rains };
    };
    const said = answer(whole, 1);
    expect(answer(half, 2)).toEqual(said);
    expect(said.rains.map(({ rain }) => rain)).toEqual([9 * MM, 4 * MM]);
  });

  test("is read back as it was written, of today and six days more", () => {
    const said = { ...of({ rain: 0.0051, chance: 0.4, highest: 304.15 }), ...of({ rain: 0 }, TODAY + 6) };
    const text = forecastText({
      ...said,
      ...of({ rain: 1 * MM }, TODAY + 7),
      ...of({ rain: 1 * MM }, TODAY - 1),
    });
    expect(readForecastText(text, TODAY)).toEqual(said);
    // A day later the first has passed, and the eighth is within reach.
    expect(Object.keys(readForecastText(text, TODAY + 1)).map(Number)).toEqual([TODAY + 6, TODAY + 7]);
  });

  test.each([
    "",
    "rubbish",
    "2021-06-15",
    "2021-06-15 x 7 -5; ; 2021-13-01 1 1 1",
    "2021-06-15 -1 NaN Infinity",
  ])("that nobody can read says nothing: %j", (text) => {
    for (const one of Object.values(readForecastText(text, TODAY)))
      expect(one).toEqual({ rain: null, chance: null, highest: null });
  });
});

describe("the usual of some made-up years", () => {
  const NEVER = 100;

  test("of those that are short on the middle day it is the one whose tanks are empty nearest to the middle day of all", () => {
    // Fifteen of nineteen short today: which of them is the usual one must not be chance.
    const empties = [null, 40, 10, null, 30, 20, 25, null, 15, 35, 12, 22, 32, 18, null];
    const runs = [
      ...empties.map((empty) => ({ short: 0, empty })),
      ...[50, 60, 70, null].map((short) => ({ short, empty: null })),
    ];
    // Of all 19, in order: 10 12 15 18 20 22 25 30 32, then 35.
    expect(middlingOf(runs, NEVER)).toEqual({ short: 0, empty: 35 });
    expect(middlingOf([...runs].reverse(), NEVER)).toEqual({ short: 0, empty: 35 });
  });

  test("a year that is never short or empty counts as later than any other; of none there is none", () => {
    const runs = [
      { short: 5, empty: 9 },
      { short: null, empty: null },
      { short: null, empty: 50 },
    ];
    expect(middlingOf(runs, NEVER)).toEqual({ short: null, empty: 50 });
    expect(middlingOf([], NEVER)).toBeNull();
  });
});
