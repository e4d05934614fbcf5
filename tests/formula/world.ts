// A small made-up set of names for the formula tests, kept in a map so that inherited names are unknown.

import { bindFormula } from "../../src/formula/bind.ts";
import { formulaDimension } from "../../src/formula/dimensions.ts";
import { type Formula, type FormulaProblem, readFormula } from "../../src/formula/read.ts";
import type { Dimension } from "../../src/units/dimension.ts";
import { dimensionOf } from "../../src/units/unit.ts";

/** Name, unit, number in SI. */
const WORLD: ReadonlyMap<string, readonly [unit: string, value: number]> = new Map([
  ["a", ["1", 7]],
  ["b", ["1", 3]],
  ["c", ["1", 2]],
  ["footprint", ["m2", 20]],
  ["rain", ["m", 0.01]],
  ["gal", ["m3", 5]],
  ["h", ["m", 1.5]],
  ["m", ["kg", 4]],
  ["tank.capacity", ["m3", 0.2]],
  ["site.water_temperature", ["K", 288.15]],
  ["elsewhere", ["K", 280]],
  ["warmer", ["delta K", 5]],
  ["tilt", ["rad", 0.5]],
]);
const NAMES = [...WORLD.keys()];
const VALUES = Float64Array.from(WORLD.values(), ([, value]) => value);

export function worldDimension(name: string): Dimension | string {
  const known = WORLD.get(name);
  return known ? dimensionOf(known[0]) : `There is no quantity "${name}".`;
}

export function formula(text: string, currency = "$"): Formula {
  const read = readFormula(text, { currency });
  if (!read.ok) throw new Error(`${text}: ${read.problem.message}`);
  return read.formula;
}

export function answerOf(text: string): number {
  return bindFormula(formula(text), (name) => NAMES.indexOf(name))(VALUES);
}

/** The first problem of a text, in reading or in its dimensions; null where there is none. */
export function problemOf(text: string): FormulaProblem | null {
  const read = readFormula(text);
  if (!read.ok) return read.problem;
  const checked = formulaDimension(read.formula, worldDimension);
  return checked.ok ? null : checked.problem;
}

/** What a problem marks in the text. */
export function markedIn(text: string): string | null {
  const problem = problemOf(text);
  return problem && text.slice(problem.start, problem.end);
}

export function dimensionOfText(text: string): Dimension {
  const checked = formulaDimension(formula(text), worldDimension);
  if (!checked.ok) throw new Error(`${text}: ${checked.problem.message}`);
  return checked.dimension;
}
