// What a tank's and the season's cards say of stored water, from cards to numbers.

import { describe, expect, test } from "vitest";
import { recordFromNormals } from "../../src/rainfall/made-up.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { runSeason } from "../../src/season/run.ts";
import { answers } from "../../src/telling/answers.ts";
import { allBeside } from "../../src/telling/beside.ts";
import { parseIsoDate } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const UPRIGHT: Givens = { capacity: [100, "gal"], water_height: [40, "in"], outlet_height: [2, "in"] };
const PUMP: Givens = { bucket_volume: [5, "gal"], bucket_time: [60, "s"], lowest_water: [6, "in"] };
const BED: Givens = { length: [10, "ft"], width: [4, "ft"], watered_by: ["cans"] };

type Cards = Parameters<typeof sheetOf>[0];

function whole(cards: Cards): Whole {
  return workedOut(sheetOf(cards));
}

/** The answer of the season's run itself, behind the cards. */
function answerOf(sheet: Whole) {
  const key = String(valueAt(sheet, "weather.record_in_use"));
  const record = recordFromNormals(JSON.parse(key.slice("normals:".length)));
  const answer = runSeason(valueAt(sheet, "season.plan") as SeasonInput, record);
  if ("failed" in answer) throw new Error(answer.failed);
  return answer;
}

function valueAt(sheet: Whole, id: string): unknown {
  const result = sheet.results.get(id);
  if (result?.state !== "ready") throw new Error(`${id}: ${JSON.stringify(result)}`);
  return result.value;
}

describe("the water of a tank that can be reached", () => {
  const shared: Cards = {
    tub: ["tank", UPRIGHT],
    wand: ["delivery", { ...PUMP, from: "tub" }],
    cans: ["carry", { from: "tub" }],
    bed_one: ["bed", BED],
  };

  test("stands over the pump's lowest water also where cans share the tank, on the card as in the season", () => {
    // 40 in of water hold 100 gal; the pump leaves 6 in, more than the outlet's 2 in.
    const sheet = whole(shared);
    expect(numberAt(sheet, "tub.reachable")).toBeCloseTo(toSi(100 * (34 / 40), "gal"), 12);
    expect(numberAt(sheet, "tub.stranded")).toBeCloseTo(toSi(100 * (4 / 40), "gal"), 12);
    expect(answerOf(sheet).tanks[0]?.reachable).toBeCloseTo(numberAt(sheet, "tub.reachable"), 12);
    const byHand = whole({ ...shared, wand: ["delivery", { ...PUMP, from: "" }] });
    expect(numberAt(byHand, "tub.reachable")).toBeCloseTo(toSi(95, "gal"), 12);
  });

  test("is warned of only where an amount is lost that one would see", () => {
    const leaves = (inches: number) =>
      cautionIds(
        whole({ ...shared, wand: ["delivery", { ...PUMP, from: "tub", lowest_water: [inches, "in"] }] }),
      );
    expect(leaves(6)).toContain("tub: stranded_water");
    expect(leaves(2.0001)).not.toContain("tub: stranded_water");
  });
});

describe("the season's answers on storage", () => {
  const sheet = whole({
    barn: ["roof", { footprint: [200, "ft2"], drains_to: "tub" }],
    tub: ["tank", UPRIGHT],
    cans: ["carry", { from: "tub" }],
    bed_one: ["bed", BED],
  });

  test("full tanks last from the worst day of the record, which lies in the season", () => {
    const { totals } = answerOf(sheet);
    const date = String(valueAt(sheet, "season.worst_date"));
    expect(parseIsoDate(date)).toBe(totals.worstDate);
    expect(date.slice(5) >= "05-01" && date.slice(5) <= "09-30").toBe(true);
    expect(numberAt(sheet, "season.worst_date_lasts")).toBe(totals.worstDateLasts);
    expect(numberAt(sheet, "season.worst_date_lasts")).toBeGreaterThan(DAY);
  });

  test("reliability by volume, by day and by season are shares that fit the short days", () => {
    const { totals, shortDay } = answerOf(sheet);
    const days = numberAt(sheet, "season.reliability_days");
    // May 1 to September 30, as a worksheet begins.
    const seasonDays = 153;
    expect(days).toBeCloseTo(1 - numberAt(sheet, "season.days_short") / seasonDays, 12);
    expect(shortDay.some((short) => short === 1)).toBe(true);
    expect(numberAt(sheet, "season.reliability_years")).toBeLessThan(1);
    expect(numberAt(sheet, "season.reliability_years") * totals.seasons).toBeCloseTo(
      Math.round(numberAt(sheet, "season.reliability_years") * totals.seasons),
      9,
    );
    expect(numberAt(sheet, "season.reliability_volume")).toBeGreaterThan(0);
    expect(numberAt(sheet, "season.reliability_volume")).toBeLessThan(1);
  });

  test("storage that never fails is more than a tank that fails holds, and none where roofs bring too little", () => {
    expect(numberAt(sheet, "season.no_failure_storage")).toBeGreaterThan(numberAt(sheet, "tub.reachable"));
    const dry = whole({ tub: ["tank", UPRIGHT], cans: ["carry", { from: "tub" }], bed_one: ["bed", BED] });
    expect(dry.results.get("season.no_failure_storage")).toMatchObject({
      state: "none",
      reason: expect.stringContaining("no tank is big enough"),
    });
  });

  test("the working of how long full tanks last says that other draws are left aside, where there are any", () => {
    const lead = (of: Whole) => {
      const asked = { result: (id: string) => of.results.get(id), cards: of.worksheet.cards };
      const pieces = allBeside(asked).find(({ id }) => id === "storage")?.pieces ?? [];
      return pieces.filter((piece) => typeof piece === "string").join("…");
    };
    expect(lead(sheet)).not.toContain("not counting");
    const goats = whole({
      tub: ["tank", UPRIGHT],
      cans: ["carry", { from: "tub" }],
      bed_one: ["bed", BED],
      goats: ["draw", { from: "tub", volume: [5, "gal"], every: [1, "day"] }],
    });
    expect(lead(goats)).toContain("at the peak of the season, not counting goats.");
  });
});

test("the sentence on the longest watering tells of the battery behind that very pump, not of the first one", () => {
  const hose = (bilge: string, length: number): Givens => ({
    from: "tub",
    pump: bilge,
    hose_length: [length, "ft"],
  });
  const bed = (by: string, length: number): Givens => ({ ...BED, length: [length, "ft"], watered_by: [by] });
  const sheet = whole({
    tub: ["tank", UPRIGHT],
    cell_a: ["battery", {}],
    cell_b: ["battery", {}],
    bilge_a: ["pump", { powered_by: "cell_a" }],
    bilge_b: ["pump", { powered_by: "cell_b" }],
    hose_a: ["delivery", hose("bilge_a", 20)],
    hose_b: ["delivery", hose("bilge_b", 100)],
    bed_a: ["bed", bed("hose_a", 5)],
    bed_b: ["bed", bed("hose_b", 20)],
  });
  expect(numberAt(sheet, "hose_b.watering_time")).toBeGreaterThan(numberAt(sheet, "hose_a.watering_time"));
  const said = answers({ cards: sheet.worksheet.cards, result: (id) => sheet.results.get(id) });
  const pieces = JSON.stringify(said.find(({ id }) => id === "charge")?.pieces);
  expect(pieces).toContain("cell_b.waterings_per_charge");
  expect(pieces).not.toContain("cell_a.waterings_per_charge");
});
