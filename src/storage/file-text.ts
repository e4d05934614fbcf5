// A worksheet as a file, with the rain record inside: text that a person can read and another program can, too.

import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { type PackedRecord, packRecord } from "./packed-record.ts";

/** The records that a worksheet names, packed, out of those at hand. */
export function packNamed(worksheet: Worksheet, records: ReadonlyMap<string, DailyRecord>): PackedRecord[] {
  return recordNames(worksheet).flatMap((key) => {
    const record = records.get(key);
    return record ? [packRecord(record)] : [];
  });
}

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
