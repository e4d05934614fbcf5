// Who imports whom in src, types included: no circle. Which folder may import which stands in biome.json.

import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

type Arrows = ReadonlyMap<string, readonly string[]>;

const SRC = fileURLToPath(new URL("../src", import.meta.url));
const SPECIFIER =
  /(?:^|\n)\s*(?:import|export)\b[^;'"]*?\bfrom\s*["']([^"']+)["']|(?:^|\n)\s*import\s*["']([^"']+)["']|\bimport\(\s*["']([^"']+)["']|new URL\(\s*["']([^"']+)["']/g;

/** What a text imports of its own house, as it is written there. */
function importsIn(text: string): readonly string[] {
  return [...text.matchAll(SPECIFIER)]
    .map(([, from, bare, late, worker]) => from ?? bare ?? late ?? worker ?? "")
    .filter((one) => one.startsWith("."));
}

function arrowsOf(folder: string): Arrows {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(tsx?|mjs)$/.test(name))
    .map((name) => join(folder, name));
  const known = new Set(files);
  const within = (file: string) =>
    importsIn(readFileSync(file, "utf8"))
      .map((one) => resolve(dirname(file), one))
      .filter((one) => known.has(one));
  return new Map(files.map((file) => [file, within(file)]));
}

/** Everything that an arrow leads to, near or far. */
function reachedFrom(start: string, arrows: Arrows): ReadonlySet<string> {
  const reached = new Set<string>();
  const open = [...(arrows.get(start) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (reached.has(next)) continue;
    reached.add(next);
    open.push(...(arrows.get(next) ?? []));
  }
  return reached;
}

/** Files that lead back to themselves, those of one circle together, each list in order of name. */
function circlesIn(arrows: Arrows): readonly (readonly string[])[] {
  const reached = new Map([...arrows.keys()].map((file) => [file, reachedFrom(file, arrows)]));
  const inCircle = [...arrows.keys()].filter((file) => reached.get(file)?.has(file)).sort();
  const together = (file: string) =>
    inCircle.filter((other) => reached.get(file)?.has(other) && reached.get(other)?.has(file));
  return inCircle.map(together).filter((circle, at) => circle[0] === inCircle[at]);
}

describe("who imports whom in src", () => {
  test("goes in no circle, types included", () => {
    const arrows = arrowsOf(SRC);
    expect(arrows.size).toBeGreaterThan(400);
    expect(
      circlesIn(arrows).map((circle) => circle.map((file) => relative(SRC, file).replaceAll("\\", "/"))),
    ).toEqual([]);
  });

  test("is read from every way of importing", () => {
    const text = [
      'import type { A } from "./a.ts";',
      "import {\n  b,\n  type B,\n} from './b.ts';",
      'import "../c.css";',
      'export * from "./d.ts";',
      'const e = await import("./e.ts");',
      'new Worker(new URL("./f.ts", import.meta.url));',
      'import { outside } from "outside";',
      'const { from } = { from: "./no.ts" };',
    ].join("\n");
    expect(importsIn(text)).toEqual(["./a.ts", "./b.ts", "../c.css", "./d.ts", "./e.ts", "./f.ts"]);
  });

  test("shows its circles, each once, and no file that only leads into one", () => {
    const arrows = new Map([
      ["in", ["a"]],
      ["a", ["b"]],
      ["b", ["c", "out"]],
      ["c", ["a"]],
      ["out", []],
      ["self", ["self"]],
      ["x", ["y"]],
      ["y", ["x", "a"]],
    ]);
    expect(circlesIn(arrows)).toEqual([["a", "b", "c"], ["self"], ["x", "y"]]);
  });
});
