// A worksheet as a file, with the rain record inside: text that a person can read and another program can, too.

import { parseJson } from "../document/check.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { type BundleReading, type KeyOf, packNamed, readBundle } from "./bundle.ts";

/** Characters of a file at the most; a century of days with every column stays below a third of it. */
const LONGEST_FILE = 32_000_000;

/**
 * The text of a file that holds a worksheet and the records it names.
 *
 * @param worksheet the worksheet
 * @param records records at hand, by content key
 */
export function worksheetToFileText(worksheet: Worksheet, records: ReadonlyMap<string, DailyRecord>): string {
  const text = JSON.stringify(worksheet, null, 2);
  const packed = packNamed(worksheet, records).map((record) => `    ${JSON.stringify(record)}`);
  if (packed.length === 0) return `${text}\n`;
  // One line a record: thousands of days, each on its own line, would bury the worksheet.
  return `${text.slice(0, -"\n}".length)},\n  "records": [\n${packed.join(",\n")}\n  ]\n}\n`;
}

/**
 * Reads the text of a file: a worksheet, with or without records inside.
 *
 * @param keyOf content key of a record, worked out anew
 * @returns the worksheet and its records, or every place that is wrong
 */
export function worksheetFromFileText(text: string, keyOf: KeyOf): BundleReading {
  const parsed = parseJson(text, LONGEST_FILE);
  return parsed.ok ? readBundle(parsed.data, keyOf) : { ok: false, problems: [parsed.problem] };
}
