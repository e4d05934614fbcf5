// The season card names the bed that goes short first, by its title; the working of the short days says it too.

import { expect, test } from "vitest";
import { allBeside } from "../../src/telling/beside.ts";
import { sheetOf, workedOut } from "./made-up-sheets.ts";

function placeWith(gallons: number) {
  return workedOut(
    sheetOf({
      drum: ["tank", { capacity: [gallons, "gal"], water_height: [33, "in"], start_share: [100, "%"] }],
      shed: ["roof", { drains_to: "drum" }],
      cans: ["carry", { from: "drum" }],
      first_bed: ["bed", { watered_by: ["cans"], priority: [1, "1"] }],
      last_bed: ["bed", { watered_by: ["cans"], priority: [2, "1"] }],
    }),
  );
}

const textOf = (whole: ReturnType<typeof placeWith>): string =>
  allBeside({ result: (id) => whole.results.get(id), cards: whole.worksheet.cards })
    .flatMap(({ pieces }) => pieces)
    .map((piece) => (typeof piece === "string" ? piece : `<${piece.quantity}>`))
    .join("");

test("names the bed that is served last from a drum too small for both, and says so in the working of the short days", () => {
  const whole = placeWith(300);
  expect(whole.results.get("season.short_first")).toMatchObject({ state: "ready", value: "last_bed" });
  expect(whole.results.get("season.short_first_day")).toMatchObject({
    state: "ready",
    value: expect.stringMatching(/^\d{4}-\d{2}-\d{2}$/),
  });
  expect(textOf(whole)).toContain(
    "The first to go short in the driest year is <season.short_first>, from <season.short_first_day>.",
  );
});

test("says that none does where all have enough, and leaves the sentence out", () => {
  const whole = placeWith(900_000);
  expect(whole.results.get("season.short_first")).toMatchObject({
    state: "none",
    reason: "no bed went short in the driest year",
  });
  expect(textOf(whole)).not.toContain("first to go short");
});
