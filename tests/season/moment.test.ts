// A season gone on with from the whole state of a morning is the season that was never stopped.

import { expect, test } from "vitest";
import { STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { type GoingOn, goingOn, goingOnAgain, momentOf } from "../../src/season/moment.ts";
import { knownBeds } from "../../src/season/moment-today.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import { differenceFrom } from "./going-on.ts";
import {
  battery,
  bed,
  carry,
  crop,
  delivery,
  draw,
  inputOf,
  LITRE,
  line,
  MM,
  recordOf,
  roof,
  seattle,
  tank,
} from "./made.ts";

/** A place with everything that remembers: first flush, snow, counters, charges, soils, letting go. */
const place = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "04-15",
    end: "10-15",
    holdDays: 5,
    minutesPerDay: 5400,
    roofs: [roof({ firstFlush: 2 * MM, wettingLoss: 0.2 * MM, footprint: 40 })],
    tanks: [
      tank(4, { floor: 1, openArea: 0.5, leak: 1e-9, startShare: 0.5 }),
      tank(0.3, { id: "tub", vessel: { form: "upright", height: 0.6, volume: 0.3 } }),
    ],
    lines: [line({ startHeight: 1.05, endHeight: 0.5, shutLevel: 0.5 })],
    draws: [draw(9 * LITRE, { every: 2.5 * DAY })],
    deliveries: [delivery({ from: "tub", battery: "battery", lowestWater: 0.03 })],
    carries: [carry()],
    batteries: [
      battery({
        usable: 60_000,
        charged: "carried",
        carriedEvery: 5,
        dryCharge: Array(12).fill(50_000),
        wetCharge: Array(12).fill(5_000),
        selfDischarge: 0.01,
      }),
    ],
    beds: [
      bed({ id: "a", priority: 1, wateredBy: ["pump", "cans"] }),
      bed({
        id: "b",
        priority: 2,
        letGo: { from: "06-15", dryDays: 14 },
        wateredBy: ["cans"],
        crops: [crop({ planted: "05-20" })],
      }),
      bed({
        id: "c",
        priority: 3,
        rule: { kind: "fixed", volume: 20 * LITRE, every: 3 * DAY },
        wateredBy: ["cans"],
      }),
    ],
    ...more,
  });

/** A winter whose snow lies for weeks, and showers that are one event. */
function snowy() {
  const record = seattle();
  const lowest = (record.lowest as Float64Array).map((kelvin) => kelvin - 8);
  const highest = (record.highest as Float64Array).map((kelvin) => kelvin - 8);
  return { ...record, lowest, highest };
}

test.each([1, 3, 20, 45, 61, 130, 166, 199, 245, 290, 380, 520, 700])(
  "on day %i of a record, with first flush, snow, draws, charges and letting go under way",
  (stop) => {
    expect(differenceFrom(place(), seattle(), stop, 400)).toBeNull();
    expect(differenceFrom(place({ storageRule: "use_first" }), snowy(), stop, 400)).toBeNull();
  },
);

test("in the middle of an event only what is left of its first flush is lost", () => {
  const rain = new Float64Array(60).fill(0);
  for (const day of [30, 31, 32]) rain[day] = 1.2 * MM;
  const input = inputOf({
    start: "01-01",
    end: "02-20",
    roofs: [roof({ firstFlush: 2 * MM })],
    tanks: [tank(4)],
  });
  expect(differenceFrom(input, recordOf(rain, dayNumber(2021, 1, 1)), 31, 20)).toBeNull();
});

test("where crops of the season's rest no longer stand as thick as those before, the ground holds as much (place 12 of the sweep)", () => {
  const crops = [
    crop({ planted: "04-20", stages: [10, 10, 20, 10], share: 0.9 }),
    crop({ planted: "05-01", stages: [10, 10, 20, 10], share: 0.9 }),
    crop({ planted: "08-01", share: 0.4, stages: [10, 20, 20, 10] }),
  ];
  const input = inputOf({
    start: "04-15",
    end: "10-15",
    tanks: [tank(1, { startShare: 1 })],
    carries: [carry()],
    beds: [bed({ crops, rootLimit: 0.6 })],
  });
  expect(differenceFrom(input, seattle(), 190, 100)).toBeNull();
});

test.each(["spill_first", "use_first"] as const)(
  "[G1] a run in the place of one that is over says to the bit what one put together anew says (%s)",
  (storageRule) => {
    const record = snowy();
    const input = place({ storageRule });
    const whole = prepareSeason(input, record);
    if ("failed" in whole) throw new Error(whole.failed);
    const [stop, days] = [166, 120];
    runDays(whole, STEPPING, { first: 0, last: stop - 1 });
    const moment = momentOf(whole, stop);
    const lower = { ...moment, tanks: { tank: 0.4, tub: 0.02 }, dry: {}, snow: 0.01, flushLeft: {} };
    const weatherFrom = (first: number) => {
      const cut = (series: Float64Array) => series.slice(first, first + days);
      const [highest, lowest] = [cut(record.highest as Float64Array), cut(record.lowest as Float64Array)];
      return { rain: cut(record.rain), highest, lowest, eto: cut(whole.eto) };
    };
    const through = (going: GoingOn) => {
      runDays(going.state, STEPPING, { first: going.first, last: going.state.length - 1 });
      return going;
    };
    const said = ({ state: { stored, shortDay, drawShort, lineMovedOn, batteries, beds } }: GoingOn) =>
      structuredClone({
        stored,
        shortDay,
        drawShort,
        lineMovedOn,
        books: batteries.books,
        beds: beds.map(({ given, lacked, lastBy, unfilled, evening, firstShort, letGo }) => [
          ...[given, lacked, lastBy, unfilled, evening, firstShort, letGo],
        ]),
      });
    const starts = [
      [moment, weatherFrom(stop)],
      [lower, weatherFrom(stop + 365)],
      [moment, weatherFrom(stop + 730)],
    ] as const;
    const anew = starts.map(([from, weather]) =>
      said(through(goingOn(input, from, weather, knownBeds(whole)))),
    );
    let going: GoingOn | null = null;
    for (const [at, [from, weather]] of starts.entries()) {
      going = through(
        going ? goingOnAgain(going, from, weather) : goingOn(input, from, weather, knownBeds(whole)),
      );
      expect(said(going)).toEqual(anew[at]);
    }
    expect(anew[0]).not.toEqual(anew[2]);
  },
);
