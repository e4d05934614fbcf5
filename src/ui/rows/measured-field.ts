// The field in which a measured value is typed: its name, and how a text gets from it into the worksheet.

import type { Card } from "../../document/worksheet.ts";
import type { Row } from "../../graph/types.ts";
import type { MeasureName } from "../../units/measures.ts";
import type { Sheet } from "../sheet.ts";
import { readTyped } from "./number-text.ts";

const END = "-measured";

export const measuredField = {
  of: (quantity: string): string => `${quantity}${END}`,
  /** The quantity that is measured in a field; null where the field is another one. */
  quantityOf: (field: string): string | null => (field.endsWith(END) ? field.slice(0, -END.length) : null),
};

/** Enters a measured value, an empty text taking it out; why it cannot be read, or null. */
export function enterMeasured(
  sheet: Sheet,
  place: { readonly card: Card; readonly row: Row; readonly measure: MeasureName },
  text: string,
): string | null {
  const { card, row, measure } = place;
  if (text.trim() === "") {
    sheet.edit.measured(card, row, null);
    return null;
  }
  const read = readTyped(sheet, text, measure, card.measured[row.name]?.unit);
  if (!read.ok) return read.message;
  sheet.edit.measured(card, row, { value: read.value, unit: read.unit, from: "measured" });
  return null;
}
