// What a page that is gone left typed: entered where it can be read, found again in its field where it cannot.

import type { InstantStore } from "../storage/instant-store.ts";
import { isTypedLeft, type TypedTexts, typedLeft } from "../storage/typed-texts.ts";
import { type CardRow, rowAt } from "../ui/row-at.ts";
import { cellField, enterCell } from "../ui/rows/enter-cell.ts";
import { enterNumber } from "../ui/rows/enter-number.ts";
import { enterMeasured, measuredField } from "../ui/rows/measured-field.ts";
import { titleField } from "../ui/rows/typed-text.ts";
import type { Sheet } from "../ui/sheet.ts";
import type { Tab } from "./this-tab.ts";

/** Makes ours what pages that are gone left typed. */
export async function adoptTyped(
  store: InstantStore,
  texts: TypedTexts,
  tab: Pick<Tab, "isGone">,
): Promise<void> {
  const left = typedLeft(store);
  const gone = await Promise.all(left.map((note) => tab.isGone(note, () => isTypedLeft(store, note))));
  for (const [at, note] of left.entries()) if (gone[at]) texts.adopt(note);
}

function enterGiven(sheet: Sheet, { card, row }: CardRow, text: string): boolean {
  if (row.row === "given") return text.trim() !== "" && enterNumber(sheet, card, row, text).ok;
  if (row.row !== "text") return false;
  sheet.edit.given(card, row, { value: text, unit: "" });
  return true;
}

function enterMeasurement(sheet: Sheet, { card, row }: CardRow, text: string): boolean {
  if (!("measure" in row) || row.measure === "text" || row.measure === "series") return false;
  return text.trim() !== "" && enterMeasured(sheet, { card, row, measure: row.measure }, text) === null;
}

function enterTitle(sheet: Sheet, owner: string | null, title: string): boolean {
  if (owner === null) {
    sheet.edit.page({ title });
    return true;
  }
  const card = sheet.worksheet().cards.find(({ id }) => id === owner);
  if (card) sheet.edit.renameCard(card, title);
  return card !== undefined;
}

function enterInList(sheet: Sheet, quantity: string, at: readonly number[], text: string): boolean {
  const place = rowAt(sheet, quantity);
  if (place?.row.row !== "list") return false;
  return enterCell(sheet, { card: place.card, row: place.row }, at, text) === null;
}

/** Whether the text is in the worksheet now. */
function enter(sheet: Sheet, field: string, text: string): boolean {
  const owner = titleField.ownerOf(field);
  if (owner !== undefined) return enterTitle(sheet, owner, text);
  const cell = cellField.placeOf(field);
  if (cell) return enterInList(sheet, cell.quantity, cell.at, text);
  const quantity = measuredField.quantityOf(field);
  const place = rowAt(sheet, quantity ?? field);
  if (!place) return false;
  return (quantity === null ? enterGiven : enterMeasurement)(sheet, place, text);
}

/** Enters what was left typed in the worksheet that is being opened, each as a step of its own. */
export function enterLeft(sheet: Sheet, texts: Readonly<Record<string, string>>): void {
  for (const [field, text] of Object.entries(texts)) {
    if (!enter(sheet, field, text)) continue;
    sheet.edit.typed(field, null);
    sheet.edit.settle();
  }
}
