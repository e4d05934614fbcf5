// The page's build leaves out of the tables what only whoever checks them reads: nothing in src may read it.

import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { FOR_CHECKING } from "../vite.config.ts";

const SRC = fileURLToPath(new URL("../src/", import.meta.url));

test("no file that reads a table reads what the page's build leaves out of it", () => {
  const names = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.tsx?$/.test(name),
  );
  const files = names.map((name) => ({ name, text: readFileSync(SRC + name, "utf8") }));
  const readers = files.filter(({ text }) => /from "[./]+shared\/[\w-]+\.json"/.test(text));
  expect(readers.length).toBeGreaterThan(10);
  const key = FOR_CHECKING.join("|");
  // As a member, by a bracket, or taken apart.
  const reads = new RegExp(`\\.(${key})\\b|\\["(${key})"\\]|\\{[^}:]*\\b(${key})\\b[^}:]*\\} = `);
  expect(readers.filter(({ text }) => reads.test(text)).map(({ name }) => name)).toEqual([]);
});
