import { describe, expect, test } from "vitest";
import { readFormula } from "../../src/formula/read.ts";
import { answerOf, problemOf } from "./world.ts";

/** Each text with words of the reason a person is given. */
const PROBES: readonly (readonly [text: string, reason: string])[] = [
  ["constructor", "cannot be used as a name"],
  ["__proto__", "is not a name"],
  ["toString", "is not a name"],
  ["valueOf", "is not a name"],
  ["hasOwnProperty", "is not a name"],
  ["toLocaleString", "is not a name"],
  ["tank.constructor", "cannot be used as a name"],
  ["constructor.name", "cannot be used as a name"],
  ["a.__proto__", "is not a name"],
  ["a.constructor.prototype", "is not a name"],
  ["constructor(5)", "cannot be used as a name"],
  ["toString()", "is not a name"],
  ["valueof(1)", "There is no function"],
  ['constructor.constructor("return 1")()', "cannot be used as a name"],
  ['eval("6*7")', "There is no function"],
  ["eval(6)", "There is no function"],
  ["__proto__ = a; b", "is not a name"],
  ["a = 5", "single ="],
  ["a == 5; b", "semicolon"],
  ["g(a) = g(a); g(1)", "There is no function"],
  ["f(2)", "There is no function"],
  ["o.f(2)", "cannot be called"],
  ["o.p.f(2)", "is not a name"],
  ["o[0](2)", "square brackets"],
  ["[1, 2, 3]", "square brackets"],
  ['"abc"', "quotes"],
  ["'abc'", "quotes"],
  ["`abc`", "quotes"],
  ['"a" || "b"', "quotes"],
  ["a || b", "or between"],
  ["a && b", "and between"],
  ["1;2;3", "semicolon"],
  ["5!!!!", "! alone"],
  ["1e9!", "! alone"],
  ["a % b", "% belongs"],
  ["a in b", "sign such as"],
  ["random()", "There is no function"],
  ["fac(5)", "There is no function"],
  ["gamma(5)", "There is no function"],
  ["map(sqrt, a)", "There is no function"],
  ["fold(max, 0, a)", "There is no function"],
  ["filter(a, b)", "There is no function"],
  ["indexOf(a, b)", "is not a name"],
  ["join(a, b)", "There is no function"],
  ["if(a, b, c)", "There is no function"],
  ["length a", "sign such as"],
  ["sin a", "sign such as"],
  ["sqrt", "There is no quantity"],
  ["max(sqrt, 1)", "There is no quantity"],
  ["length", "There is no quantity"],
  ["log", "There is no quantity"],
  ["E", "is not a name"],
  ["PI", "is not a name"],
  ["true", "There is no quantity"],
  ["my_prototype_x", "There is no quantity"],
  ["η", "is not a name"],
  ["水", "is not a name"],
  ["a /* b */", "missing before this"],
  ["a // b", "missing before this"],
  ["0x10", "missing before x10"],
  ["0b11", "do not know the unit"],
  ["\u0024{a}", "not used"],
  ["{a}", "round brackets"],
  ["a \\ b", "not used"],
  ["@a", "not used"],
  ["a#b", "not used"],
  ["a?.b", "A dot belongs inside a number"],
  ["a => b", "single ="],
  ["new a", "sign such as"],
  ["\u0000", "not used"],
  ["a\u202eb", "not used"],
  ["v0", "There is no quantity"],
  ["😀", "not used"],
];

describe("every hostile text is refused in plain words, with a place inside the text", () => {
  test.each(PROBES)("%j", (text, reason) => {
    const problem = problemOf(text);
    expect(problem?.message).toContain(reason);
    expect(problem?.message).not.toMatch(/undefined|\[object|TOP|TNAME|IVAR|parse error/);
    expect(problem?.start).toBeGreaterThanOrEqual(0);
    expect(problem?.end).toBeLessThanOrEqual(text.length);
    expect(problem?.end).toBeGreaterThan(problem?.start ?? 0);
  });

  test("nothing has been put on the prototype of all objects by any of them", () => {
    const before = Reflect.ownKeys(Object.prototype).length;
    for (const [text] of PROBES) problemOf(text);
    expect(Reflect.ownKeys(Object.prototype)).toHaveLength(before);
    expect(Reflect.get({}, "y")).toBeUndefined();
  });
});

describe("bounds", () => {
  test.each([
    ["too long a text", `1${"+1".repeat(250)}`, "500 signs at the most"],
    ["100,000 terms", "1+".repeat(100_000), "500 signs at the most"],
    ["41 brackets", `${"(".repeat(41)}1${")".repeat(41)}`, "40 brackets"],
    ["41 functions", `${"abs(".repeat(41)}1${")".repeat(41)}`, "40 brackets"],
    ["41 minus signs", `${"-".repeat(41)}1`, "40 brackets"],
    ["41 nested choices", `${"1>0?".repeat(41)}1${":1".repeat(41)}`, "40 brackets"],
  ])("%s is refused", (_, text, reason) => {
    expect(problemOf(text)?.message).toContain(reason);
  });

  test("40 brackets and 500 signs are still read", () => {
    expect(readFormula(`${"(".repeat(40)}1${")".repeat(40)}`).ok).toBe(true);
    expect(readFormula(`1${"+1".repeat(249)}`).ok).toBe(true);
    expect(readFormula(`1${"^1".repeat(249)}`).ok).toBe(true);
    expect(readFormula(`${"1>0?1:".repeat(83)}1`).ok).toBe(true);
  });

  test("powers of powers answer at once, with a number that is not finite", () => {
    expect(answerOf("9^9^9^9")).toBe(Number.POSITIVE_INFINITY);
    expect(answerOf("2^1e9")).toBe(Number.POSITIVE_INFINITY);
  });
});
