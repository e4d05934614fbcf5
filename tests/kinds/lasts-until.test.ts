// Until when today's water lasts: not today for a tub that a full tank stands above.

import { expect, test } from "vitest";
import { valueIn } from "../../src/graph/readers.ts";
import { isoDate, parseIsoDate } from "../../src/units/calendar.ts";
import { toSi } from "../../src/units/unit.ts";
import { type Givens, given, numberAt, sheetOf, workedOut } from "./made-up-sheets.ts";

const TODAY = "2026-07-01";

function lasting(upper: Givens, tub: Givens) {
  const sheet = sheetOf({
    upper: ["tank", { capacity: [400, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"], ...upper }],
    tub: ["tank", { capacity: [50, "gal"], water_height: [24, "in"], outlet_height: [0, "in"], ...tub }],
    feed: ["line", { from: "upper", to: "tub" }],
    cans: ["carry", { from: "tub" }],
    plot: ["bed", { watered_by: ["cans"] }],
  });
  const cards = sheet.cards.map((card) =>
    card.id === "site" ? { ...card, givens: { ...card.givens, today: given(TODAY) } } : card,
  );
  return workedOut({ ...sheet, cards });
}

const until = (days: number): string => isoDate((parseIsoDate(TODAY) ?? 0) + Math.floor(days));

test("a tub that is used up lasts as long as what waits above it", () => {
  const whole = lasting({ level_today: [2, "ft"] }, { level_today: [0, "in"] });
  // Half of 400 gal less what stands under the outlet, 2 in of 4 ft.
  const waits = toSi(200 - (400 * 2) / 48, "gal");
  const days = waits / numberAt(whole, "upper.peak_day_draw");
  expect(days).toBeGreaterThan(2);
  expect(whole.results.get("tub.lasts_until")).toMatchObject({ value: until(days) });
  expect(whole.results.get("upper.lasts_until")).toMatchObject({ value: until(days) });
});

test("its own water comes on top, and what the line leaves behind does not count", () => {
  const tub: Givens = { level_today: [12, "in"], ground_height: [3.5, "ft"] };
  const whole = lasting({ level_today: [3, "ft"] }, tub);
  // The float shuts at 5.5 ft, the upper water stands at 7 ft: 1.5 ft of it run down, and half the tub is full.
  const waits = toSi((400 * 1.5) / 4, "gal") / numberAt(whole, "upper.peak_day_draw");
  const own = toSi(25, "gal") / numberAt(whole, "tub.peak_day_draw");
  expect(whole.results.get("tub.lasts_until")).toMatchObject({ value: until(waits + own) });
});

test("with nothing above it is used up today; with a tank above that nobody dipped it cannot be said", () => {
  const dry = lasting({ level_today: [0, "in"] }, { level_today: [0, "in"] });
  expect(dry.results.get("tub.lasts_until")).toMatchObject({ value: TODAY });
  const unknown = lasting({}, { level_today: [0, "in"] });
  expect(unknown.results.get("tub.lasts_until")).toMatchObject({
    state: "none",
    reason: "upper, which fills it, is not dipped",
  });
});

test("counts from the day of the dip, of several the first; used up by now it says to dip again", () => {
  const [upper, tub]: [Givens, Givens] = [{ level_today: [2, "ft"] }, { level_today: [0, "in"] }];
  const waits = toSi(200 - (400 * 2) / 48, "gal");
  const dippedOn = (day: string) => lasting({ ...upper, dipped_on: day }, tub);
  const early = dippedOn("2026-06-29");
  const days = waits / numberAt(early, "upper.peak_day_draw");
  for (const id of ["upper", "tub"])
    expect(early.results.get(`${id}.lasts_until`)).toMatchObject({ value: until(days - 2) });
  expect(dippedOn("2026-05-01").results.get("tub.lasts_until")).toMatchObject({
    state: "none",
    reason: "what was dipped on 2026-05-01 would be used up by now: dip it again",
  });
});

test("the card says what is in it by now, as at the bed, and on which day that was dipped", () => {
  const dippedOn = (day: string) =>
    lasting({ level_today: [2, "ft"], dipped_on: day, leak: [3, "gal/day"] }, { level_today: [0, "in"] });
  const [today, before] = [dippedOn(TODAY), dippedOn("2026-06-25")];
  const span = (whole: typeof today) =>
    valueIn(whole.results.get("season.week_span")) as { readonly now: Readonly<Record<string, number>> };
  for (const whole of [today, before])
    expect(numberAt(whole, "upper.water_now")).toBe(span(whole).now["upper"]);
  expect(numberAt(today, "upper.water_now")).toBeCloseTo(toSi(200, "gal"), 9);
  // Six days of a leak of 3 gal and of what the plot and the tub took: at least the leak, and no rain runs in.
  expect(numberAt(before, "upper.water_now")).toBeLessThan(toSi(200 - 6 * 3, "gal") + 1e-9);
  expect([today, before].map((whole) => valueIn(whole.results.get("upper.dip_day")))).toEqual([
    TODAY,
    "2026-06-25",
  ]);
  const undipped = lasting({}, { level_today: [0, "in"] });
  expect(undipped.results.get("upper.water_now")).toMatchObject({
    state: "none",
    reason: "not dipped lately",
  });
  expect(undipped.results.get("upper.dip_day")).toMatchObject({ state: "none" });
});
