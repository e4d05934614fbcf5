// Work back on the starters: whatever is told is borne out by setting it and evaluating again.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changeTo } from "../../src/cli/set-value.ts";
import { workedBackReport } from "../../src/cli/work-back-report.ts";
import type { Change, Worksheet } from "../../src/document/worksheet.ts";
import { ancestorsOf } from "../../src/graph/ancestors.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, type Base, baseOf } from "../../src/studies/ask.ts";
import { valueTrials } from "../../src/studies/try.ts";
import { turnOf } from "../../src/studies/turn.ts";
import { valuesOf } from "../../src/units/scale.ts";
import { unitFor } from "../../src/units/show.ts";
import { fromSi } from "../../src/units/unit.ts";
import { tries } from "../tries.ts";

const FOLDER = new URL("../../templates/", import.meta.url);

/** A starter without what reads the record day by day. */
function quickTemplate(name: string): Worksheet {
  const worksheet = template(name);
  return {
    ...worksheet,
    cards: worksheet.cards.filter(({ kind }) => !["bed", "roof", "season", "draw"].includes(kind)),
  };
}

function template(name: string): Worksheet {
  const read = worksheetFromFileText(readFileSync(new URL(name, FOLDER), "utf8"), recordKey);
  if (!read.ok) throw new Error(name);
  return read.worksheet;
}

type Question = { readonly turned: string; readonly answer: string; readonly now: number };

/** Kinds whose own results read no day of the record: hundreds of questions of them are asked in seconds. */
const QUICK = new Set(["tank", "battery", "wire", "carry"]);

/** Numbers that are given and have a usual span, each with the numbers worked out from it without the season. */
function questionsOf(worksheet: Worksheet, base: Base): readonly Question[] {
  const { graph, results } = base.whole;
  const model = graph.index.get("season.run()") ?? -1;
  const cards = worksheet.cards.filter(({ kind }) => QUICK.has(kind));
  return cards.flatMap((card) =>
    (CARD_KINDS[card.kind]?.rows ?? []).flatMap((row) => {
      const turned = `${card.id}.${row.name}`;
      if (
        row.row !== "given" ||
        !row.usual ||
        row.stored === "card" ||
        numberIn(results.get(turned)) === null
      )
        return [];
      const from = graph.index.get(turned) ?? -1;
      return (CARD_KINDS[card.kind]?.rows ?? []).flatMap((result) => {
        const answer = `${card.id}.${result.name}`;
        const now = numberIn(results.get(answer));
        if ((result.row !== "formula" && result.row !== "output") || now === null) return [];
        if (!("measure" in result) || result.measure === "text" || result.measure === "series") return [];
        const behind = ancestorsOf(graph, [answer]);
        return behind[from] === 1 && behind[model] !== 1 ? [{ turned, answer, now }] : [];
      });
    }),
  );
}

const NAMES = ["hillside-totes.json", "pump-battery-panel.json", "panel-alone-metric.json"];
const SHEETS = NAMES.map((name) => {
  const worksheet = quickTemplate(name);
  const base = baseOf(worksheet, CARD_KINDS);
  return { worksheet, base, questions: questionsOf(worksheet, base) };
}).filter(({ questions }) => questions.length > 0);

/** Changes over the whole scale of a number. */
function sweep(worksheet: Worksheet, base: Base, turned: string): readonly Change[] {
  const turn = turnOf(worksheet, CARD_KINDS, turned, [base.whole.results]);
  if (turn?.axis?.form !== "number") throw new Error(turned);
  const { scale } = turn.axis;
  return valueTrials(turn.target, valuesOf(scale, SWEPT), scale.unit).map(({ change }) => change);
}

const SWEPT = process.env["LONG"] ? 301 : 65;

/** They take seconds each: as many as the usual run has time for, more with LONG=1. */
const QUESTIONS = tries(200, 12);

/** Against hanging alone: two hundred questions with their sweeps take minutes on a busy machine [ms]. */
const WATCHDOG = 1_800_000;

describe("work back on a whole worksheet", () => {
  test("random questions: setting what is told gives the answer that is told, and it is what was wished", {
    timeout: WATCHDOG,
  }, async () => {
    const states = new Map<string, number>();
    const draws = fc.tuple(fc.nat(), fc.nat(), fc.double({ min: 0.3, max: 2, noNaN: true }), fc.boolean());
    await fc.assert(
      fc.asyncProperty(draws, async ([sheetAt, questionAt, times, atMost]) => {
        const { worksheet, base, questions } = SHEETS[sheetAt % SHEETS.length] as (typeof SHEETS)[number];
        const { turned, answer, now } = questions[questionAt % questions.length] as Question;
        const target = now * times;
        const unit = base.whole.graph.siUnitOf(answer);
        const until = `${answer}${atMost ? "<=" : ">="}${target} ${unit === "1" ? "" : unit}`;
        const report = await workedBackReport(base, CARD_KINDS, { name: turned, until });
        states.set(report.state, (states.get(report.state) ?? 0) + 1);
        if (report.state === "never") {
          for (const value of sweep(worksheet, base, turned)) {
            const there = numberIn(ask(base, [value], [answer])[answer]);
            const slack = Math.abs(target) * 1e-9;
            if (there !== null) expect(atMost ? there > target - slack : there < target + slack).toBe(true);
          }
        }
        if (report.state !== "found" || report.value === null) return;
        const [id = "", row = ""] = turned.split(".");
        const kind = worksheet.cards.find((card) => card.id === id)?.kind ?? "";
        const given = CARD_KINDS[kind]?.rows.find(({ name }) => name === row);
        if (given?.row !== "given") throw new Error(turned);
        const shown = unitFor(given.measure, worksheet.units);
        const change = changeTo(
          worksheet,
          CARD_KINDS,
          turned,
          `${fromSi(report.value, shown)} ${shown === "1" ? "" : shown}`,
        );
        const again = numberIn(ask(base, [change], [answer])[answer]);
        expect(again).toBeCloseTo(report.answer ?? Number.NaN, 9);
        if (again === null) throw new Error(answer);
        // The target went through text and back: its last bit may differ.
        const slack = Math.abs(target) * 1e-12;
        if (atMost) expect(again).toBeLessThanOrEqual(target + slack);
        else expect(again).toBeGreaterThanOrEqual(target - slack);
      }),
      { numRuns: QUESTIONS },
    );
    expect([...states.keys()].sort()).toEqual(["already", "found", "never"]);
  });
});
