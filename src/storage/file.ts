// A worksheet out of the text of a file, with the rain record inside.

import { parseJson } from "../document/check.ts";
import { type BundleReading, type KeyOf, readBundle } from "./bundle.ts";

/** Characters of a file at the most; a century of days with every column stays below a third of it. */
const LONGEST_FILE = 32_000_000;

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
