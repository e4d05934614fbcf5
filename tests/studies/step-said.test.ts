// Steps of the number in hand: round in the unit shown, their words true, and each of them seen.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { nodeOf } from "../../src/graph/nodes.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { isUsual } from "../../src/graph/shown.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { stepSaid } from "../../src/studies/step-said.ts";
import { entryStepped, type Turn, turnedUnit, turnOf } from "../../src/studies/turn.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { MEASURES, type UnitSystem } from "../../src/units/measures.ts";
import { roundedShown, showQuantity } from "../../src/units/show.ts";
import { fromSi, toSi } from "../../src/units/unit.ts";

const FOLDER = new URL("../../templates/", import.meta.url);
const plain = (text: string | null): string | null => text?.replaceAll("\u00a0", " ") ?? null;

function sheetOf(name: string): Worksheet {
  const read = worksheetFromFileText(readFileSync(new URL(name, FOLDER), "utf8"), recordKey);
  if (!read.ok) throw new Error(`${name} cannot be read.`);
  return read.worksheet;
}

type Whole = ReturnType<typeof workOut>;

/** What stands there as the hand has it: a number that nobody typed as it is read. */
function stands(whole: Whole, { id, row, entry }: Turn, unit: string): number | null {
  const si = numberIn(whole.results.get(id));
  if (row.row !== "given" || si === null || entry) return si;
  const node = nodeOf(whole.graph, id);
  return toSi(roundedShown(si, row.measure, unit, node !== null && isUsual(node)), unit);
}

function stepsOf(whole: Whole, id: string) {
  const turn = turnOf(whole.worksheet, CARD_KINDS, id, [whole.results]);
  if (!turn?.axis || turn.row.row !== "given") return null;
  const { row, axis } = turn;
  const unit = turnedUnit(row, turn.entry, whole.worksheet);
  const from = stands(whole, turn, unit);
  const options = { units: whole.worksheet.units, locale: "en-US", currency: "$", rounded: true };
  return ([-1, 1] as const).map((by) => {
    const next = from === null ? null : entryStepped(axis, from, by, false);
    return {
      row,
      unit,
      from,
      by,
      next,
      said: plain(stepSaid({ row, axis }, from, next, by, options)),
      options,
    };
  });
}

const saidOf = (whole: Whole, id: string) => stepsOf(whole, id)?.map(({ said }) => said);

const inUnits = (name: string, units: UnitSystem): Whole => workOut({ ...sheetOf(name), units }, CARD_KINDS);

describe("a step", () => {
  const metric = inUnits("dry-summer-metric.json", "metric");
  const us = inUnits("hillside-totes.json", "us");

  test("of a usual value goes on from what is read there, by a round step", () => {
    // 50 ft are read as 15 m.
    const length = "pump.hose_length";
    expect(numberIn(metric.results.get(length))).toBeCloseTo(15.24, 2);
    expect(saidOf(metric, length)).toEqual(["−0.5", "+0.5"]);
  });

  test("of a time is one of the clock", () => {
    const cans = us.worksheet.cards.find(({ kind }) => kind === "carry")?.id ?? "";
    expect(saidOf(us, `${cans}.fill_time`)).toEqual(["−1 s", "+5 s"]);
    const hose = us.worksheet.cards.find(({ kind }) => kind === "delivery")?.id ?? "";
    if (hose) expect(saidOf(us, `${hose}.set_up`)).toEqual(["−15 s", "+15 s"]);
    expect(saidOf(us, "site.water_at")).toEqual(["−15 min", "+15 min"]);
  });

  test("of a first flush has figures and is seen", () => {
    const [down, up] = stepsOf(us, "barn_roof.first_flush") ?? [];
    expect([down?.said, up?.said]).toEqual(["−0.002", "+0.002"]);
    expect(up?.next?.value).toBe(0.022);
  });

  test("of a bore leads to the next size that is sold", () => {
    expect(saidOf(us, "hose_down.bore")).toEqual(["to 0.5", "to 0.75"]);
  });

  test("of any number of any template, in any units, is round, true and seen", () => {
    let _count = 0;
    for (const name of readdirSync(FOLDER)) {
      for (const units of ["us", "imperial", "metric"] as const) {
        const whole = inUnits(name, units);
        for (const card of whole.worksheet.cards) {
          for (const row of CARD_KINDS[card.kind]?.rows ?? []) {
            if (row.row !== "given") continue;
            const id = `${card.id}.${row.name}`;
            for (const step of stepsOf(whole, id) ?? []) {
              if (!step.next || step.from === null || typeof step.next.value !== "number") continue;
              _count++;
              holds(id, step, step.next.value);
            }
          }
        }
      }
    }
  });
});

type Step = NonNullable<ReturnType<typeof stepsOf>>[number];

/** Digits of a number as it is read. */
const figuresOf = (number: number): number =>
  String(Number(number.toPrecision(12)))
    .replace(/[-.]/g, "")
    .replace(/^0+|0+$/g, "").length;

function holds(id: string, { row, unit, from, by, said, options }: Step, to: number): void {
  const text = (si: number) => showQuantity(si, row.measure, { ...options, rounded: false, unit });
  // It is seen, in the direction that its button says.
  expect(text(toSi(to, unit)), id).not.toBe(text(from ?? 0));
  expect(Math.sign(to - fromSi(from ?? 0, unit)), id).toBe(by);
  const told = /^([+−])([\d.,]+)$/.exec(said ?? "");
  if (!told) return;
  const size = Number(told[2]?.replaceAll(",", ""));
  expect(figuresOf(size), `${id} ${said}`).toBeLessThanOrEqual(2);
  if (MEASURES[row.measure].form === "plain")
    expect(fromSi(from ?? 0, unit) + by * size, id).toBeCloseTo(to, 9);
}
