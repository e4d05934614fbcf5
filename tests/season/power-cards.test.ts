// From the power cards to the season: which battery or panel a watering draws on, and what is said where that is not known.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Worksheet } from "../../src/document/worksheet.ts";
import type { DayNotes } from "../../src/kinds/bed/gets.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { BOUNDS } from "../../src/network/bounds.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { dayNote } from "../../src/telling/bed-day.ts";
import { toSi } from "../../src/units/unit.ts";
import { readWorksheetText } from "../document/read-text.ts";
import {
  cautionIds,
  type Givens,
  numberAt,
  sheetOf,
  type Whole,
  workedOut,
} from "../kinds/made-up-sheets.ts";

const TUB: Givens = { capacity: [100, "gal"], water_height: [3, "ft"], ground_height: [0, "ft"] };
const BED: Givens = { length: [16, "ft"], width: [4, "ft"], watered_by: ["hose"], cover: "covered" };
const ROOF: Givens = { footprint: [900, "ft2"], drains_to: "tub" };
type Cards = Parameters<typeof sheetOf>[0];

const rigOf = (more: Cards = {}): Worksheet =>
  sheetOf({
    shed: ["roof", ROOF],
    tub: ["tank", TUB],
    plot: ["bed", BED],
    bilge: ["pump", { powered_by: "cell" }],
    hose: ["delivery", { from: "tub", pump: "bilge" }],
    cell: ["battery", { charged: "in_place" }],
    sun: ["panel", { charges: "cell" }],
    ...more,
  });

function inputOf(whole: Whole): SeasonInput {
  const result = whole.results.get("season.plan");
  if (result?.state !== "ready") throw new Error(JSON.stringify(result));
  return result.value as SeasonInput;
}

function notesOf(whole: Whole, bed: string): DayNotes {
  const result = whole.results.get(`${bed}.day_notes`);
  if (result?.state !== "ready") throw new Error(JSON.stringify(result));
  return result.value as DayNotes;
}

const reasonOf = (whole: Whole, id: string): string => {
  const result = whole.results.get(id);
  if (result?.state === "none") return result.reason;
  return result?.state === "failed" ? result.problem.text : "";
};

describe("a hose", () => {
  test("draws on the battery that its pump's card names, at the power of each depth", () => {
    const whole = workedOut(rigOf());
    const [hose] = inputOf(whole).deliveries;
    expect(hose).toMatchObject({ battery: "cell", pump: "bilge", sun: null });
    expect(hose?.depths.length).toBeGreaterThan(10);
    // Fuller tanks give more, and the season's energy is time times about that power.
    expect((hose?.flows.at(-1) ?? 0) > (hose?.flows[0] ?? 0)).toBe(true);
    const mean = numberAt(whole, "cell.season_use") / numberAt(whole, "hose.season_time");
    expect(mean / numberAt(whole, "hose.drawn_power")).toBeCloseTo(1, 1);
    expect(numberAt(whole, "season.energy_error")).toBeLessThan(1e-9);
    expect(numberAt(whole, "season.unmetered")).toBe(0);
  });

  test("whose pump hangs on a panel alone draws on no battery but on the sun from the hour of watering on", () => {
    const at = (hour: number, panel: Givens = {}) => {
      const sheet = rigOf({
        bilge: ["pump", { powered_by: "sun" }],
        sun: ["panel", panel],
        // Water enough for whatever the bed asks for, so that only the sun can be lacking.
        tub: ["tank", { ...TUB, capacity: [3000, "gal"], start_share: [100, "%"] }],
      });
      const cards = sheet.cards.map((card) =>
        card.id === "site"
          ? { ...card, givens: { ...card.givens, water_at: { value: hour, unit: "h" } } }
          : card,
      );
      return workedOut({ ...sheet, cards });
    };
    const noon = at(12);
    const [hose] = inputOf(noon).deliveries;
    expect(hose?.battery).toBeNull();
    const july = { dry: hose?.sun?.dry[6] ?? [], wet: hose?.sun?.wet[6] ?? [] };
    expect(july.dry[0]).toBe(0);
    for (let hour = 1; hour < july.dry.length; hour++) {
      expect(july.dry[hour]).toBeGreaterThanOrEqual(july.dry[hour - 1] as number);
      expect(july.wet[hour]).toBeLessThanOrEqual(july.dry[hour] as number);
    }
    const late = inputOf(at(17)).deliveries[0]?.sun?.dry[6] ?? [];
    expect(late.at(-1)).toBeLessThan(july.dry.at(-1) as number);
    const night = at(22);
    expect(inputOf(night).deliveries[0]?.sun?.dry[6]).toEqual([0]);
    expect(numberAt(night, "season.got")).toBe(0);
    expect(night.results.get("season.binding")).toMatchObject({ value: "daylight" });
    expect(numberAt(noon, "season.got")).toBeGreaterThan(0);
  });

  test("with a bucket and no meter has no end of power, and that is said", () => {
    const bucket: Givens = {
      from: "tub",
      powered_by: "cell",
      bucket_volume: [5, "gal"],
      bucket_time: [90, "s"],
    };
    const blind = workedOut(rigOf({ hose: ["delivery", bucket] }));
    expect(numberAt(blind, "season.unmetered")).toBe(1);
    expect(cautionIds(blind)).toContain("season: power_unknown");
    expect(inputOf(blind).deliveries[0]?.battery).toBeNull();
    const metered = workedOut(rigOf({ hose: ["delivery", bucket, { current: [2, "A"] }] }));
    expect(numberAt(metered, "season.unmetered")).toBe(0);
    expect(cautionIds(metered)).not.toContain("season: power_unknown");
    expect(inputOf(metered).deliveries[0]).toMatchObject({
      battery: "cell",
      powers: [expect.closeTo(24, 6)],
    });
  });

  test("on a panel whose sun nobody knows is left out with that reason", () => {
    const whole = workedOut(
      rigOf({ bilge: ["pump", { powered_by: "sun" }], sun: ["panel", { tilt: null }] }),
    );
    expect(inputOf(whole).deliveries).toEqual([]);
    const why = inputOf(whole).leftOut.find(({ id }) => id === "hose")?.reason;
    expect(why).toBe(reasonOf(whole, "sun.supply"));
  });

  test("whose pump runs on nothing is left out with that reason, and so is its bed", () => {
    const whole = workedOut(rigOf({ bilge: ["pump", {}] }));
    expect(inputOf(whole).deliveries).toEqual([]);
    expect(inputOf(whole).leftOut).toEqual(
      expect.arrayContaining([
        { id: "hose", reason: "its pump runs on no battery and no panel" },
        expect.objectContaining({ id: "plot" }),
      ]),
    );
  });

  test("whose battery is flat hands over to the cans, and the day says so", () => {
    const small: Givens = { charged: "none", rated_capacity: [1, "Ah"] };
    const whole = workedOut(
      rigOf({
        cell: ["battery", small],
        cans: ["carry", { from: "tub" }],
        plot: ["bed", { ...BED, watered_by: ["hose", "cans"] }],
      }),
    );
    expect(numberAt(whole, "plot.days_helped")).toBeGreaterThan(1);
    expect(numberAt(whole, "cell.days_flat")).toBeGreaterThan(1);
    expect(whole.results.get("plot.lacked_by")).toMatchObject({
      value: expect.stringContaining("the battery"),
    });
    const notes = notesOf(whole, "plot");
    const energy = BOUNDS.indexOf("energy") + 1;
    const helped = notes.lacked.findIndex((bound, day) => bound === energy && notes.unfilled[day] === 0);
    const bed = { title: "Plot", notes, ways: ["Hose", "Cans"] };
    expect(dayNote(bed, helped, String)).toBe("Plot: the battery was drawn down; Cans helped out.");
    const idle = notes.given.indexOf(0);
    expect(dayNote(bed, idle, String)).toBeNull();
  });
});

describe("a battery", () => {
  test("gets what its panel brings on dry and on wet days, only where the panel stands behind it", () => {
    const plan = inputOf(workedOut(rigOf()));
    const [cell] = plan.batteries;
    expect(cell?.charged).toBe("in_place");
    for (let month = 0; month < 12; month++) {
      expect(cell?.wetCharge[month]).toBeGreaterThan(0);
      expect(cell?.wetCharge[month]).toBeLessThan(cell?.dryCharge[month] as number);
    }
    const alone = inputOf(workedOut(rigOf({ sun: ["panel", {}] }))).batteries[0];
    expect(alone?.dryCharge).toEqual(Array(12).fill(0));
  });

  test("loses by itself, when full, its chemistry's share of its whole charge in thirty days", () => {
    const [cell] = inputOf(workedOut(rigOf({ cell: ["battery", { self_discharge: [6, "%"] }] }))).batteries;
    // Half of it may be drawn: 6 % of the whole is 12 % of that half.
    expect((cell?.selfDischarge ?? 0) * 30).toBeCloseTo(0.12, 12);
  });

  test("of lithium is not charged in frost, one of lead is", () => {
    const of = (chemistry: string) =>
      inputOf(workedOut(rigOf({ cell: ["battery", { chemistry, charged: "in_place" }] }))).batteries[0];
    expect(of("lifepo4")?.leastChargingTemperature).toBe(toSi(0, "degC"));
    expect(of("agm")?.leastChargingTemperature).toBeNull();
  });

  test("on a panel whose sun nobody knows is left out with that reason, not taken as dark", () => {
    const whole = workedOut(rigOf({ sun: ["panel", { charges: "cell", tilt: null }] }));
    expect(inputOf(whole).batteries).toEqual([]);
    expect(inputOf(whole).leftOut.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["cell", "hose", "plot"]),
    );
    expect(reasonOf(whole, "cell.days_flat")).toContain("Left out of the season");
  });

  test("carried to its panel has its whole day there, on one day in so many", () => {
    const at = (charged: string) =>
      inputOf(workedOut(rigOf({ cell: ["battery", { charged, carried_every: [5, "1"] }] }))).batteries[0];
    expect(at("carried")).toMatchObject({ charged: "carried", carriedEvery: 5 });
    expect(at("carried")?.dryCharge).toEqual(at("in_place")?.dryCharge);
  });
});

describe("more power", () => {
  // By the calendar, so that the demand is the same whatever was given before.
  const plot: Givens = { ...BED, rule: "fixed", fixed_volume: [40, "gal"], fixed_every: [2, "day"] };
  // In four made-up years no day came on which so little power more made a difference.
  const inMoreYears = (worksheet: Worksheet): Worksheet => ({
    ...worksheet,
    cards: worksheet.cards.map((card) =>
      card.kind === "weather"
        ? { ...card, givens: { ...card.givens, years: { value: 20, unit: "1" } } }
        : card,
    ),
  });
  const poured = (more: Cards) => {
    const whole = workedOut(inMoreYears(rigOf({ plot: ["bed", plot], ...more })));
    return numberAt(whole, "season.got") + numberAt(whole, "season.past_roots");
  };

  test("of panel or battery never pours less on the beds", () => {
    const cell = (ampHours: number): Cards => ({
      cell: ["battery", { charged: "in_place", rated_capacity: [ampHours, "Ah"] }],
      sun: ["panel", { charges: "cell", rated_power: [1, "W"], imp: [0.05, "A"] }],
    });
    const small = poured(cell(1));
    expect(poured(cell(3))).toBeGreaterThan(small);
    const panel = (amps: number): Cards => ({
      cell: ["battery", { charged: "in_place", rated_capacity: [1, "Ah"] }],
      sun: ["panel", { charges: "cell", imp: [amps, "A"] }],
    });
    expect(poured(panel(0.5))).toBeGreaterThan(poured(panel(0.05)));
  });
});

test("[G11] a worksheet with pump, wire, battery and panel gives the same bits in any order of its cards", () => {
  for (const name of ["pump-battery-panel", "panel-alone-metric"]) {
    const file = new URL(`../../templates/${name}.json`, import.meta.url);
    const read = readWorksheetText(readFileSync(file, "utf8"));
    if (!read.ok) throw new Error(name);
    const kinds = new Set(read.worksheet.cards.map(({ kind }) => kind));
    for (const kind of ["pump", "wire", "panel"]) expect(kinds).toContain(kind);
    const turned = { ...read.worksheet, cards: [...read.worksheet.cards].reverse() };
    const [one, two] = [workOut(read.worksheet, CARD_KINDS), workOut(turned, CARD_KINDS)];
    for (const id of one.results.ids) expect(two.results.get(id), id).toEqual(one.results.get(id));
  }
}, 60_000);
