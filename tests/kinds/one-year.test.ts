// A record of one year: no number is called that of the driest of one, and nothing whole is promised of others.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { makeRecord } from "../../src/rainfall/record-key.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { answers } from "../../src/telling/answers.ts";
import { allBeside } from "../../src/telling/beside.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { readWorksheetText } from "../document/read-text.ts";
import { sheetOf } from "./made-up-sheets.ts";

const DRIEST = [
  "weather.driest_year",
  "weather.driest_year_rain",
  "barn_roof.driest_year_catch",
  "season.driest_year_share_met",
  "season.driest_year_days_short",
] as const;
const RELIABILITY = ["reliability_years", "reliability_days", "reliability_volume"] as const;

/** The demo under rain of so many millimetres every third day. */
function under(mm: number, years: number) {
  const text = readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8");
  const read = readWorksheetText(text);
  if (!read.ok) throw new Error("the demo is broken");
  const first = dayNumber(2018, 1, 1);
  const rain = Float64Array.from({ length: dayNumber(2018 + years, 1, 1) - first }, (_, at) =>
    at % 3 === 0 ? mm / 1000 : 0,
  );
  const record = makeRecord({ title: "Ours", source: "our gauge", madeUp: false, firstDay: first, rain });
  const sheet = setGiven(read.worksheet, "weather", "record", { value: record.key, unit: "" });
  return workOut(sheet, CARD_KINDS, [record]);
}

const askedOf = (whole: ReturnType<typeof under>) => ({
  result: (id: string) => whole.results.get(id),
  cards: whole.worksheet.cards,
});

const saidOf = (whole: ReturnType<typeof under>): string =>
  [...answers(askedOf(whole)), ...allBeside(askedOf(whole))]
    .flatMap(({ pieces }) => pieces)
    .map((piece) => (typeof piece === "string" ? piece : `<${piece.quantity}>`))
    .join("");

test.each([40, 2])("one year of %s mm every third day has no driest", (mm) => {
  const whole = under(mm, 1);
  for (const id of DRIEST)
    expect(whole.results.get(id), id).toMatchObject({
      state: "none",
      reason: "one year is neither dry nor wet: there is none to set beside it",
    });
  expect(saidOf(whole)).not.toMatch(/driest/);
  expect(saidOf(whole)).toMatch(/In this one year/);
  expect(saidOf(whole)).toMatch(/^Beds .*in this one year\./);
});

test("one wet year in which nothing goes short is no reliability of 100 %", () => {
  const whole = under(40, 1);
  expect(whole.results.get("season.days_short")).toMatchObject({ state: "ready", value: 0 });
  for (const row of RELIABILITY)
    expect(whole.results.get(`season.${row}`), row).toMatchObject({
      state: "none",
      reason: expect.stringContaining("promises nothing of others"),
    });
  expect(JSON.stringify(whole.results.get("season.short_first_day"))).not.toMatch(/driest/);
});

test("of two years one is the drier, and is said", () => {
  const whole = under(2, 2);
  for (const id of DRIEST) expect(whole.results.get(id), id).toMatchObject({ state: "ready" });
  expect(saidOf(whole)).toMatch(/drier of only two years/);
});

test("a record that holds a whole season but no whole calendar year says so of its yearly drying (random place 25)", () => {
  const first = dayNumber(2018, 3, 1);
  const days = 400;
  const record = makeRecord({
    title: "Ours",
    source: "our gauge",
    madeUp: false,
    firstDay: first,
    rain: new Float64Array(days),
    highest: new Float64Array(days).fill(298.15),
    lowest: new Float64Array(days).fill(285.15),
  });
  const whole = workOut(
    setGiven(sheetOf({ tub: ["tank", {}], hens: ["draw", { from: "tub" }] }), "weather", "record", {
      value: record.key,
      unit: "",
    }),
    CARD_KINDS,
    [record],
  );
  expect(whole.results.get("season.seasons")).toMatchObject({ state: "ready", value: 1 });
  expect(whole.results.get("weather.peak_day_eto")).toMatchObject({ state: "ready" });
  expect(whole.results.get("weather.mean_yearly_eto")).toMatchObject({
    state: "none",
    reason: "the record has no whole calendar year",
  });
});
