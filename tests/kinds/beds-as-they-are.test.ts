// What a bed's card says at its edges: shares over the whole, rows that are not shown, no plants, reasons, cans, pots.

import { describe, expect, test } from "vitest";
import type { Content } from "../../src/document/worksheet.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const TANK = ["tank", { shape: "other", capacity: [40_000, "gal"], water_height: [4, "ft"] }] as const;

const bedOf = (givens: Givens, cans: Givens = {}, weather: Givens = {}): Whole => {
  const sheet = sheetOf({
    bed: ["bed", { watered_by: ["cans"], ...givens }],
    cans: ["carry", { from: "tank", ...cans }],
    tank: TANK,
  });
  const entries = Object.entries(weather).map(([name, value]) => {
    const [number, unit] = value as unknown as readonly [number, string];
    return [name, { value: number, unit }] as const;
  });
  return workedOut({
    ...sheet,
    cards: sheet.cards.map((card) =>
      card.kind === "weather"
        ? { ...card, givens: { ...card.givens, ...Object.fromEntries(entries) } }
        : card,
    ),
  });
};

const contents = (...list: readonly Content[]): readonly [never, string] => [list as never, ""];
const crop = (word: string, share: number, planted = "05-15", until?: string): Content => ({
  crop: word,
  planted,
  share,
  ...(until === undefined ? {} : { until }),
});

const reasonAt = (whole: Whole, id: string): string => {
  const result = whole.results.get(id);
  if (result?.state === "failed") return result.problem.text;
  return result?.state === "none" ? result.reason : JSON.stringify(result);
};

const wordAt = (whole: Whole, id: string): string => {
  const result = whole.results.get(id);
  return result?.state === "ready" ? String(result.value) : JSON.stringify(result);
};

const cautionText = (whole: Whole, id: string): string | undefined =>
  cautionsOf(
    whole.graph,
    whole.worksheet,
    whole.results,
    { units: "us", locale: "en-US", currency: "$" },
    KIND_WORDS,
  ).find((caution) => caution.id === id)?.text;

test("crops that stand at once on more than the bed are flagged; those that follow one another are not", () => {
  const flagged = (...list: readonly Content[]) =>
    cautionIds(bedOf({ contents: contents(...list) })).includes("bed: crowded");
  expect(flagged(crop("tomato", 0.7), crop("cucumber", 0.5, "06-01"))).toBe(true);
  expect(flagged(crop("tomato", 0.5), crop("cucumber", 0.5, "06-01"))).toBe(false);
  expect(flagged(crop("lettuce", 1, "03-20", "05-14"), crop("tomato", 1, "05-15"))).toBe(false);
  // Over the new year, and three thirds that do not quite add up to one.
  expect(flagged(crop("lettuce", 0.6, "11-15", "02-10"), crop("spinach", 0.6, "01-10", "03-01"))).toBe(true);
  expect(flagged(...["tomato", "cucumber", "carrot"].map((word) => crop(word, 0.3334)))).toBe(false);
});

test("a bad value in a row that is not shown harms neither the bed nor the season", () => {
  const usual = numberAt(bedOf({}), "season.need");
  const hidden: Givens = {
    fixed_volume: [-5, "gal"],
    fixed_every: [0, "day"],
    let_go_dry_days: [0, "1"],
    pot_count: [0, "1"],
    pot_volume: [5, "ft"],
    wetted_every: [1, "gal"],
    cover_light: [900, "%"],
    spot_area: [-1, "ft2"],
  };
  const whole = bedOf(hidden);
  expect(numberAt(whole, "bed.share_met")).toBe(numberAt(bedOf({}), "bed.share_met"));
  expect(numberAt(whole, "season.need")).toBe(usual);
  const pots = { grown_in: "pots", soil: "potting_mix" };
  expect(numberAt(bedOf({ ...pots, length: [-1, "ft"] }), "season.need")).toBe(
    numberAt(bedOf(pots), "season.need"),
  );
  // Of rows behind rows: under open sky nobody asks by what a cover dries.
  expect(numberAt(bedOf({ cover_by: "light", cover_light: [900, "%"] }), "season.need")).toBe(usual);
  // Where the row is shown, it is said.
  expect(reasonAt(bedOf({ ...hidden, rule: "fixed" }), "bed.peak_day_need")).toContain("Every so many days");
});

test("a plant count of 0 is said on its own bed and fails no other", () => {
  const whole = workedOut(
    sheetOf({
      bed: ["bed", { watered_by: ["cans"] }],
      none: ["bed", { watered_by: ["cans"], plant_count: [0, "1"], spot_area: [1, "ft2"] }],
      cans: ["carry", { from: "tank" }],
      tank: TANK,
    }),
  );
  expect(reasonAt(whole, "none.peak_day_need")).toContain("Plants watered one by one");
  expect(numberAt(whole, "bed.share_met")).toBeCloseTo(numberAt(bedOf({}), "bed.share_met"), 12);
  expect(numberAt(whole, "season.need")).toBeCloseTo(numberAt(bedOf({}), "season.need"), 12);
});

test("a need of nothing has its true reason", () => {
  const still = bedOf({}, {}, { eto_factor: [0, "1"] });
  expect(reasonAt(still, "bed.peak_day_need")).toMatch(/drying/);
  const shade = bedOf({ cover_factor: [0, "1"] });
  expect(reasonAt(shade, "bed.peak_day_need")).toMatch(/drying/);
  const winter = bedOf({ contents: contents(crop("lettuce", 1, "11-15", "02-10")) });
  expect(reasonAt(winter, "bed.peak_day_need")).toBe("nothing grows in it within the season");
  expect(cautionText(still, "no_need")).toContain("the drying of the record in use comes to nothing");
  expect(cautionText(winter, "no_need")).toContain("nothing grows in it within the season");
  // Nothing that grows can be short: neither that it was nor that it was not is said of any year.
  for (const row of ["driest_year_days_short", "driest_year_share_met", "binding"])
    expect(reasonAt(winter, `season.${row}`), row).toBe("no crop stands within the season");
});

test("a watering is told in the cans of the card that waters it, else in the bed's own", () => {
  const cans = (whole: Whole, litres: number) =>
    Math.ceil(numberAt(whole, "bed.watering_volume") / (litres / 1000));
  const carried = bedOf({ can_volume: [3, "L"] }, { can_volume: [9, "L"] });
  expect(numberAt(carried, "bed.cans_per_watering")).toBe(cans(carried, 9));
  const pumped = bedOf({ can_volume: [3, "L"], watered_by: [] });
  expect(numberAt(pumped, "bed.cans_per_watering")).toBe(cans(pumped, 3));
});

test("the bed asks what a can holds only where no cans of the worksheet water it", () => {
  const asks = CARD_KINDS["bed"]?.rows.find(({ name }) => name === "can_volume")?.when;
  expect(asks).toEqual({ row: "asks_can", is: ["1"] });
  expect(numberAt(bedOf({}), "bed.asks_can")).toBe(0);
  expect(numberAt(bedOf({ watered_by: [] }), "bed.asks_can")).toBe(1);
  // What stands there unseen harms nobody.
  const bad = bedOf({ can_volume: [-3, "L"] }, { can_volume: [9, "L"] });
  expect(numberAt(bad, "bed.cans_per_watering")).toBe(
    Math.ceil(numberAt(bad, "bed.watering_volume") / 0.009),
  );
});

describe("a bed whose soil holds less than a peak day's need", () => {
  const pots = (gallons: number, soil: string) =>
    bedOf(
      { grown_in: "pots", pot_volume: [gallons, "gal"], soil },
      { can_volume: [20, "L"], distance: [1, "m"] },
    );
  const said = (whole: Whole) => wordAt(whole, "bed.needs_today");

  test("is told: every day, and it is not enough; never every so many seconds", () => {
    const whole = pots(0.5, "sand");
    expect(numberAt(whole, "bed.watering_interval")).toBe(86_400);
    expect(numberAt(whole, "bed.watering_volume")).toBeLessThan(numberAt(whole, "bed.peak_day_need"));
    expect(numberAt(whole, "bed.days_short")).toBeGreaterThan(0);
    expect(said(whole)).toContain(
      "{watering_volume} every day, and it is not enough: its soil holds no more",
    );
  });

  test("is not told that it is not enough where the season, refilling it each day, is never short", () => {
    const whole = pots(2, "potting_mix");
    expect(numberAt(whole, "bed.watering_volume")).toBeLessThan(numberAt(whole, "bed.peak_day_need"));
    expect(numberAt(whole, "bed.days_short")).toBe(0);
    expect(said(whole)).toContain("never short");
    expect(said(whole)).not.toContain("not enough");
    expect(said(whole)).toContain("every day: more than the {watering_volume} within easy reach");
  });
});

test("nothing is said of a usual amount that nobody gave", () => {
  const whole = bedOf({});
  for (const row of ["usual_lasts", "usual_compared"]) expect(reasonAt(whole, `bed.${row}`)).toBe("not said");
  const said = bedOf({ usual_volume: [20, "gal"] });
  const days = toSi(20, "gal") / numberAt(said, "bed.peak_day_need");
  expect(numberAt(said, "bed.usual_lasts")).toBeCloseTo(toSi(days, "day"), 6);
});

test("pots of field soil ask for potting mix", () => {
  const asks = (givens: Givens) => cautionIds(bedOf(givens)).includes("bed: field_soil_in_pots");
  expect(asks({ grown_in: "pots" })).toBe(true);
  expect(asks({ grown_in: "pots", soil: "potting_mix" })).toBe(false);
  expect(asks({})).toBe(false);
});
