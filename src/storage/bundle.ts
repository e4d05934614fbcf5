// A worksheet together with the records it names, as files and links carry it: the worksheet's own keys and `records`.

import { readWorksheet, type WorksheetReading } from "../document/check.ts";
import { renameRecord } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { unpackRecord } from "./packed-record.ts";

/** Content key of a record, worked out from its days and columns. */
export type KeyOf = (record: DailyRecord) => string;

export type Bundle = {
  readonly worksheet: Worksheet;
  readonly records: readonly DailyRecord[];
  readonly readOnly: boolean;
  readonly notes: readonly string[];
};

export type BundleReading =
  | ({ readonly ok: true } & Bundle)
  | Extract<WorksheetReading, { readonly ok: false }>;

const MOST_RECORDS = 20;

function withRecord(bundle: Bundle, packed: unknown, index: number, keyOf: KeyOf): Bundle {
  const record = unpackRecord(packed);
  if (!record) {
    return {
      ...bundle,
      notes: [...bundle.notes, `Rain record ${index + 1} could not be read and was left out.`],
    };
  }
  // A sender's key is not believed: under it a changed record could take the place of one of the user's own.
  const key = keyOf(record);
  const worksheet = renameRecord(bundle.worksheet, record.key, key);
  const sure = key === record.key ? record : Object.freeze({ ...record, key });
  return { ...bundle, worksheet, records: [...bundle.records, sure] };
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Reads a worksheet with or without records inside. A record that is wrong is left out and noted. */
export function readBundle(data: unknown, keyOf: KeyOf): BundleReading {
  const { records: packed, ...rest } = isObject(data) ? data : { records: undefined };
  const reading = readWorksheet(isObject(data) ? rest : data);
  if (!reading.ok) return reading;
  const { worksheet, readOnly, notes } = reading;
  const list = Array.isArray(packed) ? packed.slice(0, MOST_RECORDS) : [];
  const start: Bundle = { worksheet, readOnly, notes, records: [] };
  return {
    ok: true,
    ...list.reduce<Bundle>((bundle, one, index) => withRecord(bundle, one, index, keyOf), start),
  };
}
