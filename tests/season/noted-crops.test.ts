// What was planted and pulled up by the notes, instead of on the card's days: today, the week, how long it lasts, the advice.

import { describe, expect, test } from "vitest";
import { withSeen } from "../../src/document/notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { valueIn } from "../../src/graph/readers.ts";
import type { WeekOfBed } from "../../src/kinds/season/week.ts";
import { cropDays, cropTraits } from "../../src/season/crop-days.ts";
import type { CropEvent } from "../../src/season/input.ts";
import { withCropNotes } from "../../src/season/noted-crops.ts";
import { adviceOf } from "../../src/studies/advice.ts";
import { fromTodayOf } from "../../src/studies/from-today.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { sheetOf, workedOut } from "../kinds/made-up-sheets.ts";
import { bed, crop, inputOf } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const STAGES = [20, 30, 30, 20] as const;

/** The first and last day on which a crop stands in two years, and its age on the first; planted on May 1 by its card. */
function stands(events: readonly CropEvent[]): readonly (readonly number[])[] {
  const part = bed({
    crops: [crop({ planted: "05-01", stages: STAGES, ...(events.length > 0 && { noted: events }) })],
  });
  const length = 730;
  const sky = {
    firstDay: YEAR,
    eto: new Float64Array(length).fill(0.004),
    arriving: new Float64Array(length),
  };
  const { ages } = cropDays(
    part,
    part.crops[0] as never,
    sky as never,
    cropTraits(part, sky as never)[0] as never,
  );
  const spells: number[][] = [];
  ages.forEach((age, day) => {
    const before = day > 0 ? (ages[day - 1] as number) : -1;
    if (age >= 0 && age !== before + 1 - (before < 0 ? 1 : 0) && before >= 0)
      spells.push([YEAR + day, YEAR + day, age]);
    else if (age >= 0 && before < 0) spells.push([YEAR + day, YEAR + day, age]);
    else if (age >= 0) (spells.at(-1) as number[])[1] = YEAR + day;
  });
  return spells;
}

const may = (day: number, year = 2021) => dayNumber(year, 5, day);
const NEXT = [may(1, 2022), may(1, 2022) + 99, 0];

describe("the days of a crop", () => {
  test("are the card's where nothing was noted", () => {
    expect(stands([])).toEqual([[may(1), may(1) + 99, 0], NEXT]);
  });

  test("begin on the day on which it was planted, later or sooner than the card says, that year alone", () => {
    for (const date of [may(1) - 30, may(1) + 25])
      expect(stands([{ what: "planted", date }])).toEqual([[date, date + 99, 0], NEXT]);
  });

  test("end before the day on which it was pulled up, and what is planted after that stands", () => {
    const pulled = { what: "pulled", date: may(20) } as const;
    expect(stands([pulled])).toEqual([[may(1), may(19), 0], NEXT]);
    expect(stands([pulled, { what: "planted", date: may(28) }])).toEqual([
      [may(1), may(19), 0],
      [may(28), may(28) + 99, 0],
      NEXT,
    ]);
    // The same day: pulled, then planted anew.
    expect(stands([pulled, { what: "planted", date: may(20) }])).toEqual([
      [may(1), may(19), 0],
      [may(20), may(20) + 99, 0],
      NEXT,
    ]);
  });

  test("of a bed's other crops follow what was pulled up, and not what was planted", () => {
    const input = inputOf({ beds: [bed({ crops: [crop(), crop()] }), bed({ id: "other" })] });
    const notes = [
      { bed: "bed", what: "planted", date: may(3) },
      { bed: "bed", what: "pulled", date: may(9) },
    ] as const;
    const [own, other] = withCropNotes(input, notes).beds;
    expect(own?.crops.map(({ noted = [] }) => noted.map(({ what }) => what))).toEqual([
      ["planted", "pulled"],
      ["pulled"],
    ]);
    expect(other).toEqual(input.beds[1]);
    expect(withCropNotes(input, [])).toBe(input);
  });
});

describe("a worksheet's notes of them", () => {
  const TODAY = "2026-07-20";
  const grown = (planted: string) => [{ crop: "tomato", planted, share: 1 }];
  const sheet = sheetOf({
    long: [
      "bed",
      { watered_by: ["cans"], contents: [grown("05-15"), ""], length: [20, "ft"], width: [4, "ft"] },
    ],
    tunnel: [
      "bed",
      { watered_by: ["cans"], contents: [grown("05-15"), ""], length: [20, "ft"], width: [4, "ft"] },
    ],
    cans: ["carry", { from: "tank" }],
    tank: ["tank", { shape: "other", capacity: [400, "gal"], water_height: [4, "ft"] }],
    roof: ["roof", { footprint: [300, "ft2"], drains_to: "tank" }],
  });
  const dip: Note = { id: "0", day: TODAY, what: "dipped", where: "tank", value: 30, unit: "in" };
  const soaks = ["long", "tunnel"].map(
    (where): Note => ({ id: where, day: "2026-07-08", what: "soaked", where }),
  );

  function asked(...notes: readonly Note[]) {
    const seen = withSeen({ ...sheet, notes: [dip, ...soaks, ...notes] }, TODAY);
    const whole = workedOut(seen);
    const answer = fromTodayOf(whole, []);
    if ("failed" in answer || answer.lasting.kind !== "usual_and_dry") throw new Error("no answer");
    const advice = adviceOf(whole, []);
    return {
      week: valueIn(whole.results.get("long.week")) as unknown as WeekOfBed,
      lines: answer.week.lines.filter(({ bed: id }) => id === "long"),
      dry: answer.lasting.dry,
      asking: "choices" in advice ? advice.asking : [],
      plan: valueIn(whole.results.get("season.plan")),
    };
  }
  const before = asked();

  test("pulled up it asks for nothing from that day on, the other bed's water lasts longer, the advice is of that one", () => {
    expect(before.lines.length).toBeGreaterThan(0);
    expect(before.asking).toEqual(expect.arrayContaining(["long", "tunnel"]));
    const pulled = asked({ id: "p", day: "2026-07-18", what: "pulled", where: "long" });
    expect(pulled.lines).toEqual([]);
    expect([pulled.week.asked, pulled.week.use]).toEqual([0, 0]);
    expect(pulled.asking).toEqual(["tunnel"]);
    expect(pulled.dry.short ?? Infinity).toBeGreaterThan(before.dry.short ?? 0);
    // What the sheet says of its seasons stays the card's.
    expect(pulled.plan).toEqual(before.plan);
  });

  test("planted anew it begins at its first stage: it uses less than full grown, and is soaked on that day", () => {
    const planted = asked({ id: "p", day: TODAY, what: "planted", where: "long" });
    expect(planted.week.use).toBeLessThan(0.7 * before.week.use);
    expect(planted.lines[0]).toMatchObject({ bed: "long" });
  });

  test("taken back they leave no trace", () => {
    const pulled: Note = { id: "p", day: "2026-07-18", what: "pulled", where: "long" };
    const undone: Note = { id: "u", day: TODAY, what: "undid", where: "long", undoes: "p" };
    expect(asked(pulled, undone)).toEqual(before);
  });
});
