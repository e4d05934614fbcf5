// Eleven worksheets that must not be plain: for each the state of named quantities and the caution were written down before
// anything worked them out. Every one must also account for its water and fail nowhere else.

import { describe, expect, test } from "vitest";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, cautionText, type Givens, numberAt, sheetOf, workedOut } from "./made-up-sheets.ts";

/** A 55-gallon drum, upright; its dimensions hold 57.66 gal. */
const DRUM: Givens = { capacity: [55, "gal"], water_height: [33.5, "in"], outlet_height: [2, "in"] };
const ROOF: Givens = { footprint: [200, "ft2"], drains_to: "barrel" };
const BUCKET: Givens = { bucket_volume: [5, "gal"], bucket_time: [60, "s"] };
const BED: Givens = { length: [10, "ft"], width: [4, "ft"], watered_by: ["cans"] };

type Odd = {
  readonly name: string;
  readonly cards: Parameters<typeof sheetOf>[0];
  /** Quantities that are none, with words of the reason. */
  readonly none?: Readonly<Record<string, string>>;
  /** Quantities that are ready, with the value in SI or the word. */
  readonly ready?: Readonly<Record<string, number | string>>;
  /** Cautions that must stand, `card: id`. */
  readonly cautions: readonly string[];
  /** Cautions that must not. */
  readonly not?: readonly string[];
};

const ODD: readonly Odd[] = [
  {
    name: "never fills: the source gives out before the big tub is full",
    cards: {
      barrel: ["tank", { ...DRUM, ground_height: [6, "ft"] }],
      pond: [
        "tank",
        { capacity: [500, "gal"], water_height: [1, "ft"], outlet_height: [0, "in"], cover: "open" },
      ],
      feed: ["line", { from: "barrel", to: "pond", valve_bore: [6.4, "mm"] }],
    },
    none: { "feed.refill_time": "the source gives out" },
    ready: { "feed.refill_end": "source_dry" },
    cautions: ["feed: never_fills"],
    not: ["feed: levels_equal", "feed: no_drop"],
  },
  {
    name: "levels equal: two alike tanks side by side, an open hose at their floors, the upper full",
    cards: {
      barrel: ["tank", { ...DRUM, outlet_height: [0, "in"] }],
      second: ["tank", { ...DRUM, outlet_height: [0, "in"] }],
      feed: ["line", { from: "barrel", to: "second", valve_bore: null, reference_share: [100, "%"] }],
    },
    none: { "feed.refill_time": "the levels meet" },
    // By symmetry each ends with half: 27.5 gal, at half the height.
    ready: {
      "feed.refill_end": "levels_equal",
      "feed.settles_at": toSi(33.5 / 2, "in"),
      "feed.settles_volume": toSi(27.5, "gal"),
      "feed.ways": "both_ways",
    },
    cautions: ["feed: levels_equal", "feed: runs_both_ways"],
    not: ["feed: never_fills", "feed: high_pressure_seat"],
  },
  {
    name: "siphons empty: the pump's hose ends on the ground below the tank",
    cards: {
      barrel: ["tank", { ...DRUM, ground_height: [4, "ft"], outlet_height: [0, "in"] }],
      pump: ["delivery", { from: "barrel", lowest_water: [1, "in"], outlet_height: [0, "ft"], ...BUCKET }],
    },
    ready: { "pump.siphons_down_to": toSi(1, "in") },
    cautions: ["pump: siphons_empty"],
    not: ["pump: end_below_tank"],
  },
  {
    name: "hump dry: the hose climbs over a wall that is higher than the full tank, and nobody primes it",
    cards: {
      barrel: ["tank", { ...DRUM, ground_height: [2, "ft"] }],
      tub: ["tank", { ...DRUM, outlet_height: [0, "in"] }],
      feed: [
        "line",
        {
          from: "barrel",
          to: "tub",
          length: [50, "ft"],
          shut_level: [12, "in"],
          route: [
            [
              [0, 2],
              [20, 6],
              [50, 1],
            ],
            "ft, ft",
          ],
        },
      ],
    },
    none: { "feed.flow": "hump", "feed.refill_time": "hump" },
    ready: {
      "feed.hump_height": toSi(6, "ft"),
      "feed.hump_at": toSi(20, "ft"),
      "season.left_out": 1,
    },
    cautions: ["feed: hump_above_source"],
    not: ["feed: no_drop"],
  },
  {
    name: "no need: what grows there is gone before the season begins",
    cards: {
      barrel: ["tank", DRUM],
      cans: ["carry", { from: "barrel" }],
      bed_one: ["bed", { ...BED, contents: [[{ crop: "radish", planted: "11-01", share: 1 }], ""] }],
      barn: ["roof", ROOF],
    },
    none: {
      "bed_one.peak_day_need": "season",
      "barrel.days_of_autonomy": "need nothing",
      "season.share_met": "no crop",
    },
    cautions: ["bed_one: no_need"],
  },
  {
    name: "overflow loop: two barrels that spill into each other",
    cards: {
      barrel: ["tank", { ...DRUM, overflows_to: "second" }],
      second: ["tank", { ...DRUM, overflows_to: "barrel" }],
      barn: ["roof", ROOF],
    },
    ready: { "barrel.overflow_ends": "loop", "second.overflow_ends": "loop" },
    cautions: ["barrel: overflow_loop", "second: overflow_loop"],
  },
  {
    name: "nothing fills it: a tub beside a full barrel, the hose between them taken out",
    cards: {
      barn: ["roof", ROOF],
      barrel: ["tank", DRUM],
      second: ["tank", DRUM],
      cans: ["carry", { from: "second" }],
      bed_one: ["bed", BED],
    },
    ready: { "second.filled_by": "nothing", "barrel.filled_by": "water" },
    cautions: ["second: nothing_fills_it"],
    not: ["barrel: nothing_fills_it"],
  },
  {
    name: "dead water: the tap stands 30 in up in 33.5 in of water",
    cards: {
      barrel: ["tank", { ...DRUM, outlet_height: [30, "in"] }],
      cans: ["carry", { from: "barrel" }],
    },
    // 55 gal times 30 over 33.5, and the rest.
    ready: {
      "barrel.dead_water": toSi((55 * 30) / 33.5, "gal"),
      "barrel.usable": toSi((55 * 3.5) / 33.5, "gal"),
    },
    cautions: ["barrel: dead_water"],
    not: ["barrel: unreachable_tank"],
  },
  {
    name: "leak drains it: a seam that loses 20 gal a day",
    cards: {
      barrel: ["tank", { ...DRUM, outlet_height: [0, "in"], leak: [20, "gal/day"] }],
      barn: ["roof", ROOF],
    },
    ready: { "barrel.leak_empties": toSi(55 / 20, "day"), "barrel.lowest_level": 0 },
    cautions: ["barrel: leak_drains_it"],
  },
  {
    name: "unreachable tank: the beds' tub stands above the tank that should fill it",
    cards: {
      barrel: ["tank", DRUM],
      tub: ["tank", { ...DRUM, outlet_height: [0, "in"], ground_height: [10, "ft"] }],
      feed: ["line", { from: "barrel", to: "tub", valve_bore: [3.2, "mm"] }],
      cans: ["carry", { from: "tub" }],
      bed_one: ["bed", BED],
    },
    none: { "feed.flow": "as high as the water" },
    ready: { "barrel.reachable": 0, "barrel.days_of_autonomy": 0 },
    cautions: ["barrel: unreachable_tank", "feed: no_drop"],
    // A seat is not slow where nothing runs at all.
    not: ["feed: high_pressure_seat"],
  },
  {
    name: "seat too small: a 0.5 mm hole cannot keep up with the beds",
    cards: {
      barrel: ["tank", { capacity: [1000, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"] }],
      tub: ["tank", { ...DRUM, outlet_height: [0, "in"] }],
      feed: ["line", { from: "barrel", to: "tub", valve_bore: [0.5, "mm"] }],
      cans: ["carry", { from: "tub" }],
      bed_one: ["bed", { ...BED, length: [30, "ft"] }],
    },
    ready: { "season.tightest_line": "feed" },
    cautions: ["feed: high_pressure_seat", "feed: refill_too_late"],
  },
];

describe.each(ODD)("$name", (odd) => {
  const whole = workedOut(sheetOf(odd.cards));

  test("the quantities stand as written down", () => {
    for (const [id, words] of Object.entries(odd.none ?? {})) {
      const result = whole.results.get(id);
      expect(result?.state, `${id}: ${JSON.stringify(result)}`).toBe("none");
      expect(result?.state === "none" ? result.reason : "", id).toContain(words);
    }
    for (const [id, value] of Object.entries(odd.ready ?? {})) {
      if (typeof value === "number") expect(numberAt(whole, id), id).toBeCloseTo(value, 9);
      else expect(whole.results.get(id), id).toMatchObject({ state: "ready", value });
    }
  });

  test("the cautions stand where they were wanted, and nowhere else", () => {
    const standing = cautionIds(whole);
    expect(standing).toEqual(expect.arrayContaining([...odd.cautions]));
    for (const id of odd.not ?? []) expect(standing).not.toContain(id);
  });

  test("nothing fails, and water is accounted for", () => {
    const failed = whole.results.ids.filter((id) => whole.results.get(id)?.state === "failed");
    expect(failed.map((id) => [id, whole.results.get(id)])).toEqual([]);
    expect(whole.results.problems).toEqual([]);
    expect(Math.abs(numberAt(whole, "season.balance_error"))).toBeLessThan(1e-9);
  });
});

test("a refill that comes too late is set against the time of the tub's own beds", () => {
  const odd = ODD.find(({ cautions }) => cautions.includes("feed: refill_too_late"));
  const whole = workedOut(sheetOf(odd?.cards ?? {}));
  const hours = numberAt(whole, "tub.shortest_interval") / toSi(1, "h");
  const said = /ask again after (\d+)\s(h|days?)\b/.exec(cautionText(whole, "feed: refill_too_late") ?? "");
  expect(Number(said?.[1]) * (said?.[2] === "h" ? 1 : 24)).toBeCloseTo(hours, 0);
});
