// Ten pumps and batteries that must not be plain: for each the state of named quantities and the caution were written
// down before anything worked them out. Every one must also account for its water and its energy.

import { describe, expect, test } from "vitest";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, given, numberAt, sheetOf, workedOut } from "./made-up-sheets.ts";

type Cards = Parameters<typeof sheetOf>[0];
type Parts = Readonly<Record<"pump" | "hose" | "wire" | "battery", Givens>>;

type Odd = {
  readonly name: string;
  readonly parts?: Partial<Parts>;
  readonly more?: Cards;
  /** Givens of the single cards. */
  readonly single?: Readonly<Record<string, Givens>>;
  readonly none?: Readonly<Record<string, string>>;
  readonly ready?: Readonly<Record<string, number | string>>;
  readonly cautions: readonly string[];
  /** What is left out of the season with it, and so fails there. */
  readonly leftOut?: RegExp;
};

const TUB: Givens = { capacity: [100, "gal"], water_height: [4, "ft"], ground_height: [0, "ft"] };

const ODD: readonly Odd[] = [
  {
    name: "flat before one watering",
    parts: { battery: { rated_capacity: [1, "Ah"], health: [10, "%"] } },
    ready: { "cell.waterings_per_charge": 0 },
    cautions: ["cell: flat_before_one_watering"],
  },
  {
    name: "a stall that stays under the fuse",
    parts: { wire: { gauge: "16 AWG", fuse: [15, "A"] } },
    ready: { "lead.fuse_state": "unsafe", "lead.fuse": 15 },
    cautions: ["lead: stall_does_not_blow"],
  },
  {
    name: "too long a lead",
    parts: { pump: { size: "gph_2000" }, wire: { gauge: "18 AWG", one_way_length: [60, "ft"] } },
    cautions: ["lead: drop_too_big"],
  },
  {
    name: "lithium charged through frosty nights",
    parts: { battery: { chemistry: "lifepo4", charged: "in_place" } },
    more: { sun: ["panel", { charges: "cell" }] },
    single: {
      site: { season_start: "03-01", season_end: "11-30" },
      weather: { normal_lows: [[-8, -7, -3, 3, 8, 12, 14, 13, 9, 4, -1, -6], "degC"] },
    },
    // March and November.
    ready: { "cell.frost_months": 2 },
    cautions: ["cell: cold_charge", "cell: lithium_cold"],
  },
  {
    name: "a roof's panel straight on a 12 V pump",
    parts: { pump: { powered_by: "sun" } },
    more: { sun: ["panel", { cells: "cells_60" }] },
    cautions: ["sun: too_many_volts", "sun: dc_arc"],
  },
  {
    name: "a hose that ends over the pump's greatest lift",
    parts: { hose: { outlet_height: [20, "ft"] } },
    none: { "hose.flow": "higher than this pump lifts", "hose.watering_time": "higher than this pump lifts" },
    cautions: ["hose: lift_above_shutoff"],
    leftOut: /^(bed_one|hose)\./,
  },
  {
    name: "a watering that runs the tank dry",
    parts: { hose: { outlet_height: [4.5, "ft"] } },
    more: { tub: ["tank", { ...TUB, capacity: [20, "gal"] }] },
    ready: { "hose.watering_end": "dry" },
    cautions: ["hose: tank_gives_out", "bilge: dry_running"],
  },
  {
    name: "a hose that lies under the tank and runs on",
    parts: { hose: { outlet_height: [-1, "ft"] } },
    ready: { "hose.siphons_down_to": toSi(2, "cm") },
    cautions: ["hose: siphons_empty"],
  },
  {
    name: "a battery that nothing charges",
    parts: { battery: { rated_capacity: [2, "Ah"], charged: "none" } },
    cautions: ["cell: not_a_week"],
  },
  {
    name: "one pump for two tanks",
    more: {
      other: ["tank", TUB],
      hose_two: ["delivery", { from: "other", pump: "bilge" }],
      bed_two: ["bed", { watered_by: ["hose_two"] }],
    },
    ready: { "bilge.places": 2 },
    cautions: ["bilge: one_place"],
  },
];

function sheetFor({ parts = {}, more = {}, single = {} }: Odd) {
  const worksheet = sheetOf({
    tub: ["tank", TUB],
    barn: ["roof", { footprint: [200, "ft2"], drains_to: "tub" }],
    bed_one: ["bed", { length: [20, "ft"], width: [4, "ft"], watered_by: ["hose"] }],
    bilge: ["pump", { powered_by: "cell", ...parts.pump }],
    hose: ["delivery", { from: "tub", pump: "bilge", ...parts.hose }],
    lead: ["wire", { feeds: "bilge", fuse: [3, "A"], ...parts.wire }],
    cell: ["battery", { ...parts.battery }],
    ...more,
  });
  const cards = worksheet.cards.map((card) => {
    const givens = Object.entries(single[card.id] ?? {}).map(
      ([name, value]) => [name, given(value)] as const,
    );
    return { ...card, givens: { ...card.givens, ...Object.fromEntries(givens) } };
  });
  return { ...worksheet, cards };
}

describe("a rig that must not be plain", () => {
  test.each(ODD.map((odd) => [odd.name, odd] as const))("%s", (_, odd) => {
    const whole = workedOut(sheetFor(odd));
    for (const [id, words] of Object.entries(odd.none ?? {})) {
      const result = whole.results.get(id);
      expect(result, id).toMatchObject({ state: "none", reason: expect.stringContaining(words) });
    }
    for (const [id, value] of Object.entries(odd.ready ?? {})) {
      const result = whole.results.get(id);
      const found = result?.state === "ready" ? result.value : result;
      if (typeof value === "number") expect(found, id).toBeCloseTo(value, 9);
      else expect(found, id).toBe(value);
    }
    const stand = cautionIds(whole);
    for (const id of odd.cautions) expect(stand).toContain(id);
    const failed = whole.results.ids.filter((id) => whole.results.get(id)?.state === "failed");
    expect(failed.filter((id) => !odd.leftOut?.test(id))).toEqual([]);
    expect(Math.abs(numberAt(whole, "season.balance_error"))).toBeLessThan(1e-9);
    const energy = whole.results.get("season.energy_error");
    if (energy?.state !== "none") expect(Math.abs(numberAt(whole, "season.energy_error"))).toBeLessThan(1e-9);
  });
});
