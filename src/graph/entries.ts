// From an entry as the user typed it to a result in SI: the unit, the kind of quantity and the limits are checked here.

import type { Entry } from "../document/worksheet.ts";
import { parseIsoDate, parseMonthDay } from "../units/calendar.ts";
import { limitSaid } from "../units/limit-said.ts";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import { siFor } from "../units/suits.ts";
import { parseUnit, unitProblem } from "../units/unit.ts";
import { failed, missing, none } from "./problems.ts";
import type {
  DateGiven,
  Given,
  ListGiven,
  NumberGiven,
  ProblemCode,
  QuantityId,
  Result,
  Value,
} from "./types.ts";

/** What a number must be within, in the SI unit of its measure. */
type Limits = Pick<NumberGiven, "min" | "max">;
type Limited = Limits & Pick<NumberGiven, "measure">;

type Origin = "given" | "measured";
type Wrong = { readonly code: ProblemCode; readonly text: string };
type Read<T> = { readonly value: T } | Wrong;

/** Whether a number's default is worked out or picked, so that leaving it empty asks for that. */
export function hasWorkedDefault(row: Given): row is NumberGiven {
  return row.row === "given" && row.default !== null && !Array.isArray(row.default);
}

/** Whether an entry stands for the row's default; an empty one does, unless the default is to be worked out. */
export function isGiven(row: Given, entry: Entry | undefined): boolean {
  if (!entry || entry.value === undefined) return false;
  const isAbsence = "absent" in row && row.absent !== undefined;
  return entry.value !== null || isAbsence || !hasWorkedDefault(row);
}

/** A number with its unit, in the SI unit of a measure. */
function readNumber(value: unknown, unit: unknown, measure: MeasureName): Read<number> {
  if (typeof value !== "number" || !Number.isFinite(value))
    return { code: "bad_value", text: "this is not a number." };
  const unitText = typeof unit === "string" ? unit : "";
  if (!parseUnit(unitText))
    return { code: "unit", text: unitProblem(unitText) ?? `I do not know the unit "${unitText}".` };
  const suited = siFor(value, unitText, measure);
  if (!suited.ok) return { code: "dimension", text: suited.message };
  return Number.isFinite(suited.si)
    ? { value: suited.si }
    : { code: "not_finite", text: "this number is too large." };
}

function beyondLimits(row: Limited, si: number, unit: string, show: ShowOptions): Wrong | null {
  const said = (limit: number, least: boolean): string => {
    const near = MEASURES[row.measure].form === "plain" ? limitSaid(limit, unit, least) : { si: limit, unit };
    return showQuantity(near.si, row.measure, { ...show, unit: near.unit, rounded: false });
  };
  // How little is too little nobody asks who has typed nothing at all, or less.
  if (row.min !== undefined && row.min > 0 && si <= 0)
    return { code: "limit", text: "more than nought is wanted here." };
  if (row.min !== undefined && si < row.min)
    return { code: "limit", text: `at least ${said(row.min, true)} is wanted here.` };
  if (row.max !== undefined && si > row.max)
    return { code: "limit", text: `at most ${said(row.max, false)} is wanted here.` };
  return null;
}

function readLimited(row: Limited, value: unknown, unit: unknown, show: ShowOptions): Read<number> {
  const read = readNumber(value, unit, row.measure);
  if ("code" in read) return read;
  return beyondLimits(row, read.value, typeof unit === "string" ? unit : "", show) ?? read;
}

type Ends = { readonly low?: number; readonly high?: number; readonly unit?: string };

/** What is wrong with an end of a number that is not sure: it is bound by the same limits. */
function wrongEnd(row: Limited, { low, high, unit }: Ends, show: ShowOptions): Wrong | null {
  for (const end of [low, high]) {
    const read = end === undefined ? null : readLimited(row, end, unit, show);
    if (read && "code" in read) return read;
  }
  return null;
}

function readDate(row: DateGiven, value: unknown): Read<string> {
  const fits =
    typeof value === "string" && (row.form === "day" ? parseIsoDate(value) : parseMonthDay(value)) !== null;
  if (fits) return { value };
  const form = row.form === "day" ? "2026-05-01" : "05-01";
  return { code: "bad_value", text: `a date is wanted here, such as ${form}.` };
}

const limitedBy = (row: ListGiven, at: number): Limited => ({
  measure: row.measures?.[at] ?? row.measures?.[0] ?? "factor",
  ...row.limits?.[at],
});

function readMonths(
  row: ListGiven,
  list: readonly unknown[],
  unit: string,
  show: ShowOptions,
): Read<readonly number[]> {
  if (list.length !== 12)
    return { code: "bad_value", text: `twelve numbers are wanted here, not ${list.length}.` };
  const numbers: number[] = [];
  for (const item of list) {
    const read = readLimited(limitedBy(row, 0), item, unit, show);
    if ("code" in read) return read;
    numbers.push(read.value);
  }
  return { value: numbers };
}

function readPoints(
  row: ListGiven,
  list: readonly unknown[],
  unit: string,
  show: ShowOptions,
): Read<readonly (readonly number[])[]> {
  const [acrossUnit = "", upUnit = acrossUnit] = unit.split(",").map((part) => part.trim());
  const points: (readonly number[])[] = [];
  for (const item of list) {
    if (!Array.isArray(item) || item.length !== 2)
      return { code: "bad_value", text: "every point needs two numbers." };
    const across = readLimited(limitedBy(row, 0), item[0], acrossUnit, show);
    const up = readLimited(limitedBy(row, 1), item[1], upUnit, show);
    if ("code" in across) return across;
    if ("code" in up) return up;
    points.push([across.value, up.value]);
  }
  return { value: points };
}

function contentProblem(row: ListGiven, item: unknown): string | null {
  if (typeof item !== "object" || item === null) return "this line cannot be read.";
  const { crop, planted, share, until } = item as Readonly<Record<string, unknown>>;
  if (typeof crop !== "string" || (row.crops && !row.crops.some(({ word }) => word === crop))) {
    return `I do not know the crop "${String(crop)}".`;
  }
  if (typeof planted !== "string" || parseMonthDay(planted) === null)
    return "a day of planting is wanted, such as 05-15.";
  if (until !== undefined && (typeof until !== "string" || parseMonthDay(until) === null))
    return "a day of the last picking is wanted, such as 09-20.";
  const isShare = typeof share === "number" && share >= 0 && share <= 1;
  return isShare ? null : "a share from 0 to 100 % of the bed is wanted.";
}

function readContents(row: ListGiven, list: readonly unknown[]): Read<readonly unknown[]> {
  for (const item of list) {
    const text = contentProblem(row, item);
    if (text) return { code: "bad_value", text };
  }
  return { value: list };
}

function readList(row: ListGiven, value: unknown, unit: string, show: ShowOptions): Read<Value> {
  if (!Array.isArray(value)) return { code: "bad_value", text: "a list is wanted here." };
  if (row.of === "months") return readMonths(row, value, unit, show);
  return row.of === "points" ? readPoints(row, value, unit, show) : readContents(row, value);
}

function readValue(row: Given, value: unknown, unit: unknown, show: ShowOptions): Read<Value> {
  if (row.row === "given") return readLimited(row, value, unit, show);
  if (row.row === "date") return readDate(row, value);
  if (row.row === "list") return readList(row, value, typeof unit === "string" ? unit : "", show);
  if (typeof value !== "string") return { code: "bad_value", text: "a word is wanted here." };
  if (row.row === "choice" && !row.options.some(({ word }) => word === value)) {
    return {
      code: "bad_value",
      text: `"${value}" is none of ${row.options.map(({ word }) => word).join(", ")}.`,
    };
  }
  return { value };
}

function resultOf(read: Read<Value>, label: string, id: QuantityId, origin: Origin): Result {
  if ("value" in read) return { state: "ready", value: read.value, origin };
  return failed(read.code, id, `${label}: ${read.text}`);
}

function defaultOf(row: Given): { readonly value: unknown; readonly unit: string } | null {
  if (row.row === "given") {
    return Array.isArray(row.default) ? { value: row.default[0], unit: row.default[1] } : null;
  }
  if (row.row === "link" || row.default === null) return null;
  return { value: row.default, unit: row.row === "list" ? (row.unit ?? "") : "" };
}

/**
 * The result of a given: its entry, else its default, else none with the row's reason.
 * @param show how limits are shown in a problem
 */
export function givenResult(row: Given, entry: Entry | undefined, id: QuantityId, show: ShowOptions): Result {
  const source = isGiven(row, entry) ? entry : defaultOf(row);
  if (source && source.value !== null) {
    const wrong = row.row === "given" ? wrongEnd(row, source, show) : null;
    return resultOf(wrong ?? readValue(row, source.value, source.unit, show), row.label, id, "given");
  }
  const absent = "absent" in row ? row.absent : undefined;
  return absent === undefined ? missing(row.label, id) : none(absent, id);
}

/** The result of a typed default that a choice's word picks. */
export function pickedResult(row: NumberGiven, word: string, id: QuantityId, show: ShowOptions): Result {
  const usual = row.default;
  const picks = usual && "pick" in usual && Object.hasOwn(usual.pick, word) ? usual.pick[word] : undefined;
  if (picks) return resultOf(readLimited(row, picks[0], picks[1], show), row.label, id, "given");
  return row.absent === undefined ? missing(row.label, id) : none(row.absent, id);
}

/** The result of a measured value. */
export function measuredResult(
  row: { readonly label: string; readonly measure: MeasureName; readonly limits: Limits },
  entry: Entry | undefined,
  id: QuantityId,
  show: ShowOptions,
): Result {
  const limited = { ...row.limits, measure: row.measure };
  const read = readLimited(limited, entry?.value, entry?.unit, show);
  return resultOf((entry && wrongEnd(limited, entry, show)) ?? read, row.label, id, "measured");
}
