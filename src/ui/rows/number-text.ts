// Text of a number field: what stands in it, what a key makes of it, what it is read as.

import type { Entry } from "../../document/worksheet.ts";
import { isReady } from "../../graph/readers.ts";
import type { NumberGiven } from "../../graph/types.ts";
import { MEASURES, type MeasureName } from "../../units/measures.ts";
import { type Reading, readQuantity } from "../../units/read.ts";
import { editText } from "../../units/show.ts";
import { type SliderRange, sliderRange, stepFor } from "../../units/step.ts";
import { fromSi } from "../../units/unit.ts";
import type { Sheet } from "../sheet.ts";

const plainSpaces = (text: string): string => text.replaceAll("\u00a0", " ");

/** What stands in the field when it gets the focus: as typed, or as shown where nothing was typed. */
export function startText(sheet: Sheet, entry: Entry | undefined, id: string, measure: MeasureName): string {
  const { locale, currency } = sheet.showOptions();
  const isClock = MEASURES[measure].form === "clock";
  if (!isClock && entry && typeof entry.value === "number")
    return plainSpaces(editText(entry.value, entry.unit, locale, currency));
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

const tidy = (value: number): number => Number(value.toPrecision(12));

/** The text one step up or down; unchanged where the text is no number. */
export function stepped(sheet: Sheet, reading: Reading, direction: 1 | -1, coarse: boolean): string | null {
  if (!reading.ok) return null;
  const { locale, currency } = sheet.showOptions();
  const step = stepFor(reading.value, reading.unit) * (coarse ? 10 : 1);
  return plainSpaces(editText(tidy(reading.value + direction * step), reading.unit, locale, currency));
}

/** The text of a place on the slider. */
export function slid(sheet: Sheet, value: number, unit: string): string {
  const { locale, currency } = sheet.showOptions();
  return plainSpaces(editText(tidy(value), unit, locale, currency));
}

/** Ends and step of the slider for a row and what was read. */
export function rangeFor(row: NumberGiven, reading: Reading): SliderRange | null {
  if (!reading.ok) return null;
  const limit = (si: number | undefined): number | undefined =>
    si === undefined ? undefined : fromSi(si, reading.unit || "1");
  return sliderRange(reading.value, reading.unit, limit(row.min), limit(row.max));
}
