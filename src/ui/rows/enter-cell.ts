// A text typed in one field of a list put into the worksheet: a month's figure, a side of a point, a crop's share.

import type { Card, Content } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";
import type { MeasureName } from "../../units/measures.ts";
import { monthlyIn, monthlyUnit } from "../../units/monthly.ts";
import { unitFor } from "../../units/show.ts";
import { tidy } from "../../units/tidy.ts";
import { fromSi } from "../../units/unit.ts";
import type { Sheet } from "../sheet.ts";
import { readTyped } from "./number-text.ts";

export type ListPlace = { readonly card: Card; readonly row: ListGiven };
export type Point = readonly [number, number];

const BETWEEN = "/";

/** Names a field of a list: the quantity, and where in the list it stands. */
export const cellField = {
  of: (quantity: string, ...at: readonly number[]): string => [quantity, ...at].join(BETWEEN),
  /** The quantity and the place in its list; null where the field is none of a list. */
  placeOf: (field: string): { readonly quantity: string; readonly at: readonly number[] } | null => {
    const [quantity = "", ...at] = field.split(BETWEEN);
    return at.length > 0 ? { quantity, at: at.map(Number) } : null;
  },
};

const entryOf = ({ card, row }: ListPlace) => card.givens[row.name];
const listOf = (place: ListPlace): unknown => entryOf(place)?.value ?? place.row.default;

const monthsMeasure = ({ row }: ListPlace): MeasureName => row.measures?.[0] ?? "factor";
const storedUnit = (place: ListPlace): string => entryOf(place)?.unit ?? place.row.unit ?? "";

/** The unit in which the twelve figures are shown and typed. */
export const monthsUnit = (sheet: Sheet, place: ListPlace): string =>
  monthlyUnit(monthsMeasure(place), storedUnit(place), sheet.showOptions().units);

/** The twelve figures in that unit, null where none is given. */
export function monthsOf(sheet: Sheet, place: ListPlace): readonly (number | null)[] {
  const list = listOf(place);
  const [stored, unit] = [storedUnit(place), monthsUnit(sheet, place)];
  return SHORT_MONTHS.map((_, month) =>
    Array.isArray(list) && typeof list[month] === "number" ? monthlyIn(list[month], stored, unit) : null,
  );
}

function isPoint(item: unknown): item is Point {
  return Array.isArray(item) && item.length === 2 && item.every((part) => typeof part === "number");
}

export function pointsOf(place: ListPlace): readonly Point[] {
  const list = entryOf(place)?.value;
  return Array.isArray(list) ? list.filter(isPoint) : [];
}

export const pointMeasure = ({ measures }: ListGiven, side: 0 | 1): MeasureName =>
  measures?.[side] ?? measures?.[0] ?? "factor";

/** Units of a point's two sides. */
export function pointUnits(sheet: Sheet, place: ListPlace): readonly [string, string] {
  const [across, up] = (entryOf(place)?.unit ?? "").split(",").map((part) => part.trim());
  const usual = (side: 0 | 1) => unitFor(pointMeasure(place.row, side), sheet.showOptions().units);
  return [across || usual(0), up || across || usual(1)];
}

export function contentsOf(place: ListPlace): readonly Content[] {
  const list = listOf(place);
  return Array.isArray(list) ? (list as readonly Content[]) : [];
}

function put(sheet: Sheet, { card, row }: ListPlace, value: readonly unknown[], unit: string): null {
  sheet.edit.given(card, row, value.length > 0 ? { value: [...value] as never, unit } : null);
  sheet.edit.settle();
  return null;
}

/** Points keep themselves in order of their first number. */
export function putPoints(sheet: Sheet, place: ListPlace, points: readonly Point[]): void {
  const sorted = [...points].sort((one, other) => one[0] - other[0]).map((point) => [...point]);
  put(sheet, place, sorted, pointUnits(sheet, place).join(", "));
}

function enterMonth(sheet: Sheet, place: ListPlace, month: number, text: string): string | null {
  const unit = monthsUnit(sheet, place);
  const read = readTyped(sheet, text, monthsMeasure(place), unit);
  if (!read.ok) return `${SHORT_MONTHS[month]}: ${read.message}`;
  const typed = unit === "" ? read.value : monthlyIn(read.value, read.unit, unit);
  const next = monthsOf(sheet, place).map((value, at) => (at === month ? typed : (value ?? 0)));
  return put(sheet, place, next, unit);
}

function enterSide(sheet: Sheet, place: ListPlace, index: number, side: 0 | 1, text: string): string | null {
  const unit = pointUnits(sheet, place)[side];
  const read = readTyped(sheet, text, pointMeasure(place.row, side), unit);
  if (!read.ok) return `Point ${index + 1}: ${read.message}`;
  const number = tidy(fromSi(read.si, unit));
  const next = pointsOf(place).map(
    (point, at): Point => (at !== index ? point : side === 0 ? [number, point[1]] : [point[0], number]),
  );
  putPoints(sheet, place, next);
  return null;
}

function enterShare(sheet: Sheet, place: ListPlace, index: number, text: string): string | null {
  const read = readTyped(sheet, text, "share", "%");
  if (!read.ok) return `Share of the bed: ${read.message}`;
  if (read.si < 0 || read.si > 1) return "Share of the bed: from nought to 100 %.";
  const next = contentsOf(place).map((content, at) =>
    at === index ? { ...content, share: read.si } : content,
  );
  return put(sheet, place, next, "");
}

/**
 * Enters a text that can be read; one that cannot changes nothing.
 *
 * @param at month from nought; or point and side; or crop, for its share
 * @returns why it cannot be read, or null
 */
export function enterCell(
  sheet: Sheet,
  place: ListPlace,
  at: readonly number[],
  text: string,
): string | null {
  const [first = 0, side] = at;
  if (place.row.of === "points") return enterSide(sheet, place, first, side === 1 ? 1 : 0, text);
  if (place.row.of === "contents") return enterShare(sheet, place, first, text);
  return enterMonth(sheet, place, first, text);
}
