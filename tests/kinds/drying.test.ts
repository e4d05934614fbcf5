// What drying is worked out from: the record, monthly warmth in its gaps, monthly figures, a pan.

import { describe, expect, test } from "vitest";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { cautionIds, type Givens, given, numberAt, sheetOf, type Whole } from "./made-up-sheets.ts";

const YEARS = 2 * 365;
const RAIN_ONLY: DailyRecord = {
  key: "rain_only",
  title: "rain only",
  source: "made up for this test",
  madeUp: false,
  firstDay: dayNumber(2021, 1, 1),
  rain: new Float64Array(YEARS),
  highest: null,
  lowest: null,
  wind: null,
  vapour: null,
  sun: null,
};

const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value);

/** Rain alone on record, and these givens of the weather card. */
function with_(givens: Givens, record: DailyRecord = RAIN_ONLY): Whole {
  const sheet = sheetOf({});
  const entries = Object.fromEntries(Object.entries(givens).map(([name, value]) => [name, given(value)]));
  const cards = sheet.cards.map((card) =>
    card.id === "weather"
      ? { ...card, givens: { ...card.givens, record: { value: record.key, unit: "" }, ...entries } }
      : card,
  );
  return workOut({ ...sheet, cards }, CARD_KINDS, [record]);
}

const method = (whole: Whole): unknown => {
  const result = whole.results.get("weather.eto_method");
  return result?.state === "ready" ? result.value : null;
};

describe("drying", () => {
  test("of a pan is its coefficient times what the pan loses: FAO-56 Eq. 55", () => {
    const pan = with_({ eto_from: "pan", pan_readings: [twelve(8), "mm/day"] });
    // Grass for 10 m, hardly any wind, middling damp: 0.75.
    expect(numberAt(pan, "weather.pan_coefficient")).toBe(0.75);
    expect(numberAt(pan, "weather.mean_yearly_eto") / 365).toBeCloseTo(0.006, 12);
    expect(method(pan)).toBe("your pan");
  });

  test.each([
    ["green_1", "dry", 0.55],
    ["green_100", "middling", 0.8],
    ["green_1000", "damp", 0.85],
    ["green_10_strong", "damp", 0.65],
    ["dry_1", "dry", 0.7],
    ["dry_100", "damp", 0.75],
    ["dry_1000", "dry", 0.5],
    ["dry_10_wind", "middling", 0.65],
    ["inside", "middling", 0.79],
  ])("a pan at %s in %s air has the coefficient of FAO-56 ch. 4, p. 78-81: %s", (place, damp, expected) => {
    const pan = with_({
      eto_from: "pan",
      pan_place: place,
      pan_damp: damp,
      pan_readings: [twelve(8), "mm/day"],
    });
    expect(numberAt(pan, "weather.pan_coefficient")).toBe(expected);
  });

  test("the user's own pan coefficient, local factor and monthly figures stand for the usual ones", () => {
    const pan = with_({
      eto_from: "pan",
      pan_readings: [twelve(10), "mm/day"],
      pan_coefficient: [0.6, "1"],
      eto_factor: [0.9, "1"],
    });
    expect(numberAt(pan, "weather.mean_yearly_eto") / 365).toBeCloseTo(0.0054, 12);
    const monthly = with_({ eto_from: "monthly", monthly_eto: [twelve(0.2), "in/day"] });
    expect(numberAt(monthly, "weather.mean_yearly_eto") / 365).toBeCloseTo(0.2 * 0.0254, 12);
    expect(method(monthly)).toBe("your monthly figures");
  });

  test("without temperatures on record it is told by the monthly warm and cold, said and warned of", () => {
    const usual = with_({});
    expect(method(usual)).toBe("the monthly warm and cold figures below");
    expect(numberAt(usual, "weather.days_from_normals")).toBe(YEARS);
    expect(cautionIds(usual)).toContain("weather: warmth_of_normals");
    expect(cautionIds(with_({ eto_from: "monthly", monthly_eto: [twelve(4), "mm/day"] }))).not.toContain(
      "weather: warmth_of_normals",
    );
  });

  test("what is missing for the chosen way is said", () => {
    expect(with_({ eto_from: "pan" }).results.get("weather.daily_eto")).toMatchObject({
      problem: { text: "Give the twelve monthly readings of the pan first." },
    });
  });
});
