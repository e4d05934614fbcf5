// What stands in the field while it is being typed: what it is read as, or why it cannot be read.

import type { NumberGiven } from "../../graph/types.ts";
import type { Reading } from "../../units/read.ts";
import type { SpanReading } from "../../units/read-span.ts";
import { showQuantity } from "../../units/show.ts";
import { spanWords } from "../../units/span-words.ts";
import { parseUnit, toSi } from "../../units/unit.ts";
import { readTyped } from "../rows/number-text.ts";
import type { Sheet } from "../sheet.ts";
import { readTypedSpan } from "./typed-span.ts";

export type TypedRead = Reading | SpanReading;

/** A text as the number of a row, or as its two ends; a bare one takes the unit that stood there before. */
export function readHand(sheet: Sheet, id: string, row: NumberGiven, text: string): TypedRead {
  const unit = sheet.hand.entry()?.unit || sheet.unitOf(id);
  return readTypedSpan(sheet, text, row.measure, unit) ?? readTyped(sheet, text, row.measure, unit);
}

/** Whether the row takes it, so that something can be worked out from it. */
export function isTaken({ min, max }: NumberGiven, read: Extract<TypedRead, { readonly ok: true }>): boolean {
  const ends = "low" in read ? [read.low, read.high] : [read.value];
  return ends.every((end) => {
    const si = toSi(end, read.unit || "1");
    return si >= (min ?? si) && si <= (max ?? si);
  });
}

/** Figures and signs alone: the unit that stood there before is meant, seen or not. */
const BARE = /^[\d\s.,+*×x()/-]+$/i;

/** Whether a bare number was read in another unit than the sheet has: whoever types it must see that. */
export function isOtherUnit(sheet: Sheet, id: string, text: string, read: TypedRead): boolean {
  const [taken, usual] = [
    read.ok ? parseUnit(read.unit)?.text : undefined,
    parseUnit(sheet.unitOf(id))?.text,
  ];
  return BARE.test(text) && taken !== undefined && usual !== undefined && taken !== usual;
}

/** "= 1,041 gal", in the unit that the sheet has for it; of what cannot be read, why. */
export function readAs(sheet: Sheet, id: string, row: NumberGiven, text: string): string {
  const read = readHand(sheet, id, row, text);
  if (!read.ok) return read.message;
  const unit = sheet.unitOf(id);
  const said = (value: number): string =>
    showQuantity(toSi(value, read.unit || "1"), row.measure, {
      ...sheet.showOptions(),
      ...(unit ? { unit } : {}),
    });
  const shown = (value: number): string =>
    showQuantity(toSi(value, read.unit || "1"), row.measure, {
      ...sheet.showOptions(),
      rounded: false,
      unit: read.unit,
    });
  const taken = isOtherUnit(sheet, id, text, read) ? `Read as ${shown(read.value)} ` : "";
  return `${taken}= ${"low" in read ? spanWords(said(read.low), said(read.high)) : said(read.value)}`;
}
