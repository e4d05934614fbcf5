// What is typed as an answer: a number, or two as in "20 x 30", as what it tells of the rows.

import type { Card, Entry } from "../../document/worksheet.ts";
import { numberIn } from "../../graph/readers.ts";
import type { NumberGiven } from "../../graph/types.ts";
import type { Answer, Field, Told } from "../../kinds/asking.ts";
import { editText, showQuantity } from "../../units/show.ts";
import { spanWords } from "../../units/span-words.ts";
import { toSi } from "../../units/unit.ts";
import { readTypedSpan } from "../hand/typed-span.ts";
import { readTyped } from "../rows/number-text.ts";
import type { Sheet } from "../sheet.ts";

export type Read =
  | { readonly ok: true; readonly told: Told }
  | { readonly ok: false; readonly message: string };

/** The sign between two lengths, however it is typed. */
const TIMES = /\s*(?:×|\*|x|\bby\b)\s*/i;
const LETTERS = /[a-z'"]/i;

function rowOf(sheet: Sheet, kind: string, name: string): NumberGiven | null {
  const row = sheet.kinds[kind]?.rows.find((one) => one.name === name);
  return row?.row === "given" ? row : null;
}

/** Unit of a bare number. */
export function unitOfField(sheet: Sheet, card: Card, field: Field): string {
  const { units } = sheet.worksheet();
  if (field.unit) return field.unit[units === "us" ? "us" : "metric"];
  return sheet.unitOf(`${card.id}.${field.by?.[0] ?? field.row}`);
}

function one(sheet: Sheet, card: Card, name: string, text: string, unit?: string) {
  const row = rowOf(sheet, card.kind, name);
  if (!row) return { ok: false as const, message: "" };
  return readTyped(sheet, text, row.measure, unit ?? sheet.unitOf(`${card.id}.${name}`));
}

const entry = ({ value, unit }: { readonly value: number; readonly unit: string }): Answer => ({
  value,
  unit,
});

/** Two lengths; a bare first one is in the unit of the second. The longer one is the length. */
function readTwo(sheet: Sheet, card: Card, field: Field, [first, second]: readonly string[]): Read {
  const [long, wide] = field.by ?? ["", ""];
  const b = one(sheet, card, wide, second ?? "");
  if (!b.ok) return b;
  const isBare = !LETTERS.test(first ?? "") && LETTERS.test(second ?? "");
  const a = one(sheet, card, long, first ?? "", isBare ? b.unit : undefined);
  if (!a.ok) return a;
  const [length, width] = a.si >= b.si ? [a, b] : [b, a];
  const cleared = field.by?.includes(field.row) ? {} : { [field.row]: null };
  return { ok: true, told: { ...cleared, [long]: entry(length), [wide]: entry(width) } };
}

/** One number, or the two ends of one that somebody is not sure of. */
function readOne(sheet: Sheet, card: Card, field: Field, text: string): Read {
  const unit = field.by ? undefined : unitOfField(sheet, card, field);
  const row = rowOf(sheet, card.kind, field.row);
  const span = row && readTypedSpan(sheet, text, row.measure, unit ?? sheet.unitOf(`${card.id}.${row.name}`));
  const read = span ?? one(sheet, card, field.row, text, unit);
  if (!read.ok) return read;
  const cleared = Object.fromEntries((field.by ?? []).map((name) => [name, null]));
  const ends = span?.ok ? { low: span.low, high: span.high } : {};
  const told = { ...entry(read), ...ends };
  return { ok: true, told: { ...cleared, [field.row]: told, ...field.told?.(toSi(read.value, read.unit)) } };
}

/** What an answer tells; a blank one takes back what was told. */
export function readAnswer(sheet: Sheet, card: Card, field: Field, typed: string): Read {
  const text = field.plain?.(typed) ?? typed;
  const parts = field.by ? text.split(TIMES) : [text];
  if (parts.length === 2) return readTwo(sheet, card, field, parts);
  if (field.by?.includes(field.row) || parts.length > 2)
    return { ok: false, message: "Two lengths are wanted, such as 4 x 50." };
  return readOne(sheet, card, field, text);
}

/** The rows that a field fills in. */
export const filledBy = (field: Field): readonly string[] =>
  field.by?.includes(field.row) ? field.by : [field.row, ...(field.by ?? [])];

/** As it was told; without its unit where a bare number would have that. */
function textOf(sheet: Sheet, given: Entry | undefined, bare: string): string | null {
  if (!given || given.from === "default" || typeof given.value !== "number") return null;
  const { locale, currency } = sheet.showOptions();
  const unit = given.unit === bare ? "1" : given.unit;
  const typed = (value: number) => editText(value, unit, locale, currency).replaceAll("\u00a0", " ");
  const { value, low, high = value } = given;
  return low === undefined ? typed(value) : spanWords(typed(low), typed(Number(high)));
}

/** What stands in the field when the screen opens: what was told before. */
export function startOf(sheet: Sheet, card: Card, field: Field): string {
  const bare = unitOfField(sheet, card, field);
  const units = new Set(field.by?.map((row) => card.givens[row]?.unit));
  const two = field.by?.map((row) => textOf(sheet, card.givens[row], units.size > 1 ? "" : bare)) ?? [];
  if (two.length > 0 && two.every((text) => text !== null)) return two.join(" x ");
  return textOf(sheet, card.givens[field.row], field.by ? "" : bare) ?? "";
}

/** What is taken while nothing is told, in the unit in which it is asked for. */
export function usualOf(sheet: Sheet, card: Card, field: Field): string {
  const rows = field.by ?? [field.row];
  const own = field.by ? undefined : field.unit && unitOfField(sheet, card, field);
  const shown = (name: string): string => {
    const id = `${card.id}.${name}`;
    const [row, now] = [rowOf(sheet, card.kind, name), numberIn(sheet.result(id))];
    if (own === undefined || !row || now === null) return sheet.shown(id);
    return showQuantity(now, row.measure, { ...sheet.showOptions(), unit: own });
  };
  return rows.map(shown).join(" x ");
}
