// A typed number put into the worksheet, by the field that shows it or for a field that is not on the page.

import { withFrom } from "../../document/still-from.ts";
import type { Card, Entry } from "../../document/worksheet.ts";
import type { NumberGiven } from "../../graph/types.ts";
import type { Reading } from "../../units/read.ts";
import type { Sheet } from "../sheet.ts";
import { readTyped } from "./number-text.ts";

/** What is kept of a number. */
export function entryOf(card: Card, row: NumberGiven): Entry | undefined {
  if (row.stored === "card") return row.name === "price" ? card.price : card.life;
  return card.givens[row.name];
}

/** What a text says as the number of a row; a bare number is in the unit that stood there before. */
function readNumber(sheet: Sheet, card: Card, row: NumberGiven, text: string): Reading {
  const unit = entryOf(card, row)?.unit || sheet.unitOf(`${card.id}.${row.name}`);
  return readTyped(sheet, text, row.measure, unit);
}

/** Enters a text that can be read; one that cannot changes nothing. */
export function enterNumber(sheet: Sheet, card: Card, row: NumberGiven, text: string): Reading {
  const read = readNumber(sheet, card, row, text);
  if (!read.ok) return read;
  sheet.edit.given(card, row, withFrom({ value: read.value, unit: read.unit }, [entryOf(card, row)]), true);
  return read;
}
