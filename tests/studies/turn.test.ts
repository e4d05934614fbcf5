import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { withChanges } from "../../src/document/changes.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, baseOf } from "../../src/studies/ask.ts";
import { enoughOf, hasEnough } from "../../src/studies/enough.ts";
import { edgeOf, enoughRung } from "../../src/studies/enough-edge.ts";
import { movedBy } from "../../src/studies/moved-by.ts";
import { sheetToTry } from "../../src/studies/try.ts";
import {
  type Axis,
  axisHolding,
  axisIn,
  entryAtPlace,
  entryStepped,
  marksOf,
  placeOnAxis,
  type Turn,
  trialsAlong,
  turnOf,
} from "../../src/studies/turn.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { scaleBetween } from "../../src/units/scale.ts";

const file = readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8");
const read = worksheetFromFileText(file, recordKey);
if (!read.ok) throw new Error("The template cannot be read.");
const sheet = read.worksheet;
const whole = workOut(sheet, CARD_KINDS);

function taken(id: string, of = whole): Turn & { readonly axis: Axis } {
  const turn = turnOf(of.worksheet, CARD_KINDS, id, [of.results]);
  if (!turn?.axis) throw new Error(`${id} has no axis.`);
  return { ...turn, axis: turn.axis };
}

describe("what is taken in hand", () => {
  test("a number has the trade's span, widened to hold what stands there and what is held", () => {
    const { axis } = taken("totes.capacity");
    expect(axis).toMatchObject({ form: "number", scale: { low: 20, high: 5000, unit: "gal", ratio: true } });
    const held = { get: () => ({ state: "ready" as const, value: 30, origin: "given" as const }) };
    const wide = turnOf(whole.worksheet, CARD_KINDS, "totes.capacity", [whole.results, held]);
    expect(wide?.axis?.form === "number" && wide.axis.scale.high).toBeCloseTo(7925.16, 2);
  });

  test("a choice has its words, a day its year, and a price without one nothing to turn over", () => {
    const kind = sheet.cards.find((card) => card.kind === "bed");
    const { axis } = taken(`${kind?.id}.mulch`);
    expect(axis.form).toBe("word");
    const season = taken("site.season_start").axis;
    expect(marksOf(season).map(({ value }) => value)).toEqual(["01-01", "12-31"]);
    expect(turnOf(whole.worksheet, CARD_KINDS, "totes.reachable_volume", [whole.results])).toBeNull();
    expect(turnOf(whole.worksheet, CARD_KINDS, "nowhere.at_all", [whole.results])).toBeNull();
  });

  test("where it was measured, the measured value is what is turned", () => {
    const measured = withChanges(sheet, [
      { card: "totes", part: "measured", row: "capacity", entry: { value: 262, unit: "gal" } },
    ]);
    const turn = taken("totes.capacity", workOut(measured, CARD_KINDS));
    expect([turn.target.part, turn.entry?.value]).toEqual(["measured", 262]);
  });
});

describe("turning", () => {
  const axes: readonly Axis[] = [
    taken("totes.capacity").axis,
    taken("site.season_start").axis,
    { form: "word", words: ["none", "straw", "bark"] },
    { form: "number", scale: scaleBetween(-10, 40, "degC") },
  ];
  const standing = (axis: Axis, place: number): number | string | null => {
    const trial = trialsAlong({ target: { card: "c", part: "givens", row: "r" } } as Turn, axis, 25);
    return trial[Math.round(place * (trial.length - 1))]?.value ?? null;
  };

  it("leads up and down to the same value, and never off the axis", () => {
    const places = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...axes), places, fc.constantFrom(1, -1), (axis, place, by) => {
        const from = standing(axis, place);
        const up = entryStepped(axis, from, by as 1 | -1, false);
        if (up === null) return;
        const there = asStands(axis, up.value);
        expect(placeOnAxis(axis, there)).toBeGreaterThanOrEqual(-1e-12);
        expect(placeOnAxis(axis, there)).toBeLessThanOrEqual(1 + 1e-12);
        const back = entryStepped(axis, there, by === 1 ? -1 : 1, false);
        const again = asStands(axis, back?.value ?? null);
        if (typeof from === "number") expect(again).toBeCloseTo(from, 9);
        else expect(again).toBe(from);
      }),
    );
  });

  function asStands(axis: Axis, value: unknown): number | string | null {
    const marks = axis.form === "number" ? axis : null;
    if (!marks || typeof value !== "number") return typeof value === "string" ? value : null;
    return siOf(value, marks.scale.unit);
  }
  const siOf = (value: number, unit: string) =>
    unit === "degC" ? value + 273.15 : Number((value * 0.003785411784).toPrecision(15));

  it("begins at the low end where nothing stands, and ends at the ends", () => {
    const [tank] = axes;
    if (!tank) throw new Error("no axis");
    expect(entryStepped(tank, null, 1, false)).toEqual({ value: 20, unit: "gal" });
    expect(entryStepped(tank, siOf(5000, "gal"), 1, false)).toBeNull();
    expect(entryAtPlace(tank, 2)).toEqual({ value: 5000, unit: "gal" });
    expect(entryStepped(tank, siOf(275, "gal"), 1, true)).toEqual({ value: 525, unit: "gal" });
  });

  it("goes on in the unit that was typed, over the same span; a typed value off it makes room", () => {
    const { axis, row } = taken("totes.capacity");
    // 20 and 5,000 gal are 75.7 and 18,927 L: round in liters and cubic meters too, and never less.
    const ends = (unit: string): unknown => {
      const other = axisIn(axis, row, unit);
      return other.form === "number" && [other.scale.low, other.scale.high];
    };
    expect(ends("L")).toEqual([75, 19_000]);
    expect(ends("m3")).toEqual([0.075, 19]);
    expect(axisIn(axis, row, "gal")).toBe(axis);
    expect(axisHolding(axis, row, siOf(900, "gal"))).toBe(axis);
    const wider = axisHolding(axis, row, siOf(12_000, "gal"));
    expect(wider.form === "number" && [wider.scale.low, wider.scale.high]).toEqual([20, 12000]);
    // What is refused makes none.
    const length = taken("long_bed.length");
    expect(axisHolding(length.axis, length.row, 0)).toBe(length.axis);
  });
});

describe("the curve of the number in hand", () => {
  test.each([
    ["totes.capacity", 3],
    ["hose_down.bore", 2],
  ])("each point of %s equals setting the value by hand, to the bit", (id, count) => {
    const turn = taken(id);
    const wanted = ["season.worst_season_days_short", "season.days_short"];
    for (const trial of trialsAlong(turn, turn.axis, count)) {
      const base = baseOf(sheetToTry(sheet, CARD_KINDS, turn.row, trial), CARD_KINDS);
      const alone = workOut(withChanges(sheet, [trial.change]), CARD_KINDS).results;
      const answers = ask(base, [trial.change], wanted);
      for (const answer of wanted)
        expect([id, answer, answers[answer]]).toEqual([id, answer, alone.get(answer)]);
    }
  });

  test("it shows answers that the number can move, the lead's before all others", () => {
    const { graph, results } = whole;
    const rows = CARD_KINDS["tank"]?.rows ?? [];
    const moved = movedBy(graph, "totes.capacity", rows, "season.worst_season_days_short");
    expect(moved[0]).toBe("season.worst_season_days_short");
    expect(moved).toContain("season.days_of_autonomy");
    expect(moved.every((id) => results.get(id) !== undefined)).toBe(true);
    expect(movedBy(graph, "totes.price", rows, "season.worst_season_days_short")).not.toContain(
      "season.days_short",
    );
    expect(numberIn(results.get("cost.total"))).not.toBeNull();
    expect(movedBy(graph, "totes.price", rows, "season.worst_season_days_short")[0]).toBe("cost.total");
  });
});

test("from nought, off an axis in ratios, the first step up is its low end, and none leads down", () => {
  const axis = { form: "number", scale: scaleBetween(20, 5000, "gal") } as const;
  expect(entryStepped(axis, 0, 1, false)).toEqual({ value: 20, unit: "gal" });
  expect(entryStepped(axis, 0, -1, false)).toBeNull();
  // A hundred cubic meters are far beyond its high end.
  expect(entryStepped(axis, 100, -1, false)?.value).toBe(5000);
});

test("of a turn or of a set's number none is enough, and its axis has whole ends", () => {
  const rows = (kind: string, name: string) => CARD_KINDS[kind]?.rows.find((row) => row.name === name);
  for (const [kind, name] of [
    ["bed", "priority"],
    ["weather", "seed"],
    ["panel", "azimuth"],
    ["site", "latitude"],
    ["site", "water_at"],
  ] as const) {
    const row = rows(kind, name);
    expect(row && hasEnough(row), `${kind}.${name}`).toBe(false);
  }
  for (const name of ["capacity", "count"]) {
    const row = rows("tank", name);
    expect(row && hasEnough(row), name).toBe(true);
  }
  const seed = taken("weather.seed").axis;
  expect(seed.form === "number" && [seed.scale.low, seed.scale.high]).toEqual([1, 4]);
});

test("a bore has the sizes that are sold, on its steps and its slider and among the points of its curve, in inches and in millimeters", () => {
  const { axis, row, ...rest } = taken("hose_down.bore");
  const turn = { ...rest, row, axis };
  const values = (over: Axis) => trialsAlong(turn, over, 25).map(({ change }) => Number(change.entry?.value));
  const inches = [0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2];
  const millimeters = [10, 13, 16, 19, 25, 32, 38, 51];
  const metric = axisIn(axis, row, "mm");
  for (const [over, sold] of [
    [axis, inches],
    [metric, millimeters],
  ] as const) {
    const tried = values(over);
    expect(tried).toEqual(expect.arrayContaining([...sold]));
    expect(tried).toEqual([...tried].sort((a, b) => a - b));
    expect(tried.length).toBeGreaterThan(15);
    expect(tried.length).toBeLessThanOrEqual(25);
  }
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (place) => {
      expect(inches).toContain(entryAtPlace(axis, place).value);
      expect(millimeters).toContain(entryAtPlace(metric, place).value);
    }),
  );
  // Three quarters of an inch are 19.05 mm: the next size is not the same one again.
  expect(entryStepped(metric, 0.01905, 1, false)).toEqual({ value: 25, unit: "mm" });
  expect(entryStepped(axis, 0.02, -1, false)).toEqual({ value: 0.75, unit: "in" });
});

describe("enough", () => {
  const tried = (answers: readonly (number | null)[]) =>
    answers.map((answer, at) => ({ place: at / (answers.length - 1), size: at + 1, answer }));
  const SHORT = "season.worst_season_days_short";

  test.each([
    [[40, 20, 0, 0, 0], { place: 0.5, how: "from" }],
    [[0, 0, 3, 9, 20], { place: 0.25, how: "up to" }],
    // A later size that is short again: enough begins only after it.
    [[40, 0, 2, 0, 0], { place: 0.75, how: "from" }],
    [[0, 0, 0, 0, 0], null],
    [[9, 8, 8, 7, 7], null],
    [[0, 4, 4, 4, 0], null],
    [[null, 4, 0, 0, 0], { place: 0.5, how: "from" }],
  ])("of %j is %j", (answers, enough) => {
    expect(enoughOf(SHORT, tried(answers))).toEqual(enough);
  });

  test("of shares that never become all, it is where little more is gained", () => {
    expect(enoughOf("season.share_met", tried([0.5, 0.8, 0.9, 0.9, 0.9]))).toEqual({
      place: 0.5,
      how: "little more",
    });
    expect(enoughOf("season.spill", tried([0, 0, 1, 2, 3]))).toBeNull();
  });

  test("its edge lies between the last value that is short and the first that is not", () => {
    expect(edgeOf(SHORT, tried([40, 20, 0, 0, 0]))).toMatchObject({ unmet: 0.25, met: 0.5 });
    expect(edgeOf(SHORT, tried([0, 0, 3, 9, 20]))).toMatchObject({ met: 0.25, unmet: 0.5 });
    expect(edgeOf(SHORT, tried([5, 5, 5]))).toBeNull();
    expect(edgeOf(SHORT, tried([3, 0]))?.wish.sense).toBe("at most");
    expect(edgeOf("season.share_met", tried([0.5, 1]))?.wish.sense).toBe("at least");
  });

  test("it is told at a step of the hand that is enough, and the step before is not", async () => {
    const scale = scaleBetween(20, 5000, "gal");
    const asked: number[] = [];
    const answerAt =
      (of: (value: number) => number) =>
      async (values: readonly number[]): Promise<readonly number[]> => {
        asked.push(...values);
        return values.map(of);
      };
    const short = answerAt((value) => Math.max(0, Math.ceil((543.87 - value) / 9)));
    const wish = { sense: "at most", target: 1e-9 } as const;
    expect(await enoughRung(short, scale, wish, { met: 625, unmet: 500 })).toBe(550);
    expect(asked).toContain(525);
    expect(asked.length).toBeLessThan(4);
    const kept = answerAt((value) => (value <= 3.3 ? 1 : 0.8));
    const up = { sense: "at least", target: 1 - 1e-9 } as const;
    expect(await enoughRung(kept, scaleBetween(0, 10, "m"), up, { met: 2, unmet: 5 })).toBe(3.3);
    expect(await enoughRung(kept, scaleBetween(0, 10, "1", true), up, { met: 2, unmet: 5 })).toBe(3);
  });
});
