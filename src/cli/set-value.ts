// `--set NAME=VALUE`: finds the row, reads the value as the row wants it, and makes the edit.

import { type Change, withChanges } from "../document/changes.ts";
import type { Card, Entry, Worksheet } from "../document/worksheet.ts";
import { inCurrency } from "../graph/in-currency.ts";
import { keepConditions } from "../graph/keep-conditions.ts";
import type { CardKinds, Given, ListGiven, NumberGiven, Row } from "../graph/types.ts";
import { parseIsoDate, parseMonthDay } from "../units/calendar.ts";
import { isPlain } from "../units/dimension.ts";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import { currencyProblem } from "../units/other-money.ts";
import { type ReadOptions, readQuantity } from "../units/read.ts";
import { readSpan } from "../units/read-span.ts";
import { unitFor } from "../units/show.ts";
import { dimensionOf } from "../units/unit.ts";
import { UsageError } from "./usage.ts";

/** The card and row of a name; wrong usage where there is none. */
export function findRow(
  worksheet: Worksheet,
  kinds: CardKinds,
  name: string,
): { readonly card: Card; readonly row: Row } {
  const [id, rowName, ...more] = name.split(".");
  const card = worksheet.cards.find((candidate) => candidate.id === id);
  if (!card || rowName === undefined || more.length > 0)
    throw new UsageError(`No card of this worksheet has a quantity ${name}.`);
  const row = kinds[card.kind]?.rows.find((candidate) => candidate.name === rowName);
  if (!row) throw new UsageError(`${name} is not a quantity of a ${card.kind}.`);
  return { card, row };
}

/** A bare number is taken only where there is no unit to say. */
function readAs(measure: MeasureName, currency: string): ReadOptions {
  const plain = isPlain(dimensionOf(MEASURES[measure].si));
  return { measure, locale: "en-US", currency, ...(plain ? { defaultUnit: "1" } : {}) };
}

/** A number as it is typed for a quantity of that measure. */
export function quantityEntry(
  name: string,
  text: string,
  measure: MeasureName,
  currency: string,
): Entry & { readonly value: number } {
  const reading = readQuantity(text, readAs(measure, currency));
  if (!reading.ok) throw new UsageError(`${name}: ${reading.message} ("${text}")`);
  return { value: reading.value, unit: reading.unit };
}

/** A number or a span, as it is typed for a quantity that may be set. */
function spanEntry(
  name: string,
  text: string,
  measure: MeasureName,
  currency: string,
): Entry & { readonly value: number } {
  const span = readSpan(text, readAs(measure, currency));
  if (span === null) return quantityEntry(name, text, measure, currency);
  if (!span.ok) throw new UsageError(`${name}: ${span.message} ("${text}")`);
  const { value, unit, low, high } = span;
  return { value, unit, low, high };
}

const list = (text: string): readonly string[] =>
  text
    .split(",")
    .map((item) => item.trim())
    .filter((item) => item !== "");

function monthsEntry(name: string, text: string, row: ListGiven, currency: string): Entry {
  const items = list(text);
  if (items.length !== 12) throw new UsageError(`${name} takes twelve numbers, not ${items.length}.`);
  const measure = row.measures?.[0] ?? "factor";
  const unit = row.unit || unitFor(measure, "metric");
  const last = items[11] ?? "";
  const own = /^[-+.\d]+$/.test(last) ? unit : last.replace(/^[-+.\d\s]+/, "");
  const entries = items.map((item) =>
    quantityEntry(name, /^[-+.\d]+$/.test(item) && own !== "1" ? `${item} ${own}` : item, measure, currency),
  );
  return { value: entries.map((entry) => entry.value as number), unit: entries[0]?.unit ?? "" };
}

function contentsEntry(name: string, text: string): Entry {
  const items = list(text).map((item) => {
    const [crop, planted, share, ...more] = item.split(/\s+/);
    const number =
      share === undefined ? 1 : share.endsWith("%") ? Number(share.slice(0, -1)) / 100 : Number(share);
    if (!crop || !planted || !parseMonthDay(planted) || !Number.isFinite(number) || more.length > 0) {
      throw new UsageError(`${name} takes "crop MM-DD share", comma-separated, not "${item}".`);
    }
    return { crop, planted, share: number };
  });
  return { value: items, unit: "" };
}

function listEntry(name: string, text: string, row: ListGiven, currency: string): Entry {
  if (row.of === "months") return monthsEntry(name, text, row, currency);
  if (row.of === "contents") return contentsEntry(name, text);
  throw new UsageError(`${name} cannot be set from the command line.`);
}

function dateEntry(name: string, text: string, form: "month_day" | "day"): Entry {
  const good = form === "day" ? parseIsoDate(text) !== null : parseMonthDay(text) !== null;
  if (!good)
    throw new UsageError(`${name} is a date ${form === "day" ? "YYYY-MM-DD" : "MM-DD"}, not "${text}".`);
  return { value: text, unit: "" };
}

function linkEntry(name: string, text: string, many: boolean, worksheet: Worksheet): Entry {
  const ids = many ? list(text) : [text];
  for (const id of ids)
    if (!worksheet.cards.some((card) => card.id === id))
      throw new UsageError(`${name}: no card is called ${id}.`);
  return { value: many ? ids : (ids[0] ?? null), unit: "" };
}

function givenEntry(name: string, text: string, row: Given, worksheet: Worksheet): Entry {
  // "none" unfits what was given, unless it is one of the words that may be chosen.
  const isWord = row.row === "choice" && row.options.some((option) => option.word === text);
  if (text === "none" && !isWord) return { value: null, unit: "" };
  switch (row.row) {
    case "given":
      return spanEntry(name, text, row.measure, worksheet.currency);
    case "choice":
      if (!isWord) {
        throw new UsageError(
          `${name} is one of ${row.options.map((option) => option.word).join(", ")}, not "${text}".`,
        );
      }
      return { value: text, unit: "" };
    case "link":
      return linkEntry(name, text, row.many, worksheet);
    case "date":
      return dateEntry(name, text, row.form);
    case "text":
      return { value: text, unit: "" };
    default:
      return listEntry(name, text, row, worksheet.currency);
  }
}

/** A row that stands for a measured number: it is worked out, and may be measured. */
function measuredEntry(name: string, text: string, row: Row, currency: string): Entry | null {
  if (
    (row.row !== "formula" && row.row !== "output") ||
    !row.measurable ||
    row.measure === "text" ||
    row.measure === "series"
  ) {
    throw new UsageError(`${name} is worked out; it can be neither given nor measured.`);
  }
  return text === "none" ? null : { ...spanEntry(name, text, row.measure, currency), from: "measured" };
}

const WORKED_OUT: ReadonlySet<Row["row"]> = new Set(["formula", "output", "gather", "user_formula"]);

/** Which entry of which card a name stands for. */
function targetOf(card: Card, row: Row): Omit<Change, "entry"> {
  if (row.row === "given" && row.stored === "card") {
    return { card: card.id, part: row.name === "price" ? "price" : "life", row: row.name };
  }
  return { card: card.id, part: WORKED_OUT.has(row.row) ? "measured" : "givens", row: row.name };
}

const isCurrency = (row: Row): boolean => row.row === "text" && row.of === "currency";

function currencyNamed(name: string, text: string): string {
  const problem = text.trim() === "" ? "It says nothing." : currencyProblem(text.trim());
  if (problem !== null) throw new UsageError(`${name}: ${problem}`);
  return text.trim();
}

/** The change that sets one quantity. */
export function changeTo(worksheet: Worksheet, kinds: CardKinds, name: string, text: string): Change {
  const { card, row } = findRow(worksheet, kinds, name);
  if (isCurrency(row)) throw new UsageError(`${name} is the whole worksheet's, not one plan's.`);
  const target = targetOf(card, row);
  if (target.part === "measured") {
    return { ...target, entry: measuredEntry(name, text, row, worksheet.currency) };
  }
  if (target.part !== "givens") {
    const { measure } = row as NumberGiven;
    return {
      ...target,
      entry: text === "none" ? null : spanEntry(name, text, measure, worksheet.currency),
    };
  }
  return { ...target, entry: givenEntry(name, text, row as Given, worksheet) };
}

/** The worksheet with one quantity set. */
export function setValue(worksheet: Worksheet, kinds: CardKinds, name: string, text: string): Worksheet {
  const { card, row } = findRow(worksheet, kinds, name);
  if (isCurrency(row)) return inCurrency(worksheet, kinds, currencyNamed(name, text));
  const change = changeTo(worksheet, kinds, name, text);
  return keepConditions(withChanges(worksheet, [change]), kinds, card.id, row, change.entry !== null);
}
