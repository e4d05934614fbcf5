// A worksheet on which nothing but draws takes water: it says its longest run short, and nothing of it denies the record.

import { expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { answers } from "../../src/telling/answers.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { MM, recordOf } from "../season/made.ts";
import { numberAt, sheetOf } from "./made-up-sheets.ts";

/** Four whole years of 1 mm a day, but for 39 dry days in the second. */
const record = (() => {
  const [first, end] = [dayNumber(2018, 1, 1), dayNumber(2022, 1, 1)];
  const rain = new Float64Array(end - first).fill(1 * MM);
  const drought = dayNumber(2019, 7, 1) - first;
  return recordOf(rain.fill(0, drought, drought + 39), first);
})();

const place = sheetOf({
  barn: ["roof", { footprint: [90, "m2"], drains_to: "barrel", first_flush: [0, "mm"] }],
  barrel: [
    "tank",
    {
      shape: "other",
      capacity: [300, "L"],
      water_height: [1, "m"],
      outlet_height: [0, "m"],
      start_share: [100, "%"],
    },
  ],
  hens: ["draw", { from: "barrel", volume: [30, "L"], every: [1, "day"] }],
});
const onRecord = setGiven(place, "weather", "record", { value: record.key, unit: "" });
const whole = workOut(
  setGiven(onRecord, "site", "storage_rule", { value: "use_first", unit: "" }),
  CARD_KINDS,
  [record],
);

const sentences = answers({ result: (id) => whole.results.get(id), cards: whole.worksheet.cards }).map(
  ({ pieces }) => pieces.map((piece) => (typeof piece === "string" ? piece : `<${piece.quantity}>`)).join(""),
);

test("its longest run short is 29 days: 10 days of water, 39 without rain", () => {
  // A day's rain brings more than the 30 L that are drawn, and they are drawn first: the tank is full when the drought begins.
  expect(numberAt(whole, "season.longest_short_run")).toBe(29);
  expect(sentences.join("\n")).toContain("ran short for up to <season.longest_short_run>");
});

test("no text says that a record of four whole years has none", () => {
  expect(numberAt(whole, "weather.whole_years")).toBe(4);
  const reasons = whole.results.ids.flatMap((id) => {
    const result = whole.results.get(id);
    if (result?.state === "none") return [`${id}: ${result.reason}`];
    return result?.state === "failed" ? [`${id}: ${result.problem.text}`] : [];
  });
  const denying = [...reasons, ...sentences].filter((text) =>
    /no whole|no (rain )?record|without a record|not here/i.test(text),
  );
  expect(denying).toEqual([]);
});
