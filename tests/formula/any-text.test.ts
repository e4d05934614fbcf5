import fc from "fast-check";
import { expect, test } from "vitest";
import { formulaDimension } from "../../src/formula/dimensions.ts";
import { readFormula } from "../../src/formula/read.ts";
import { renameInFormula } from "../../src/formula/rename.ts";
import { showFormula } from "../../src/formula/show.ts";
import { tries } from "../tries.ts";
import { worldDimension } from "./world.ts";

const PIECES = [
  "a",
  "b",
  "tank.capacity",
  "site.water_temperature",
  "constructor",
  "__proto__",
  "toString",
  "gal",
  "h",
  "m",
  "in",
  "20 gal",
  "1 1/2 in",
  "3/4",
  "90 %",
  "$35",
  "40 degF",
  "0",
  "1e3",
  "5",
  ".5",
  "2.",
  "1e",
  "0x1f",
  "+",
  "-",
  "*",
  "/",
  "^",
  "<",
  "<=",
  ">",
  ">=",
  "==",
  "!=",
  "=",
  "!",
  "(",
  ")",
  "(",
  ")",
  ",",
  "?",
  ":",
  "?",
  ":",
  " and ",
  " or ",
  " not ",
  "max(",
  "sqrt(",
  "water_density(",
  "eval(",
  "[",
  "]",
  "{",
  "}",
  ";",
  '"',
  "'",
  ".",
  "%",
  "|",
  " ",
  "  ",
  "\t",
  "\n",
  "°",
  "²",
  "×",
  "÷",
  "−",
  "é",
  "水",
  "😀",
  "\u0000",
] as const;
const grammarish = fc.array(fc.constantFrom(...PIECES), { maxLength: 24 }).map((pieces) => pieces.join(""));
const anything = fc.oneof(
  { weight: 9, arbitrary: grammarish },
  { weight: 1, arbitrary: fc.string({ unit: "binary" }) },
);

function isInside(text: string, { start, end }: { readonly start: number; readonly end: number }): boolean {
  return 0 <= start && start <= end && end <= text.length;
}

test(`${tries(20_000)} random texts are each read or refused with a place inside the text, and never throw`, () => {
  let read = 0;
  const started = performance.now();
  fc.assert(
    fc.property(anything, (text) => {
      const answer = readFormula(text);
      renameInFormula(text, "tank", "barrel");
      if (!answer.ok) {
        expect(answer.problem.message).not.toMatch(/undefined|\[object|NaN/);
        expect(isInside(text, answer.problem)).toBe(true);
        return;
      }
      read += 1;
      showFormula(answer.formula, (name) => name);
      const checked = formulaDimension(answer.formula, worldDimension);
      if (!checked.ok) expect(isInside(text, checked.problem)).toBe(true);
      for (const { name, start, end } of answer.formula.names) expect(text.slice(start, end)).toBe(name);
    }),
    { numRuns: tries(20_000) },
  );
  expect(read).toBeGreaterThan(100);
  // Some seconds on a quiet machine; ten times that still tells a hang from a busy one.
  expect(performance.now() - started).toBeLessThan(60_000);
});
