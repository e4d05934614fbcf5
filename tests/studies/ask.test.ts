// Asking the whole worksheet: every point is what setting that value by hand gives, to the bit; and the order of asking.

import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setValue } from "../../src/cli/set-value.ts";
import { triedReport } from "../../src/cli/try-report.ts";
import { type Change, withChanges } from "../../src/document/changes.ts";
import { effective } from "../../src/document/effective.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { rowNamed } from "../../src/graph/card-plans.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { rolesOf } from "../../src/graph/roles.ts";
import type { NumberGiven } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { ask, baseOf, rebased } from "../../src/studies/ask.ts";
import { runFreed } from "../../src/studies/gives-out.ts";
import { scaleOf } from "../../src/studies/scale.ts";
import { coarseThenFine, dateTrials, numberTrials, type Trial, wordTrials } from "../../src/studies/try.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { placeOn, scaleBetween, valueAt, valuesOf } from "../../src/units/scale.ts";
import { STARTERS, starter } from "../starter.ts";
import { tries } from "../tries.ts";

const NAMES = readdirSync(STARTERS).sort();
const YEARS = tries(20, 4);
const template = (name: string): Worksheet => starter(name, YEARS);

const DRAWN = tries(60, 8);

const ANSWERS = [
  "season.days_short",
  "season.share_met",
  "season.days_of_autonomy",
  "season.binding",
  "season.spill",
  "cost.total",
  "weather.mean_yearly_rain",
];

/** Numbers and choices that the templates give, and numbers left at their defaults, every kind in turn. */
function givensOf(name: string): readonly { readonly template: string; readonly trials: readonly Trial[] }[] {
  return template(name).cards.flatMap((card) =>
    (CARD_KINDS[card.kind]?.rows ?? []).flatMap((row) => {
      const target = { card: card.id, part: "givens" as const, row: row.name };
      if (row.row === "choice") {
        return [
          { template: name, trials: wordTrials(target, row.options.map(({ word }) => word).slice(0, 2)) },
        ];
      }
      const entry = card.givens[row.name];
      if (row.row !== "given" || row.stored === "card" || typeof entry?.value !== "number") return [];
      const scale = scaleBetween(entry.value * 0.8, entry.value * 1.3, entry.unit);
      return [{ template: name, trials: numberTrials(target, scale, 2) }];
    }),
  );
}

/** Sixty of them with LONG=1, spread over all templates and kinds by a stride that divides nothing. */
function drawn() {
  const all = NAMES.flatMap(givensOf);
  return Array.from({ length: DRAWN }, (_, at) => all[(at * 37 + 11) % all.length] as (typeof all)[number]);
}

describe("asking the whole worksheet", () => {
  test.each(NAMES)(
    `${DRAWN} givens over all templates: each point equals setting it by hand, to the bit (%s)`,
    (name) => {
      const base = baseOf(template(name), CARD_KINDS);
      for (const given of drawn().filter((one) => one.template === name)) {
        for (const { change } of given.trials) {
          // The record alone is taken from the base, where the change leaves it: making it up takes as long as all the rest.
          const records = [...base.known.records.values()];
          const alone = workOut(withChanges(template(name), [change]), CARD_KINDS, records).results;
          const answers = ask(base, [change], ANSWERS);
          for (const id of ANSWERS) expect([change, id, answers[id]]).toEqual([change, id, alone.get(id)]);
        }
      }
    },
  );

  test("a plan that adds a tank, does without a roof and changes numbers is asked as it is worked out by hand, to the bit", () => {
    const sheet = template("three-roofs-two-tunnels.json");
    const base = baseOf(sheet, CARD_KINDS);
    const of = (kind: string) => sheet.cards.filter((card) => card.kind === kind);
    const [roof, other] = of("roof");
    const [tank] = of("tank");
    if (!roof || !other || !tank) throw new Error("The template has changed.");
    const plan = {
      changes: [
        { card: other.id, part: "givens", row: "drains_to", entry: { value: "spare_tank", unit: "" } },
        { card: tank.id, part: "givens", row: "count", entry: { value: 2, unit: "" } },
      ] as const,
      added: [{ ...tank, id: "spare_tank", title: "Spare tank", after: tank.id }],
      removed: [roof.id],
    };
    const planned = effective(sheet, plan, rolesOf(CARD_KINDS));
    const alone = workOut(planned, CARD_KINDS).results;
    const wanted = [...ANSWERS, "spare_tank.capacity"];
    const answers = ask(base, plan, wanted);
    for (const id of wanted) expect([id, answers[id]]).toEqual([id, alone.get(id)]);
    const asItIs = ask(base, [], ANSWERS);
    expect(answers["season.spill"]).not.toEqual(asItIs["season.spill"]);
  });

  test("a tank with a leak of 20 L a day keeps that leak at every size: the curve is what setting each size gives", () => {
    const leaking = withChanges(template("hillside-totes.json"), [
      { card: "totes", part: "givens", row: "leak", entry: { value: 20, unit: "L/day" } },
    ]);
    const base = baseOf(leaking, CARD_KINDS);
    const trials = numberTrials(
      { card: "totes", part: "givens", row: "capacity" },
      scaleBetween(100, 1100, "gal"),
      3,
    );
    for (const { change } of trials) {
      const alone = workOut(withChanges(leaking, [change]), CARD_KINDS).results;
      expect(ask(base, [change], ["season.days_short", "totes.leak"])).toEqual({
        "season.days_short": alone.get("season.days_short"),
        "totes.leak": alone.get("totes.leak"),
      });
    }
  });

  test("a measured row is tried as it is set: what it was measured under is written down anew", () => {
    const sheet = withChanges(template("pump-battery-panel.json"), [
      { card: "cell", part: "givens", row: "tested_temperature", entry: { value: 0, unit: "degC" } },
    ]);
    const tried = { name: "cell.test_time", range: "1 h..6 h", answers: ["cell.usable_energy"], steps: 3 };
    const { points } = triedReport(sheet, CARD_KINDS, [], tried);
    const usable = [1, 3.5, 6].map((hours) => {
      const set = setValue(sheet, CARD_KINDS, "cell.test_time", `${hours} h`);
      return numberIn(workOut(set, CARD_KINDS).results.get("cell.usable_energy"));
    });
    expect(points.map(({ answers }) => answers["cell.usable_energy"])).toEqual(usable);
    expect(new Set(usable).size).toBe(3);
    const cold = withChanges(sheet, [
      { card: "cell", part: "measured", row: "test_time", entry: { value: 1, unit: "h", from: "measured" } },
    ]);
    const there = workOut(cold, CARD_KINDS).results.get("cell.usable_energy");
    expect(usable[0]).not.toBe(numberIn(there));
  });

  test("made-up records that were tried do not push out the base's own: its season can still be run", () => {
    const sheet = template("one-barrel.json");
    const base = baseOf(sheet, CARD_KINDS);
    const before = runFreed(base, { bounds: [], rain: 1 });
    for (let years = YEARS + 1; years < YEARS + 13; years++) {
      const change: Change = {
        card: "weather",
        part: "givens",
        row: "years",
        entry: { value: years, unit: "1" },
      };
      ask(base, [change], ["weather.mean_yearly_rain"]);
    }
    expect(before).toMatchObject({ seasons: YEARS });
    expect(runFreed(base, { bounds: [], rain: 1 })).toEqual(before);
    expect(base.known.records.size).toBeLessThan(12);
  });

  test("an answer that needs no season runs none", () => {
    const base = baseOf(template("hillside-totes.json"), CARD_KINDS);
    const change: Change = {
      card: "totes",
      part: "givens",
      row: "capacity",
      entry: { value: 500, unit: "gal" },
    };
    ask(base, [change], ["totes.full_weight", "cost.total"]);
    expect(base.known.answers.size).toBe(0);
    ask(base, [change], ["season.days_short"]);
    expect([...base.known.answers.keys()].map((key) => JSON.parse(key)[0])).toEqual(["season.run"]);
  });

  test("G9: after an edit elsewhere the same question has the new sheet's answer, and going back finds the old one kept", () => {
    const sheet = template("one-barrel.json");
    const first = baseOf(sheet, CARD_KINDS);
    const before = ask(first, [], ["season.share_met"]);
    const edit: Change = {
      card: "site",
      part: "givens",
      row: "season_end",
      entry: { value: "08-01", unit: "" },
    };
    const edited = rebased(first, withChanges(sheet, [edit]));
    expect(ask(edited, [], ["season.share_met"])).toEqual({
      "season.share_met": workOut(withChanges(sheet, [edit]), CARD_KINDS).results.get("season.share_met"),
    });
    const kept = edited.known.answers.size;
    expect(ask(rebased(edited, sheet), [], ["season.share_met"])).toEqual(before);
    expect(edited.known.answers.size).toBe(kept);
  });

  test("a change of a card that is not there, or an entry that does not fit, changes nothing", () => {
    const sheet = template("one-barrel.json");
    const gone: Change = {
      card: "nowhere",
      part: "givens",
      row: "capacity",
      entry: { value: 1, unit: "gal" },
    };
    expect(withChanges(sheet, [gone])).toBe(sheet);
  });
});

describe("a scale", () => {
  test("place and value are each other's way back, evenly and in ratios", () => {
    const ends = fc.double({ min: 0.01, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        ends,
        fc.double({ min: 1.01, max: 1e3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (low, times, place) => {
          const scale = scaleBetween(low, low * times, "gal");
          expect(scale.ratio).toBe(scale.high / scale.low >= 20);
          // Values in ratios are rounded to four figures: at most 5e-4 of the value, so far along the logarithm.
          const slack = scale.ratio ? 5.1e-4 / Math.log(times) : 1e-9;
          expect(Math.abs(placeOn(scale, valueAt(scale, place)) - place)).toBeLessThanOrEqual(slack);
        },
      ),
    );
  });

  test("values rise, ends among them, and counts are whole", () => {
    expect(valuesOf(scaleBetween(1, 6, "1", true), 17)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(valuesOf(scaleBetween(100, 1000, "gal"), 4)).toEqual([100, 400, 700, 1000]);
    expect(valuesOf(scaleBetween(10, 1000, "gal"), 3)).toEqual([10, 100, 1000]);
    expect(valuesOf(scaleBetween(5, 5, "gal"), 9)).toEqual([5]);
  });

  test("a row's scale holds its value and what is held, within its limits", () => {
    const row = rowNamed(CARD_KINDS["tank"] as never, "capacity") as NumberGiven;
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        (now, held) => {
          const scale = scaleOf(row, "L", [now, held]);
          expect(scale.low).toBeLessThanOrEqual(Math.min(now, held) * 1000 * (1 + 1e-12));
          expect(scale.high).toBeGreaterThanOrEqual(Math.max(now, held) * 1000 * (1 - 1e-12));
        },
      ),
    );
  });

  test("dates run evenly, over the new year too", () => {
    const target = { card: "site", part: "givens" as const, row: "season_start" };
    const texts = (from: string, until: string, count: number) =>
      dateTrials(target, [from, until], count)?.map(({ value }) => value);
    expect(texts("04-01", "04-05", 9)).toEqual(["04-01", "04-02", "04-03", "04-04", "04-05"]);
    expect(texts("12-30", "01-02", 4)).toEqual(["12-30", "12-31", "01-01", "01-02"]);
    expect(texts("2020-02-28", "2020-03-01", 3)).toEqual(["2020-02-28", "2020-02-29", "2020-03-01"]);
    expect(dateTrials(target, ["04-01", "2020-03-01"], 3)).toBeNull();
  });

  test("nine points spread over all come first, then the rest, each once", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (count) => {
        const order = coarseThenFine(count);
        expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, at) => at));
        expect(order.slice(0, Math.min(9, count))).toContain(0);
        expect(order.slice(0, Math.min(9, count))).toContain(count - 1);
      }),
    );
  });
});
