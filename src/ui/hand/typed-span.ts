// A span as it is typed into the hand.

import type { MeasureName } from "../../units/measures.ts";
import { readSpan, type SpanReading } from "../../units/read-span.ts";
import type { Sheet } from "../sheet.ts";

/** Null where the text names one number only; a bare one takes the unit that stood there before. */
export function readTypedSpan(
  sheet: Sheet,
  text: string,
  measure: MeasureName,
  unit: string | undefined,
): SpanReading | null {
  return readSpan(text, { ...sheet.readOptions(), measure, ...(unit ? { defaultUnit: unit } : {}) });
}
