// Text of a number field: what stands in it, what it is read as.

import type { Entry } from "../../document/worksheet.ts";
import { isReady } from "../../graph/readers.ts";
import { MEASURES, type MeasureName } from "../../units/measures.ts";
import { type Reading, readQuantity } from "../../units/read.ts";
import { fieldText } from "../../units/show.ts";
import { spanWords } from "../../units/span-words.ts";
import type { Sheet } from "../sheet.ts";

const plainSpaces = (text: string): string => text.replaceAll("\u00a0", " ");

/** One number of an entry as it stands in the field, with its unit. */
export function typedText(sheet: Sheet, value: number, unit: string): string {
  const { locale, currency } = sheet.showOptions();
  return plainSpaces(fieldText(value, unit, locale, currency));
}

/** What stands in the field when it gets the focus: as typed, or as shown where nothing was typed. */
export function startText(sheet: Sheet, entry: Entry | undefined, id: string, measure: MeasureName): string {
  const isClock = MEASURES[measure].form === "clock";
  const typed = (value: number) => typedText(sheet, value, entry?.unit ?? "");
  if (!isClock && entry && typeof entry.value === "number")
    return entry.low === undefined
      ? typed(entry.value)
      : spanWords(typed(entry.low), typed(entry.high ?? entry.value));
  return isReady(sheet.result(id)) ? plainSpaces(sheet.shown(id)) : "";
}

/** Reads what was typed for a measure; a bare number takes the unit that stood there before. */
export function readTyped(
  sheet: Sheet,
  text: string,
  measure: MeasureName,
  unit: string | undefined,
): Reading {
  return readQuantity(text, { ...sheet.readOptions(), measure, ...(unit ? { defaultUnit: unit } : {}) });
}
