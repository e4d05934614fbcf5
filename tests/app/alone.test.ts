// What a number that is not sure makes of an answer by itself: read off its curve and its two ends, and no more than that.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { aloneSaid } from "../../src/app/alone.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, baseOf } from "../../src/studies/ask.ts";

const point = (place: number, answer: number | null) => ({
  place,
  text: "",
  answer,
  said: answer === null ? "no bed is watered" : `${answer} days`,
});

test("is from the least to the greatest of its ends and all that was tried between", () => {
  const places = fc.double({ min: 0, max: 1, noNaN: true });
  const points = fc.array(
    fc.tuple(places, fc.integer({ min: 0, max: 99 })).map(([place, answer]) => point(place, answer)),
    { maxLength: 25 },
  );
  fc.assert(
    fc.property(points, places, places, fc.integer({ min: 0, max: 99 }), (tried, one, other, answer) => {
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      const ends = [point(low, answer), point(high, answer + 1)];
      const said = (aloneSaid(tried, ends).match(/\d+/g) ?? []).map(Number);
      const inside = tried.filter(({ place }) => place >= low && place <= high).map((of) => of.answer ?? 0);
      expect(said).toEqual([Math.min(answer, ...inside), Math.max(answer + 1, ...inside)]);
    }),
  );
});

test("is not said where some of it has no answer for the whole place", () => {
  expect(aloneSaid([point(0.5, 3)], [point(0.4, 1), point(0.6, 9)])).toBe("1 to 9 days");
  expect(aloneSaid([point(0.5, null)], [point(0.4, 1), point(0.6, 9)])).toBe("");
  expect(aloneSaid([], [point(0.4, 1), { ...point(0.6, 0), without: true as const }])).toBe("");
  expect(aloneSaid([], [])).toBe("");
});

test("between 225 and 300 gal a tote makes the worst season what its curve says at both", () => {
  const file = readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8");
  const read = worksheetFromFileText(file, recordKey);
  if (!read.ok) throw new Error("The template cannot be read.");
  const base = baseOf(read.worksheet, CARD_KINDS);
  const SHORT = "season.worst_season_days_short";
  const at = (value: number) => {
    const change = {
      card: "totes",
      part: "givens",
      row: "capacity",
      entry: { value, unit: "gal" },
    } as const;
    return { ...point(value / 1000, numberIn(ask(base, [change], [SHORT])[SHORT])), text: `${value} gal` };
  };
  const said = aloneSaid([at(250), at(275)], [at(225), at(300)]);
  expect(said).toBe(`${at(300).answer} to ${at(225).answer} days`);
  // What stands on the sheet is one of these.
  const own = at(275).answer ?? 0;
  expect(own).toBeGreaterThanOrEqual(at(300).answer ?? 0);
  expect(own).toBeLessThanOrEqual(at(225).answer ?? 0);
});
