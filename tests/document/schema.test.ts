// UPDATE=1 writes the file anew from the shape.
import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { worksheetJsonSchema } from "../../src/document/shape.ts";

const FILE = new URL("../../shared/worksheet.schema.json", import.meta.url);

test("the schema handed out is the one that the checker has", () => {
  const made = `${JSON.stringify(worksheetJsonSchema(), null, 2)}\n`;
  if (process.env.UPDATE === "1") writeFileSync(FILE, made);
  expect(readFileSync(FILE, "utf8")).toBe(made);
});
