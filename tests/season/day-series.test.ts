// The days of a run added up outside the season's own books: every litre and every joule, rain on open tubs and overflow.

import { describe, expect, test } from "vitest";
import { daySeries } from "../../src/season/day-series.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import {
  battery,
  bed,
  carry,
  delivery,
  draw,
  inputOf,
  line,
  MM,
  ran,
  roof,
  seattle,
  steadyEto,
  tank,
} from "./made.ts";

const record = seattle();
const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "04-15",
    end: "10-15",
    eto: steadyEto(4 * MM),
    roofs: [roof({ footprint: 40, drainsTo: "high" }), roof({ id: "shed", footprint: 6, drainsTo: "tub" })],
    tanks: [
      tank(2, { id: "high", floor: 1, startShare: 0.5, overflowsTo: "second", leak: 1e-9 }),
      tank(1, { id: "second", floor: 0.8, startShare: 1 }),
      tank(0.3, { id: "tub", openArea: 0.6, startShare: 0.2 }),
    ],
    lines: [
      line({ from: "high", startHeight: 1.05, endHeight: 0.3 }),
      line({ id: "hose", from: "second", to: null, opening: 1e-8, startHeight: 0.85, endHeight: 0 }),
    ],
    draws: [draw(0.01, { from: "second" })],
    carries: [carry({ from: "tub" })],
    deliveries: [delivery({ from: "high", battery: "battery" })],
    batteries: [
      battery({
        charged: "in_place",
        dryCharge: Array(12).fill(9000),
        wetCharge: Array(12).fill(2000),
        usable: 20_000,
        selfDischarge: 0.001,
      }),
    ],
    beds: [
      bed({ id: "open", priority: 1, wateredBy: ["pump", "cans"] }),
      bed({ id: "under", covered: true, coverFactor: 0.75, priority: 2 }),
      bed({ id: "fixed", priority: 3, area: 2, rule: { kind: "weekdays", volume: 0.05, days: [1, 4] } }),
    ],
    ...more,
  });

function seriesOf(input: SeasonInput) {
  const series = daySeries(input, record);
  if ("failed" in series) throw new Error(series.failed);
  const named = new Map(series.columns.map((each) => [`${each.part}.${each.name}`, each]));
  return (name: string): Float64Array => {
    const found = named.get(name);
    if (!found) throw new Error(`no column ${name}: ${[...named.keys()].join(" ")}`);
    return found.values;
  };
}

const sum = (values: Iterable<number>): number => {
  let all = 0;
  for (const value of values) all += value;
  return all;
};
const TANKS = ["high", "second", "tub"];
const BEDS = ["open", "under", "fixed"];
const days = Array.from(record.rain, (_, day) => day);

describe.each(["spill_first", "use_first"] as const)(
  "a run's days, under the rule %s, added up outside its own books",
  (storageRule) => {
    const input = plan({ storageRule });
    const of = seriesOf(input);
    const at = (name: string, day: number): number => of(name)[day] as number;

    test("close each tank each day: what was there, what came and what went, to 1e-9 of what went through", () => {
      for (const { id, startShare, vessel } of input.tanks) {
        let held = startShare * vessel.volume;
        const through =
          sum(of(`${id}.from_roofs`)) + sum(of(`${id}.rain`)) + sum(of(`${id}.overflow_in`)) + held;
        for (const day of days) {
          const comes = ["from_roofs", "rain", "overflow_in", "lines"].map((name) =>
            at(`${id}.${name}`, day),
          );
          const goes = ["overflow_out", "spilled", "drawn", "evaporated", "leaked"];
          held += sum(comes) - sum(goes.map((name) => at(`${id}.${name}`, day)));
          expect(Math.abs(held - at(`${id}.stored`, day)), `${id} on day ${day}`).toBeLessThan(
            1e-9 * through,
          );
        }
      }
    });

    test("give to beds and draws what was drawn from the tanks, and no drop more", () => {
      const drawn = sum(TANKS.map((id) => sum(of(`${id}.drawn`))));
      const given = sum(BEDS.map((id) => sum(of(`${id}.given`)))) + sum(of("draw.given"));
      expect(drawn).toBeGreaterThan(1);
      expect(Math.abs(drawn - given)).toBeLessThan(1e-9 * drawn);
    });

    test("let in what rains on an open tub, as far as there is room", () => {
      const caught = of("tub.rain");
      let [full, free] = [0, 0];
      for (const day of days) {
        const falls = (record.rain[day] as number) * 0.6;
        const gets = caught[day] as number;
        expect(gets).toBeLessThanOrEqual(falls + 1e-15);
        if (Math.abs(gets - falls) <= 1e-15) free++;
        else full++;
      }
      expect(free).toBeGreaterThan(100);
      expect(full).toBeGreaterThan(0);
      for (const day of days) expect(at("high.rain", day) + at("second.rain", day)).toBe(0);
    });

    test("pass on as overflow what the next tank takes in, and the run's own sums are these", () => {
      const answer = ran(input, record);
      for (const day of days) expect(at("second.overflow_in", day)).toBe(at("high.overflow_out", day));
      for (const one of answer.tanks) {
        expect(sum(of(`${one.id}.spilled`))).toBeCloseTo(one.spilled, 9);
        expect(sum(of(`${one.id}.overflow_out`))).toBeCloseTo(one.passedOn, 9);
        expect(sum(of(`${one.id}.evaporated`))).toBeCloseTo(one.evaporated, 9);
        expect(of(`${one.id}.stored`)).toEqual(one.stored);
      }
      expect(sum(of("second.spilled"))).toBeGreaterThan(1);
      for (const one of answer.lines) expect(sum(of(`${one.id}.moved`))).toBeCloseTo(one.moved, 9);
      expect(sum(of("line.moved"))).toBeGreaterThan(0.1);
    });

    test("close each bed's ground each day, and keep of what was poured no more than came to it", () => {
      for (const { id, efficiency } of input.beds) {
        let lacks = 0;
        const through = sum(of(`${id}.kept`)) + sum(of(`${id}.rain_kept`)) + 1;
        for (const day of days) {
          lacks += at(`${id}.used`, day) + at(`${id}.dried_bare`, day);
          lacks -= at(`${id}.kept`, day) + at(`${id}.rain_kept`, day);
          const says = at(`${id}.lacks_roots`, day) + at(`${id}.lacks_below`, day);
          expect(Math.abs(lacks - says), `${id} on day ${day}`).toBeLessThan(1e-9 * through);
          expect(at(`${id}.kept`, day)).toBeLessThanOrEqual(at(`${id}.given`, day) * efficiency + 1e-12);
          expect(at(`${id}.used`, day)).toBeLessThanOrEqual(at(`${id}.could_use`, day) + 1e-15);
        }
      }
      expect(sum(of("under.rain_kept"))).toBe(0);
    });

    test("close the battery each day to 1e-9", () => {
      let held = 20_000;
      const through = sum(of("battery.entered")) + held;
      for (const day of days) {
        held += at("battery.entered", day) - at("battery.used", day) - at("battery.lost", day);
        expect(Math.abs(held - at("battery.stored", day))).toBeLessThan(1e-9 * through);
      }
      expect(sum(of("battery.used"))).toBeGreaterThan(10_000);
    });

    test("close the whole place: roofs and rain in; beds, draws, hose end, losses and spill out", () => {
      const comes = sum(
        TANKS.flatMap((id) => ["from_roofs", "rain"].map((name) => sum(of(`${id}.${name}`)))),
      );
      const lost = ["spilled", "evaporated", "leaked", "drawn"];
      const goes =
        sum(TANKS.flatMap((id) => lost.map((name) => sum(of(`${id}.${name}`))))) + sum(of("hose.moved"));
      const change = sum(
        input.tanks.map(
          ({ id, startShare, vessel }) => (of(`${id}.stored`).at(-1) ?? 0) - startShare * vessel.volume,
        ),
      );
      expect(Math.abs(comes - goes - change)).toBeLessThan(1e-9 * comes);
    });
  },
);
