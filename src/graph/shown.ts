// Any result as a reader sees it: numbers with their unit, words by their labels, links by the titles of their cards.

import type { Entry, Worksheet } from "../document/worksheet.ts";
import { dayNumber, parseIsoDate, parseMonthDay } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import { type ShowOptions, showNumber, showQuantity, unitLabel } from "../units/show.ts";
import { safeLocale } from "../units/signs.ts";
import { fromSi, parseUnit, toSi } from "../units/unit.ts";
import { entryAt, rowNamed } from "./card-plans.ts";
import { filledWith } from "./fill.ts";
import { type Graph, type GraphNode, nodeOf } from "./nodes.ts";
import type { Results } from "./results.ts";
import { measureOf } from "./rows.ts";
import type { ListGiven, QuantityId, Result, Row, Value } from "./types.ts";
import { shownMeasure, siUnitOfNode } from "./unit-of.ts";

const MILLISECONDS = 1000;
/** Any leap year: a day of the year is shown without its year. */
const SOME_LEAP_YEAR = 2000;

/** The entry behind a node that is read from the document. */
export function entryOfNode(worksheet: Worksheet, node: GraphNode): Entry | undefined {
  const card = worksheet.cards.find(({ id }) => id === node.card);
  const { work, row } = node;
  if (!card || !row) return undefined;
  if (work.kind === "measured") return entryAt(card.measured, row.name);
  if (work.kind !== "entry") return undefined;
  if (work.place === "card") return row.name === "life" ? card.life : card.price;
  return entryAt(card.givens, row.name);
}

/** What a quantity is called: its row's label, or the user's own word for it. */
export function labelOf(graph: Graph, worksheet: Worksheet, id: QuantityId): string {
  const node = nodeOf(graph, id);
  const row = node?.row;
  if (!node || !row) return id;
  if (row.row !== "user_formula" || row.called === undefined) return row.label;
  const card = worksheet.cards.find((candidate) => candidate.id === node.card);
  const called = entryAt(card?.givens, row.called)?.value;
  const usual = node.kind && rowNamed(node.kind, row.called);
  if (typeof called === "string" && called !== "") return called;
  return usual?.row === "text" ? usual.default : row.label;
}

/** The title of a card, or its id where there is no such card. */
export function titleOf(worksheet: Worksheet, card: string): string {
  return worksheet.cards.find(({ id }) => id === card)?.title || card;
}

const dateForms = new Map<string, Intl.DateTimeFormat>();

function dateForm(locale: string, withYear: boolean): Intl.DateTimeFormat {
  const key = `${locale} ${withYear}`;
  const known = dateForms.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(safeLocale(locale), {
    timeZone: "UTC",
    month: "short",
    day: "numeric",
    ...(withYear ? { year: "numeric" as const } : {}),
  });
  dateForms.set(key, made);
  return made;
}

function dateText(dayNumberGiven: number, locale: string, withYear: boolean): string {
  return dateForm(locale, withYear).format(dayNumberGiven * DAY * MILLISECONDS);
}

/** `YYYY-MM-DD` or `MM-DD` as a date of the locale; any other text as it is. */
export function textOrDate(text: string, locale: string): string {
  const day = parseIsoDate(text);
  if (day !== null) return dateText(day, locale, true);
  const parsed = parseMonthDay(text);
  return parsed ? dateText(dayNumber(SOME_LEAP_YEAR, parsed.month, parsed.day), locale, false) : text;
}

function shownWord(worksheet: Worksheet, row: Row | null, word: string, options: ShowOptions): string {
  if (row && "options" in row) return row.options?.find((option) => option.word === word)?.label ?? word;
  if (row?.row === "link") return titleOf(worksheet, word);
  const mayBeDate = row?.row === "date" || row?.row === "output";
  return mayBeDate ? textOrDate(word, options.locale) : word;
}

/** Whether what stands there is a usual value as its table has it. */
export const isUsual = ({ work }: GraphNode): boolean => work.kind === "pick" || work.kind === "entry";

/** A number as it is shown; one that was typed is never rounded, a usual one to no more than its table gave. */
function shownNumber(worksheet: Worksheet, node: GraphNode, value: number, given: ShowOptions): string {
  const entry = entryOfNode(worksheet, node);
  const options = entry ? { ...given, rounded: false } : { ...given, usual: isUsual(node) };
  const typed = entry?.unit;
  const unit = node.work.kind === "formula" && node.work.userUnit ? node.work.userUnit : typed;
  const measure = shownMeasure(node);
  if (measure) return showQuantity(value, measure, unit ? { ...options, unit } : options);
  const own = unit || siUnitOfNode(node);
  return `${showNumber(unit ? fromSi(value, unit) : value, 4, options.locale)} ${unitLabel(own)}`.trim();
}

function shownMonths(row: ListGiven, numbers: readonly number[], options: ShowOptions): string {
  const measure = row.measures?.[0] ?? "factor";
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return `${showQuantity(least, measure, options)} to ${showQuantity(most, measure, options)}`;
}

function shownContent(row: ListGiven, item: unknown): string {
  const word = typeof item === "object" && item !== null && "crop" in item ? String(item.crop) : "";
  return row.crops?.find((crop) => crop.word === word)?.label ?? word;
}

function shownList(
  worksheet: Worksheet,
  row: Row | null,
  list: readonly unknown[],
  options: ShowOptions,
): string {
  if (list.length === 0) return "none";
  if (row?.row === "link") return list.map((id) => titleOf(worksheet, String(id))).join(", ");
  if (row?.row === "list" && row.of === "contents")
    return list.map((item) => shownContent(row, item)).join(", ");
  if (row?.row === "list" && row.of === "months") return shownMonths(row, list as number[], options);
  if (row?.row === "list") return `${list.length} points`;
  if (row?.row === "gather" && row.take === "id")
    return list.map((id) => titleOf(worksheet, String(id))).join(", ");
  return list.length === 1 ? "1 value" : `${list.length} values`;
}

/** A value of a node as a reader sees it. */
export function shownOf(worksheet: Worksheet, node: GraphNode, value: Value, options: ShowOptions): string {
  if (value === null) return "";
  if (typeof value === "number") return shownNumber(worksheet, node, value, options);
  if (typeof value === "string") return shownWord(worksheet, node.row, value, options);
  if (value instanceof Float64Array || value instanceof Uint8Array) return `${value.length} values`;
  return Array.isArray(value) ? shownList(worksheet, node.row, value, options) : "";
}

/** A stored entry as a reader sees it, in the unit it was typed in; a number that is not sure with both its ends. */
export function shownEntry(
  worksheet: Worksheet,
  row: Row | null,
  entry: Entry,
  options: ShowOptions,
): string {
  const { value, unit, low, high } = entry;
  if (value === null) return "none";
  if (typeof value === "string") return shownWord(worksheet, row, value, options);
  const si = (number: number): number => (parseUnit(unit) ? toSi(number, unit) : number);
  if (typeof value !== "number") {
    const list = value.map((item) => (typeof item === "number" ? si(item) : item));
    return shownList(worksheet, row, list, options);
  }
  const measure = parseUnit(unit) ? measureOf(row) : null;
  const text = (number: number): string =>
    measure
      ? showQuantity(si(number), measure, { ...options, rounded: false, ...(unit ? { unit } : {}) })
      : `${showNumber(number, 4, options.locale)} ${unitLabel(unit)}`.trim();
  return low === undefined || high === undefined ? text(value) : `${text(low)} to ${text(high)}`;
}

/** What stands where an answer is still to come and none was there before. */
export const NOT_YET = "…";

/** A result as a reader sees it: its value, the last one while it is pending, or the reason why there is none. */
export function shownResult(
  worksheet: Worksheet,
  node: GraphNode,
  result: Result,
  options: ShowOptions,
): string {
  if (result.state === "ready") return shownOf(worksheet, node, result.value, options);
  if (result.state === "pending")
    return result.last === null ? NOT_YET : shownOf(worksheet, node, result.last, options);
  return result.state === "none" ? result.reason : result.problem.text;
}

/** Significant figures of a number within a sentence: what a gardener would say aloud. */
const IN_A_SENTENCE = 2;

/**
 * Any quantity as a reader sees it; "" where there is no such quantity.
 * @param options units, locale and currency; a given is shown in the unit it was typed in
 */
export function shownValue(
  graph: Graph,
  worksheet: Worksheet,
  results: Results,
  id: QuantityId,
  options: ShowOptions,
): string {
  const node = nodeOf(graph, id);
  const result = results.get(id);
  if (!node && result?.state === "pending") return NOT_YET;
  if (!node || !result) return "";
  const text = shownResult(worksheet, node, result, options);
  if (node.row?.row !== "output" || !node.row.fills || result.state === "none") return text;
  return filledWith(text, (name) => {
    const other = name.includes(".") ? name : `${node.card}.${name}`;
    return other === id
      ? ""
      : shownValue(graph, worksheet, results, other, { ...options, figures: IN_A_SENTENCE });
  });
}
