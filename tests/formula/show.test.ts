import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FUNCTIONS } from "../../src/formula/functions.ts";
import { showFormula } from "../../src/formula/show.ts";
import { answerOf, formula } from "./world.ts";

const same = (name: string) => name;

describe("the working", () => {
  test.each([
    ["footprint*rain-h", "footprint × rain − h"],
    ["a/(b*c)", "a ÷ (b × c)"],
    ["(a*b)/c", "a × b ÷ c"],
    ["(a+b)+c", "a + b + c"],
    ["a-(b-c)", "a − (b − c)"],
    ["((a))", "a"],
    ["a*-b", "a × (−b)"],
    ["-a^2", "−a²"],
    ["(-a)^2", "(−a)²"],
    ["(a+b)^0.5", "(a + b)^0.5"],
    ["(5 m)^2", "(5 m)²"],
    ["20gal + 1 1/2 in", "20 gal + 1 1/2 in"],
    ["max(0, a-b)", "the largest of (0, a − b)"],
    ["a>b?a:b", "if a > b then a otherwise b"],
    ["a>b and not (b>=c) ? 1 : 2", "if a > b and not (b ≥ c) then 1 otherwise 2"],
    ["(a>b?1:2)*3", "(if a > b then 1 otherwise 2) × 3"],
    ["a>b?1:b>c?2:3", "if a > b then 1 otherwise if b > c then 2 otherwise 3"],
    ["(a>b or b>c) and a!=c", "(a > b or b > c) and a ≠ c"],
    ["water_density(site.water_temperature)", "the density of water at (site.water_temperature)"],
  ])("%s reads %s", (text, shown) => {
    expect(showFormula(formula(text), same)).toBe(shown);
  });

  test("numbers with units and labels take the place of names", () => {
    const put = (name: string) => ({ a: "200 ft²", b: "−3 ft", c: "0.9" })[name] ?? name;
    expect(showFormula(formula("a * c - b"), put)).toBe("200 ft² × 0.9 − (−3 ft)");
    expect(showFormula(formula("a^2 + b^2 + c^2"), put)).toBe("(200 ft²)² + (−3 ft)² + 0.9²");
  });

  /** A shown relation typed back: the words for choices and functions as signs again. */
  function typedBack(shown: string): string {
    let text = shown.replaceAll("if ", "").replaceAll(" then ", " ? ").replaceAll(" otherwise ", " : ");
    text = text.replaceAll(" = ", " == ");
    const named = [...FUNCTIONS.values()].sort((x, y) => y.shown.length - x.shown.length);
    for (const row of named) text = text.replaceAll(`${row.shown} (`, `${row.name}(`);
    return text;
  }

  const { number } = fc.letrec<{ number: string; condition: string }>((tie) => ({
    number: fc.oneof(
      { maxDepth: 4, depthIdentifier: "tree" },
      fc.constantFrom("a", "b", "c", "2", "0.5", "3"),
      fc
        .tuple(tie("number"), fc.constantFrom("+", "-", "*", "/", "^"), tie("number"))
        .map(([left, sign, right]) => `(${left})${sign}(${right})`),
      tie("number").map((of) => `-(${of})`),
      fc.tuple(tie("number"), tie("number")).map(([left, right]) => `max(${left}, ${right})`),
      fc
        .tuple(tie("condition"), tie("number"), tie("number"))
        .map(([ask, yes, no]) => `((${ask}) ? ${yes} : ${no})`),
    ),
    condition: fc.oneof(
      { maxDepth: 4, depthIdentifier: "tree" },
      fc
        .tuple(tie("number"), fc.constantFrom("<", "<=", ">", ">=", "==", "!="), tie("number"))
        .map(([left, sign, right]) => `(${left}) ${sign} (${right})`),
      fc
        .tuple(tie("condition"), fc.constantFrom("and", "or"), tie("condition"))
        .map(([left, sign, right]) => `(${left}) ${sign} (${right})`),
      tie("condition").map((of) => `not (${of})`),
    ),
  }));

  test("typed back it gives the very same number, for any formula", () => {
    fc.assert(
      fc.property(number, (text) => {
        fc.pre(text.length < 400);
        const shown = showFormula(formula(text), same);
        expect(answerOf(typedBack(shown))).toBe(answerOf(text));
      }),
      { numRuns: 2000 },
    );
  });
});
