// A bed that is held back today: nothing today, and tomorrow what it asks for; the others as ever.

import { expect, test } from "vitest";
import { withSeen } from "../../src/document/notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { valueIn } from "../../src/graph/readers.ts";
import { fromToday } from "../../src/season/from-today.ts";
import type { WeekGiven } from "../../src/season/week-plan.ts";
import { weekPlan } from "../../src/season/week-plan.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { sheetOf, workedOut } from "../kinds/made-up-sheets.ts";
import { bed, carry, crop, inputOf, recordOf, steadyEto, tank } from "./made.ts";

const TODAY = dayNumber(2003, 7, 1);

function week(heldBack: readonly string[]) {
  const standing = crop({ planted: "05-01", stages: [0, 0, 150, 0], kcMiddle: 1, rootStart: 0.3 });
  const plan = inputOf({
    start: "05-01",
    end: "09-30",
    eto: steadyEto(0.005),
    tanks: [tank(4, { startShare: 1 })],
    carries: [carry()],
    beds: ["first", "second"].map((id, at) =>
      bed({ id, priority: at + 1, covered: true, crops: [standing] }),
    ),
  });
  const answer = weekPlan(plan, recordOf(new Float64Array(900), dayNumber(2001, 1, 1)), {
    today: TODAY,
    days: 7,
    drying: "usual",
    levels: { tank: 1 },
    charges: {},
    lastSoaked: { first: TODAY - 20, second: TODAY - 20 },
    heldBack,
  });
  if ("failed" in answer) throw new Error(answer.failed);
  const given = (id: string) => answer.beds.find((one) => one.id === id)?.days.map((day) => day.given) ?? [];
  return { first: given("first"), second: given("second"), answer };
}

test("it gets nothing today and is served tomorrow, and a bed beside it gets what it would have got", () => {
  const [before, held] = [week([]), week(["second"])];
  expect(before.second[0]).toBeGreaterThan(0);
  expect(held.second[0]).toBe(0);
  expect(held.second[1]).toBeGreaterThanOrEqual(before.second[0] ?? 0);
  expect(held.first).toEqual(before.first);
  expect(held.answer.refused.filter(({ day }) => day === TODAY)).toMatchObject([
    { bed: "second", why: "by_grower" },
  ]);
});

test("how long it lasts is run with it held back too, and says whom", () => {
  const standing = crop({ planted: "05-01", stages: [0, 0, 150, 0], kcMiddle: 1, rootStart: 0.3 });
  const plan = inputOf({
    start: "05-01",
    end: "09-30",
    eto: steadyEto(0.005),
    tanks: [tank(4, { startShare: 1 })],
    carries: [carry()],
    beds: [bed({ id: "first", covered: true, crops: [standing] })],
  });
  const record = recordOf(new Float64Array(900), dayNumber(2001, 1, 1));
  const lasts = (heldBack: readonly string[]) => {
    const from = fromToday(plan, record, {
      today: TODAY,
      drying: "usual",
      levels: { tank: 1 },
      charges: {},
      lastSoaked: { first: TODAY - 20 },
      heldBack,
    });
    if ("failed" in from || from.kind !== "usual_and_dry") throw new Error("no dry run");
    return from;
  };
  const [as, held] = [lasts([]), lasts(["first", "nobody"])];
  // It asks today; held back, its water stands in the tank this evening.
  expect(held.dry.water[0] as number).toBeCloseTo(as.now, 9);
  expect(as.dry.water[0] as number).toBeLessThan(as.now - 0.1);
  expect([as.heldBack, held.heldBack]).toEqual([[], ["first"]]);
});

test("a note says so for its own day alone, and undone it leaves no trace", () => {
  const sheet = sheetOf({
    bed: ["bed", { watered_by: ["cans"] }],
    cans: ["carry", { from: "tank" }],
    tank: ["tank", { shape: "other", capacity: [400, "gal"], water_height: [4, "ft"] }],
  });
  const held: Note = { id: "1", day: "2026-07-20", what: "held", where: "bed" };
  const undid: Note = { id: "2", day: "2026-07-20", what: "undid", where: "bed", undoes: "1" };
  const dip: Note = { id: "3", day: "2026-07-20", what: "dipped", where: "tank", value: 20, unit: "in" };
  const given = (notes: readonly Note[], day: string) =>
    valueIn(
      workedOut(withSeen({ ...sheet, notes }, day)).results.get("season.week_given"),
    ) as WeekGiven | null;
  expect(given([dip, held], "2026-07-20")?.heldBack).toEqual(["bed"]);
  expect(given([dip, held], "2026-07-21")?.heldBack).toEqual([]);
  expect(given([dip, held, undid], "2026-07-20")).toEqual(given([dip], "2026-07-20"));
});
