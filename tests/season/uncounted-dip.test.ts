// A dip of more than its tank holds is not counted until its grower says that it was read so.

import { expect, test } from "vitest";
import { withSeen } from "../../src/document/notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { valueIn } from "../../src/graph/readers.ts";
import { sheetOf, workedOut } from "../kinds/made-up-sheets.ts";

const DAY = "2026-07-20";
const sheet = sheetOf({
  bed: ["bed", { watered_by: ["cans"] }],
  cans: ["carry", { from: "tank" }],
  tank: ["tank", { shape: "other", capacity: [400, "gal"], water_height: [4, "ft"] }],
});
const dip = (id: string, inches: number, more: Partial<Note> = {}): Note => ({
  id,
  day: DAY,
  minute: 400,
  what: "dipped",
  where: "tank",
  value: inches,
  unit: "in",
  ...more,
});
const soak: Note = { id: "0", day: "2026-07-15", what: "soaked", where: "bed" };
const known = (...notes: readonly Note[]) => {
  const { results } = workedOut(withSeen({ ...sheet, notes: [soak, ...notes] }, DAY));
  return valueIn(results.get("season.week_given")) as Record<string, unknown> | null;
};

test("unanswered, what is known of today is as without it, alone or after an earlier dip", () => {
  expect(known(dip("b", 60))).toEqual(known());
  const earlier = dip("a", 20, { day: "2026-07-18" });
  expect(known(earlier, dip("b", 60))).toMatchObject({ happened: known(earlier)?.["happened"] });
});

test("said to be read so it counts, and so does one up to the brim", () => {
  for (const told of [dip("b", 60, { text: "as read" }), dip("b", 48)]) {
    const given = known(told);
    expect(given?.["happened"]).toHaveLength(2);
    expect(given?.["levels"]).toHaveProperty("tank");
  }
});
