// What was noted of the last weeks, carried on to this morning.

import { describe, expect, test } from "vitest";
import type { Happened } from "../../src/happened/happened.ts";
import { readHappened } from "../../src/happened/text.ts";
import { withGauge } from "../../src/season/happened-days.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import { carriedDiffers, happening, morning } from "./carried.ts";
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

const FIRST = dayNumber(2020, 1, 1);
const TODAY = dayNumber(2021, 7, 10);
/** Two years without rain. */
const DRY = recordOf(new Float64Array(731), FIRST);
/** 4 mm a day by crops that fill a bed of 10 m2, four fifths of the water reaching them. */
const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    tanks: [tank(1), tank(0.2, { id: "tub" })],
    carries: [carry(), carry({ id: "tub_cans", from: "tub" })],
    beds: [
      bed({
        wateredBy: ["cans", "tub_cans"],
        crops: [crop({ planted: "05-01", stages: [0, 0, 150, 0], kcMiddle: 1 })],
      }),
    ],
    ...more,
  });
const at = (happened: readonly Happened[], more: Partial<SeasonInput> = {}, record = DRY) =>
  morning(plan(more), record, TODAY, happened);
const dipped = (id: string, days: number, depth: number, more: Partial<Happened> = {}) =>
  happening("dipped", id, TODAY - days, depth, more);
const lackOf = (moment: ReturnType<typeof at>, id = "bed") => moment.beds[id]?.soil.depletion as number;

describe("a watering that was noted", () => {
  const soaked = happening("soaked", "bed", TODAY - 4, 0);
  const full = dipped("tank", 6, 1, { side: "before" });
  const tub = dipped("tub", 6, 1, { side: "before" });

  test("wets the ground by what reaches it, and leaves the tank that it came from", () => {
    const dry = at([full, tub, soaked]);
    const wet = at([full, tub, soaked, happening("gave", "bed", TODAY - 2, 60 * LITRE, { by: "tub_cans" })]);
    expect(lackOf(dry) - lackOf(wet)).toBeCloseTo((60 * LITRE * 0.8) / 10, 9);
    expect(wet.tanks).toEqual({ tank: 1, tub: 0.2 - 60 * LITRE });
    expect(dry.tanks).toEqual({ tank: 1, tub: 0.2 });
  });

  test("by nobody knows what comes from its first waterer, then the next", () => {
    const low = dipped("tank", 6, 0.05, { side: "before" });
    const { tanks } = at([low, tub, soaked, happening("gave", "bed", TODAY - 2, 120 * LITRE)]);
    expect(tanks["tank"]).toBeCloseTo(0, 12);
    expect(tanks["tub"]).toBeCloseTo(0.2 - 0.07, 12);
  });

  test("of more than the tanks are reckoned to hold still wets the ground by all of it", () => {
    const empty = [dipped("tank", 6, 0, { side: "before" }), dipped("tub", 6, 0, { side: "before" })];
    const gave = happening("gave", "bed", TODAY - 2, 60 * LITRE);
    expect(lackOf(at([...empty, soaked, gave]))).toBeCloseTo(lackOf(at([full, tub, soaked, gave])), 12);
  });

  test("of today counts already", () => {
    const gave = happening("gave", "bed", TODAY, 60 * LITRE, { by: "tub_cans", minute: 500 });
    const now = at([full, tub, soaked, gave]);
    expect(now.tanks["tub"]).toBeCloseTo(0.2 - 0.06, 12);
    expect(lackOf(at([full, tub, soaked])) - lackOf(now)).toBeCloseTo((60 * LITRE * 0.8) / 10, 9);
  });

  test("of more than was in the tub yet is taken as it runs in: hours later the tub stands full", () => {
    // 150 L from a tub that had 100 L at eight; the line fills it in a fraction of the eleven hours left.
    const low = dipped("tub", 0, 0.1, { minute: 480 });
    const gave = happening("gave", "bed", TODAY, 150 * LITRE, { by: "tub_cans", minute: 481 });
    const more = {
      tanks: [
        tank(2, { floor: 1 }),
        tank(0.2, { id: "tub", vessel: { form: "upright", height: 0.5, volume: 0.2 } }),
      ],
      lines: [line()],
      waterAt: 19 * 3600,
    };
    const input = plan(more);
    const evening = (all: readonly Happened[]) =>
      morning(input, DRY, TODAY, [full, soaked, ...all], { dawn: 6 * 3600 }).tanks["tub"] as number;
    expect(evening([low])).toBeGreaterThan(0.15);
    expect(evening([low, gave])).toBeCloseTo(evening([low]), 3);
  });

  test("a bed of which nothing is noted goes by its rule, and one of which anything is does not", () => {
    const beds = [
      bed({ crops: plan().beds[0]?.crops ?? [] }),
      bed({ id: "other", priority: 2, crops: plan().beds[0]?.crops ?? [] }),
    ];
    const none = at([full, tub], { beds });
    const both = at([full, tub, soaked, happening("soaked", "other", TODAY - 6, 0)], { beds });
    expect(none.tanks["tank"] as number).toBeLessThan(1);
    expect(both.tanks["tank"]).toBe(1);
  });
});

describe("a soak", () => {
  const tanks = [dipped("tank", 8, 1, { side: "before" }), dipped("tub", 8, 1, { side: "before" })];
  const first = happening("soaked", "bed", TODAY - 8, 0);
  const again = (more: Partial<Happened> = {}, amount: number | null = null) =>
    happening("soaked", "bed", TODAY - 3, amount, more);

  test("fills the ground, and takes from the tank what it lacked", () => {
    const lacked = lackOf(morning(plan(), DRY, TODAY - 3, [...tanks, first]));
    const { tanks: left, ...moment } = at([...tanks, first, again()]);
    expect(lacked).toBeGreaterThan(5 * MM);
    expect(1 - (left["tank"] as number)).toBeCloseTo((lacked * 10) / 0.8, 9);
    expect(moment.beds["bed"]?.soil.depletion).toBeCloseTo(
      lackOf(morning(plan(), DRY, TODAY, [again()])),
      12,
    );
  });

  test("takes what it says, or what a watering of the same day says", () => {
    expect(at([...tanks, first, again({}, 30 * LITRE)]).tanks["tank"]).toBeCloseTo(0.97, 12);
    const gave = happening("gave", "bed", TODAY - 3, 50 * LITRE, { by: "cans" });
    const both = at([...tanks, first, again(), gave]);
    expect(both.tanks["tank"]).toBeCloseTo(0.95, 12);
    expect(lackOf(both)).toBeCloseTo(lackOf(at([...tanks, first, again()])), 12);
  });

  test("is nothing to a tank that was dipped later on that day", () => {
    const dip = (minute: number) => dipped("tank", 3, 0.5, { minute });
    expect(at([...tanks, first, again({ minute: 480 }), dip(490)]).tanks["tank"]).toBe(0.5);
    expect(at([...tanks, first, again({ minute: 480 }), dip(470)]).tanks["tank"] as number).toBeLessThan(0.5);
    // Where nobody knows when, what was read is what there was afterwards.
    expect(at([...tanks, first, again(), dipped("tank", 3, 0.5)]).tanks["tank"]).toBe(0.5);
  });
});

describe("a dip of a day before", () => {
  // Each day 100 L are drawn: a dip before it is worth less on the next morning.
  const drawing = { draws: [draw(0.1)], waterAt: 19 * 3600, beds: [] };
  const on = (more: Partial<Happened>) => at([dipped("tank", 1, 0.5, more)], drawing).tanks["tank"];

  test.each([
    ["before", { side: "before" }, 0.4],
    ["after", { side: "after" }, 0.5],
    ["before the hour of watering", { minute: 19 * 60 - 1 }, 0.4],
    ["at the hour of watering", { minute: 19 * 60 }, 0.5],
    ["at nobody knows what hour", {}, 0.4],
  ] as const)("%s", (_when, more, left) => {
    expect(on(more)).toBeCloseTo(left, 12);
  });
});

test("what was filled in and taken out counts from its day on, and never beyond brim and floor", () => {
  const dip = dipped("tank", 5, 0.5, { side: "before" });
  const of = (...moves: Happened[]) => at([dip, ...moves], { beds: [] }).tanks["tank"];
  expect(
    of(happening("filled", "tank", TODAY - 4, 0.2), happening("took", "tank", TODAY - 3, 0.1)),
  ).toBeCloseTo(0.6, 12);
  expect(
    of(happening("filled", "tank", TODAY - 4, 9), happening("took", "tank", TODAY - 3, 0.1)),
  ).toBeCloseTo(0.9, 12);
  expect(
    of(happening("took", "tank", TODAY - 4, 9), happening("filled", "tank", TODAY - 3, 0.1)),
  ).toBeCloseTo(0.1, 12);
  // Before the dip they are in it already.
  expect(of(happening("took", "tank", TODAY - 6, 0.3))).toBeCloseTo(0.5, 12);
});

describe("a battery", () => {
  const power = {
    batteries: [battery({ charged: "carried", carriedEvery: 400, usable: 100, selfDischarge: 0.1 })],
  };
  const held = (...happened: Happened[]) => at(happened, power).batteries["battery"];

  test("of days ago has lost since then what it loses by itself", () => {
    expect(held(happening("charged", "battery", TODAY - 2, 0.5))?.charge).toBeCloseTo(50 * 0.81, 9);
    expect(held(happening("charged", "battery", TODAY, 0.5))?.charge).toBeCloseTo(50, 9);
  });

  test("swapped is a full one, or one as full as is said", () => {
    expect(held(happening("swapped", "battery", TODAY - 1))?.charge).toBeCloseTo(90, 9);
    expect(held(happening("swapped", "battery", TODAY, 0.8))?.charge).toBeCloseTo(80, 9);
  });

  test("gives what a noted watering by its pump takes", () => {
    const pumping = {
      batteries: [battery({ charged: "carried", carriedEvery: 400, usable: 100_000 })],
      deliveries: [delivery({ battery: "battery" })],
      beds: [bed({ wateredBy: ["pump"] })],
    };
    const gave = happening("gave", "bed", TODAY - 1, 100 * LITRE, { by: "pump" });
    const { batteries } = at(
      [
        dipped("tank", 1, 1, { side: "before" }),
        happening("charged", "battery", TODAY - 1, 1, { side: "before" }),
        gave,
      ],
      pumping,
    );
    // 100 L at 0.2 L/s by 40 W.
    expect(batteries["battery"]?.charge).toBeCloseTo(100_000 - 500 * 40, 6);
  });
});

describe("rain by the gauge", () => {
  const days = { first: 0, today: 10, waterAt: 7 * 3600, rainScale: 1 };
  const read = (date: number, depth: number, more: Partial<Happened> = {}) =>
    happening("rain", "site", date, depth, more);
  const rain = Float64Array.of(1, 2, 3, 0, 0, 4, 0, 0, 0, 0, 0).map((depth) => depth * MM);
  const by = (readings: readonly Happened[], more: Partial<typeof days> = {}) =>
    [...withGauge(rain, readings, { ...days, ...more })].map((depth) => Math.round((depth / MM) * 1e6) / 1e6);

  test("between two readings goes as the record's does", () => {
    expect(by([read(0, 1 * MM), read(2, 10 * MM)])).toEqual([1, 4, 6, 0, 0, 4, 0, 0, 0, 0, 0]);
  });

  test("falls on the reading's day where the record has none, and none of it where the gauge was dry", () => {
    expect(by([read(2, 3 * MM), read(4, 10 * MM), read(7, 0)])).toEqual([1, 2, 3, 0, 10, 0, 0, 0, 0, 0, 0]);
  });

  test("of a first reading is that day's alone", () => {
    expect(by([read(2, 10 * MM)])).toEqual([1, 2, 10, 0, 0, 4, 0, 0, 0, 0, 0]);
  });

  test("before the hour of watering, and of today, fell by last evening; read twice, it was emptied between", () => {
    expect(by([read(3, 9 * MM, { minute: 60 })])).toEqual([1, 2, 9, 0, 0, 4, 0, 0, 0, 0, 0]);
    expect(by([read(10, 5 * MM, { minute: 900 }), read(10, 2 * MM, { minute: 1000 })])).toEqual([
      1, 2, 3, 0, 0, 4, 0, 0, 0, 7, 0,
    ]);
  });

  test("is the site's own, whatever the record is multiplied by", () => {
    expect(by([read(3, 9 * MM)], { rainScale: 1.5 })[3]).toBe(6);
  });

  test("fills tank and ground", () => {
    const dip = dipped("tank", 3, 0.1, { side: "before" });
    const soaked = happening("soaked", "bed", TODAY - 4, 0);
    const roofed = { roofs: [roof({ footprint: 20, runoffCoefficient: 1 })] };
    const dry = at([dip, soaked], roofed);
    const wet = at([dip, soaked, read(TODAY - 1, 10 * MM)], roofed);
    expect((wet.tanks["tank"] as number) - (dry.tanks["tank"] as number)).toBeCloseTo(0.2, 9);
    expect(lackOf(dry) - lackOf(wet)).toBeCloseTo(10 * MM, 6);
  });
});

test("nothing of more than 60 days ago tells, and nothing of a day to come", () => {
  const old = [
    dipped("tank", 61, 0.3),
    happening("soaked", "bed", TODAY - 61),
    happening("rain", "site", TODAY - 61, 1),
  ];
  const coming = [dipped("tank", -1, 0.3), happening("gave", "bed", TODAY + 1, 1)];
  expect(at([...old, ...coming])).toEqual(at([]));
});

test("what comes as text is read as it was, and what is no such text as nothing", () => {
  expect(
    readHappened(
      '[[7,480,null,"gave","bed",0.1,"cans"],[8,null,"after","dipped","tank",0.2,null],[9,1,null,"mulched","bed",1,null]]',
    ),
  ).toEqual([
    happening("gave", "bed", 7, 0.1, { minute: 480, by: "cans" }),
    happening("dipped", "tank", 8, 0.2, { side: "after" }),
  ]);
  for (const text of ["", "[[", "{}", "[1]", "null"]) expect(readHappened(text)).toEqual([]);
});

/** A place with everything that remembers. */
const remembering = (): SeasonInput =>
  inputOf({
    start: "04-15",
    end: "10-15",
    holdDays: 5,
    minutesPerDay: 5400,
    roofs: [roof({ firstFlush: 2 * MM, wettingLoss: 0.2 * MM, footprint: 40 })],
    tanks: [
      tank(4, { floor: 1, openArea: 0.5, leak: 1e-9 }),
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
  });

test.each([120, 150, 171, 190, 214, 260, 330, 500, 540, 620])(
  "[G1] a run's own waterings as notes, with a gauge read every day, give its morning to 1e-9 (from day %i on)",
  (day) => {
    const record = seattle();
    const first = { date: record.firstDay + day, levels: [0.7, 0.5], shares: [0.6] };
    for (const days of [1, 5, 20, 45]) expect(carriedDiffers(remembering(), record, first, days)).toBeNull();
  },
);
