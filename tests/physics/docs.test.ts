// Every relation says in which units it takes and gives its numbers, and who published it.

import { describe, expect, test } from "vitest";

const files = import.meta.glob<string>(["../../src/physics/*.ts", "../oracles/*.ts"], {
  eager: true,
  query: "?raw",
  import: "default",
});

type Export = {
  readonly name: string;
  readonly doc: string;
  readonly parameters: string;
  readonly result: string;
};

/** Exported functions of a file with the comment before each. */
function exportedFunctions(text: string): readonly Export[] {
  const pattern = /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?export function (\w+)(?:<[^>]*>)?\(/g;
  return [...text.matchAll(pattern)].map((match) => {
    const start = match.index + match[0].length;
    const end = closing(text, start);
    const result = /^\s*:\s*([^{]+?|\{[^}]*\})\s*\{/.exec(text.slice(end + 1))?.[1] ?? "";
    return { name: match[2] ?? "", doc: match[1] ?? "", parameters: text.slice(start, end), result };
  });
}

/** Position of the bracket that closes the one before a position. */
function closing(text: string, from: number): number {
  let depth = 1;
  for (let at = from; at < text.length; at++) {
    if ("({[".includes(text[at] ?? "")) depth++;
    if (")}]".includes(text[at] ?? "") && --depth === 0) return at;
  }
  return text.length;
}

/** The part of a doc comment that follows a tag, up to the next tag. */
function tag(doc: string, pattern: string): string {
  return new RegExp(`@${pattern}\\b((?:(?!\\n \\* @)[\\s\\S])*)`).exec(doc)?.[1] ?? "";
}

/** Names of parameters that are plain numbers, or several of them. */
function numericParameters(parameters: string): readonly string[] {
  const pattern =
    /(?:^|[,\n])\s*(\w+)\??(?::\s*(?:readonly )?(?:number|ArrayLike<number>|Float64Array)\b| = [\d.])/g;
  return [...parameters.matchAll(pattern)].map((match) => match[1] ?? "");
}

/** Numeric fields of exported types with a unit neither in their own or their type's comment nor at a `@param given.field`. */
function fieldsWithoutUnit(text: string): readonly string[] {
  const types = [
    ...text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?export type (\w+) =([\s\S]*?)\n\};?\n/g),
  ];
  return types.flatMap(([, doc = "", name = "", body = ""]) => {
    const fields = [
      ...body.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?readonly (\w+)\??: (?:number|Float64Array)\b/g),
    ];
    return fields
      .filter(([, comment = ""]) => !/\[[^\]]+\]/.test(comment) && !/\[[^\]]+\]/.test(doc))
      .filter(([, , field = ""]) => !new RegExp(`@param \\w+\\.${field}\\b.*\\[[^\\]]+\\]`).test(text))
      .map(([, , field = ""]) => `${name}.${field}`);
  });
}

const UNIT = /\[[^\]]+\]/;

describe.each(Object.entries(files))("%s", (_, text) => {
  test("begins with what it is for", () => {
    expect(text.startsWith("// ")).toBe(true);
  });

  test("gives every numeric field of its types a unit", () => {
    expect(fieldsWithoutUnit(text)).toEqual([]);
  });

  const functions = exportedFunctions(text);
  if (functions.length === 0) return;

  test.each(functions)(
    "$name gives each number a unit, says what it returns, and names its source",
    (one) => {
      const missing = numericParameters(one.parameters).filter(
        (name) => !UNIT.test(tag(one.doc, `param ${name}`)),
      );
      expect(missing, "parameters without a unit").toEqual([]);
      expect(tag(one.doc, "source").trim(), "@source").not.toBe("");
      if (one.result === "void") return;
      expect(tag(one.doc, "returns").trim(), "@returns").not.toBe("");
      if (/\bnumber\b|Float64Array/.test(one.result))
        expect(tag(one.doc, "returns"), "unit of @returns").toMatch(UNIT);
    },
  );
});

test("the reading of comments finds what it is to find", () => {
  const sample = [
    "/**",
    " * A.",
    " *",
    " * @param one first [m]",
    " * @param two second",
    " * @returns sum [m]",
    " */",
    "export function sum(one: number, two: number, of: { a: number }): number {",
  ].join("\n");
  const [found] = exportedFunctions(sample);
  expect(found).toMatchObject({ name: "sum", result: "number" });
  expect(numericParameters(found?.parameters ?? "")).toEqual(["one", "two"]);
  expect(tag(found?.doc ?? "", "param two")).not.toMatch(UNIT);
  expect(tag(found?.doc ?? "", "source")).toBe("");
  const fields =
    "/** T. */\nexport type T = {\n  readonly bare: number;\n  /** [s] */\n  readonly time: number;\n};\n";
  expect(fieldsWithoutUnit(fields)).toEqual(["T.bare"]);
});
