// A starter as tests of whole worksheets take it: its record made up as long as written with LONG=1, else shorter.

import { readFileSync } from "node:fs";
import { setGiven } from "../src/document/edits.ts";
import type { Worksheet } from "../src/document/worksheet.ts";
import { recordKey } from "../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../src/storage/file.ts";
import { tries } from "./tries.ts";

export const STARTERS = new URL("../templates/", import.meta.url);

/** All of its twenty years with LONG=1, else so many: what is asked of it must hold of a record of any length. */
export function starter(name: string, usual: number): Worksheet {
  const read = worksheetFromFileText(readFileSync(new URL(name, STARTERS), "utf8"), recordKey);
  if (!read.ok) throw new Error(name);
  const years = tries(20, usual);
  return years === 20
    ? read.worksheet
    : setGiven(read.worksheet, "weather", "years", { value: years, unit: "1" });
}
