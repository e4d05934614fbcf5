// Holding water back by a rule: the season's own days as a rule, orders for the next watering, and runs wound back.

import { describe, expect, test } from "vitest";
import { STEPPING } from "../../src/season/gravity.ts";
import { daysKept, layRule, order, standBack } from "../../src/season/holding.ts";
import { memberOf, runMember } from "../../src/season/holding-runs.ts";
import { searched, trialsOf, tunedRule } from "../../src/season/holding-tuned.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { momentOf } from "../../src/season/moment.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import type { SeasonState } from "../../src/season/state.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, delivery, inputOf, line, recordOf, roof, seattle, tank } from "./made.ts";

const TOMATO = crop({ crop: "tomato", planted: "05-01" });

/** One tank, two covered beds: the first is worth more. */
const place = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "09-15",
    holdDays: 7,
    roofs: [roof({ footprint: 25 })],
    tanks: [tank(1.5, { startShare: 1 })],
    carries: [carry()],
    beds: ["good", "lesser"].map((id, at) =>
      bed({ id, area: 6, covered: true, priority: at + 1, worth: at === 0 ? 10 : 3, crops: [TOMATO] }),
    ),
    ...more,
  });

function prepared(input: SeasonInput, record = seattle()): SeasonState {
  const state = prepareSeason(input, record);
  if ("failed" in state) throw new Error(state.failed);
  return state;
}

const seriesOf = ({ beds, stored }: SeasonState) => [
  ...beds.flatMap(({ given, evening }) => [[...given], [...evening]]),
  ...stored.map((series) => [...series]),
];

const alike = (days: number) => ({ marks: [days, days, days, days, days] });

describe("a rule of marks", () => {
  test("goes in straight lines between five marks over the season", () => {
    const rule = { marks: [0, 10, 20, 20, 4] };
    expect([0, 0.25, 0.125, 0.5, 0.875, 1].map((share) => daysKept(rule, share))).toEqual([
      0, 10, 5, 20, 12, 4,
    ]);
  });

  test("of the season's own days is the season itself, where worth and order agree", () => {
    const [plain, ruled] = [prepared(place()), prepared(place())];
    standBack(ruled);
    layRule(ruled, alike(7), 138);
    runDays(plain);
    runDays(ruled);
    expect(seriesOf(ruled)).toEqual(seriesOf(plain));
    expect(plain.beds[1]?.given.some((given) => given > 0)).toBe(true);
  });

  test("keeps nothing for a bed that is worth less, whatever the order of watering", () => {
    const state = prepared(
      place({
        beds: place().beds.map((part) => ({ ...part, priority: 3 - part.priority })),
      }),
    );
    standBack(state);
    const ahead = Object.fromEntries(
      state.beds.map(({ part, hold }) => [part.id, hold?.ahead[0]?.map((one) => one.part.id)]),
    );
    expect(ahead).toEqual({ good: [], lesser: ["good"] });
  });

  test("keeps water and energy, whatever it orders (G1)", () => {
    const state = prepared(place());
    standBack(state);
    layRule(state, { marks: [30, 0, 14, 60, 3] }, 138);
    order(
      state.beds,
      new Map([
        ["lesser", { refused: Infinity }],
        ["good", { served: 3 }],
      ]),
    );
    runDays(state);
    expect(state.ledger.waterError).toBeLessThan(1e-9);
    expect(state.beds.find(({ part }) => part.id === "lesser")?.given.every((given) => given === 0)).toBe(
      true,
    );
  });
});

/** A tub on a line, a pump and a third bed: all that a run leaves behind. */
const hillside = (): SeasonInput =>
  place({
    tanks: [
      tank(1.5, { floor: 1, startShare: 1 }),
      tank(0.3, { id: "tub", vessel: { form: "upright", height: 0.6, volume: 0.3 } }),
    ],
    lines: [line({ startHeight: 1.05, endHeight: 0.5, shutLevel: 0.5 })],
    deliveries: [delivery({ from: "tub" })],
    beds: [
      ...place().beds,
      bed({ id: "third", area: 4, priority: 3, worth: 1, wateredBy: ["pump", "cans"], crops: [TOMATO] }),
    ],
  });

describe("a run wound back", () => {
  const input = hillside();
  const whole = prepared(input);
  const from = dayNumber(2013, 6, 20) - whole.record.firstDay;
  runDays(whole, STEPPING, { first: 0, last: from - 1 });
  const moment = momentOf(whole, from);
  const season = { start: dayNumber(2013, 5, 1), end: dayNumber(2013, 9, 15) };
  const last = season.end - whole.record.firstDay;
  const part = (series: Float64Array | null) => series?.slice(from, last + 1) ?? null;
  const weather = {
    rain: whole.record.rain.slice(from, last + 1),
    highest: part(whole.record.highest),
    lowest: part(whole.record.lowest),
    eto: whole.eto.slice(from, last + 1),
  };
  const fresh = () => memberOf(input, moment, weather, whole, season);
  const before = fresh().potential.map(({ length }) => new Float64Array(length));

  test("is the run made anew, to the bit", () => {
    const used = fresh();
    for (const days of [0, 40, 9])
      runMember(used, alike(days), before, new Map([["lesser", { refused: 2 }]]));
    runMember(used, null, before);
    const again = runMember(used, alike(5), before);
    const other = fresh();
    expect(again).toEqual(runMember(other, alike(5), before));
    expect(seriesOf(used.state)).toEqual(seriesOf(other.state));
    expect(again.lost.some((lost) => lost > 0)).toBe(true);
  });

  test("serves a bed that the rule would refuse, once, and refuses one that it would serve, once", () => {
    const member = fresh();
    const lesser = member.state.beds.find(({ part: { id } }) => id === "lesser");
    const given = (days: number, orders = new Map()) => {
      runMember(member, alike(days), before, orders);
      return lesser?.given.findIndex((amount) => amount > 0) ?? -1;
    };
    expect(given(1000)).toBe(-1);
    const served = given(1000, new Map([["lesser", { served: 1 }]]));
    expect(served).toBeGreaterThanOrEqual(member.first);
    expect(given(0)).toBe(served);
    expect(given(0, new Map([["lesser", { refused: 1 }]]))).toBe(served + 1);
  });
});

describe("a tuned rule", () => {
  test("loses no more than keeping nothing, seven days or all over the years it was tuned on, and is kept", () => {
    const record = recordOf(seattle().rain, dayNumber(2012, 1, 1), { madeUp: false });
    const input = place({ roofs: [roof({ footprint: 12 })] });
    const trials = trialsOf(input, prepared(input, record));
    const rule = searched(trials);
    const lossBy = (marks: readonly number[]) =>
      trials.reduce((sum, { member, before }) => {
        const { lost } = runMember(member, { marks }, before);
        return sum + 60 * (lost[0] as number) + 18 * (lost[1] as number);
      }, 0);
    for (const days of [0, 7, 112]) expect(lossBy(rule.marks)).toBeLessThanOrEqual(lossBy(alike(days).marks));
    expect(lossBy(alike(0).marks)).toBeGreaterThan(lossBy(rule.marks));
    const tuned = tunedRule(input, record);
    expect(tuned?.rule).toEqual(rule);
    expect(tunedRule(input, record)).toBe(tuned);
    expect(tuned?.years.map(({ year }) => year)).toEqual([2012, 2013, 2014, 2015]);
  });
});
