// A bed watered by a pump on a panel alone: what is said to be short is what in fact cures it. A bigger panel does where the
// sun is too weak, another hour where the day is over; the season run again with either says which.

import { describe, expect, test } from "vitest";
import { answers } from "../../src/telling/answers.ts";
import { textOf } from "../../src/telling/asked.ts";
import { allBeside } from "../../src/telling/beside.ts";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const CISTERN: Givens = {
  capacity: [3000, "gal"],
  water_height: [5, "ft"],
  ground_height: [0, "ft"],
  start_share: [100, "%"],
};

/** Water for whatever the bed asks for and nobody's time to spare, so that only the sun can be lacking. */
function watered(hour: number, watts: number, more: Parameters<typeof sheetOf>[0] = {}): Whole {
  const sheet = sheetOf({
    barn: ["roof", { footprint: [2000, "ft2"], drains_to: "cistern" }],
    cistern: ["tank", CISTERN],
    bilge: ["pump", { powered_by: "sun" }],
    sun: ["panel", { rated_power: [watts, "W"] }],
    hose: ["delivery", { from: "cistern", pump: "bilge" }],
    plot: ["bed", { length: [16, "ft"], width: [4, "ft"], cover: "covered", watered_by: ["hose"] }],
    ...more,
  });
  const cards = sheet.cards.map((card) =>
    card.id === "site" ? { ...card, givens: { ...card.givens, water_at: { value: hour, unit: "h" } } } : card,
  );
  return workedOut({ ...sheet, cards });
}

const short = (whole: Whole): number => numberAt(whole, "season.days_short");

function said({ worksheet, results }: Whole): string {
  const asked = { result: (id: string) => results.get(id), cards: worksheet.cards };
  return [...answers(asked), ...allBeside(asked)].map((sentence) => textOf(sentence, (id) => id)).join("\n");
}

const EVENING = 19;
const NOON = 12;

describe("a panel alone", () => {
  test.each([2, 20, 200])("of %d W at 19:00 is short of daylight", (watts) => {
    const evening = watered(EVENING, watts);
    expect(short(evening)).toBeGreaterThan(50);
    // Ten times the panel changes nothing worth telling; it is not blamed.
    expect(short(watered(EVENING, 10 * watts))).toBeGreaterThan(0.9 * short(evening));
    const text = said(evening);
    expect(text).toContain("What is short most often is daylight");
    expect(text).not.toMatch(/too weak|panel is|battery|charge/i);
  });

  test("of 20 W and of 200 W is cured by another hour, and by a battery", () => {
    for (const watts of [20, 200])
      expect(short(watered(NOON, watts))).toBeLessThan(0.2 * short(watered(EVENING, watts)));
    const charged = watered(EVENING, 200, {
      bilge: ["pump", { powered_by: "cell" }],
      cell: ["battery", { charged: "in_place" }],
      sun: ["panel", { rated_power: [200, "W"], charges: "cell" }],
    });
    expect(short(charged)).toBeLessThan(0.2 * short(watered(EVENING, 200)));
  });

  test("of 2 W at noon is too weak, and a bigger one cures it where another hour does not", () => {
    const weak = watered(NOON, 2);
    expect(short(weak)).toBeGreaterThan(50);
    expect(short(watered(NOON, 200))).toBeLessThan(0.2 * short(weak));
    expect(short(watered(9, 2))).toBeGreaterThan(0.9 * short(weak));
    const text = said(weak);
    expect(text).toContain("What is short most often is sun on the panel: it is too weak");
    expect(text).not.toMatch(/daylight|battery|charge/i);
  });
});

test("beside a flat battery it is not the battery that is told to cost the panel's days too", () => {
  const both = watered(EVENING, 200, {
    other: ["pump", { powered_by: "cell" }],
    cell: ["battery", { charged: "none", rated_capacity: [1, "Ah"] }],
    long_hose: ["delivery", { from: "cistern", pump: "other" }],
    patch: ["bed", { length: [16, "ft"], width: [4, "ft"], cover: "covered", watered_by: ["long_hose"] }],
  });
  expect(both.results.get("season.binding_driver")).toMatchObject({ value: "either" });
});
