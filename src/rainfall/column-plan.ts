// Puts a table's plan together: finds a header, names what each column is used for.
import type { ColumnPlan, ExtraColumn } from "./column-reader.ts";
import {
  headerWords,
  sunFactor,
  temperatureEnd,
  temperatureUnitOf,
  vapourFactor,
  windFactor,
} from "./header-words.ts";
import type { Choices } from "./import-result.ts";
import { NO_TEMPERATURE, type TemperatureTold } from "./intake.ts";

const HEADER_WITHIN = 500;

export type FoundHeader = { readonly at: number; readonly cells: readonly string[] };

/** Cells of a header row as they are compared: no quotes, blanks or comment mark. */
function bareCell(cell: string): string {
  return cell.replace(/^[\s#"]+/, "").replace(/[\s"]+$/, "");
}

/** The first row that holds all the given names, or null. */
export function findHeader(
  rows: readonly (readonly string[])[],
  names: readonly string[],
): FoundHeader | null {
  const limit = Math.min(rows.length, HEADER_WITHIN);
  for (let at = 0; at < limit; at++) {
    const cells = (rows[at] ?? []).map(bareCell);
    const lower = cells.map((cell) => cell.toLowerCase());
    if (names.every((name) => lower.includes(name.toLowerCase()))) return { at, cells };
  }
  return null;
}

/** Position of a named column, or null. */
export function columnOf(cells: readonly string[], name: string | undefined): number | null {
  if (name === undefined) return null;
  const counted = /^column (\d+)$/.exec(name);
  if (counted) return Number(counted[1]) - 1;
  const wanted = bareCell(name).toLowerCase();
  const lower = cells.map((cell) => bareCell(cell).toLowerCase());
  const at = lower.indexOf(wanted);
  if (at >= 0) return at;
  // "Rain" finds "Rain (mm)", where no other column is called so.
  const loose = lower.flatMap((cell, column) =>
    cell.replace(/\s*\([^)]*\)$/, "") === wanted ? [column] : [],
  );
  return loose.length === 1 ? (loose[0] ?? null) : null;
}

/** Further columns of a table by their headers; wind, vapour and sun only where unit (and height) are told. */
export function extraColumns(
  cells: readonly string[],
  choices: Choices,
  taken: readonly number[],
): ExtraColumn[] {
  const found: ExtraColumn[] = [];
  const has = (name: string) => found.some((extra) => extra.name === name);
  for (const end of ["highest", "lowest"] as const) {
    const chosen = columnOf(cells, end === "highest" ? choices.highest_column : choices.lowest_column);
    const column =
      chosen ?? cells.findIndex((cell, at) => !taken.includes(at) && temperatureEnd(cell) === end);
    if (column >= 0) found.push({ name: end, column, factor: null });
  }
  cells.forEach((cell, column) => {
    if (taken.includes(column) || found.some((extra) => extra.column === column)) return;
    for (const [name, factor] of [
      ["wind", windFactor(cell)],
      ["vapour", vapourFactor(cell)],
      ["sun", sunFactor(cell)],
    ] as const) {
      if (factor !== null && !has(name)) found.push({ name, column, factor });
    }
  });
  return found;
}

/** The unit of warmth that the headers of the temperature columns agree on. */
export function toldTemperature(cells: readonly string[], extras: readonly ExtraColumn[]): TemperatureTold {
  for (const extra of extras) {
    if (extra.factor !== null) continue;
    const value = temperatureUnitOf(cells[extra.column] ?? "");
    if (value) return { value, told: "header" };
  }
  return NO_TEMPERATURE;
}

function reasonIgnored(cell: string): string {
  const words = headerWords(cell);
  if (/wind/.test(words)) return "ignored: the header does not tell both unit and height of the wind";
  if (/vapou?r|solar|radiation/.test(words)) return "ignored: the header does not tell its unit";
  return "ignored";
}

const EXTRA_USES = {
  highest: "highest temperature of the day",
  lowest: "lowest temperature of the day",
  wind: "wind, brought to 2 m",
  vapour: "vapour pressure",
  sun: "sun",
} as const;

/** What each column of the table is used for, in words. */
export function columnUses(
  cells: readonly string[],
  plan: Pick<ColumnPlan, "date" | "time" | "rain" | "extras" | "station"> &
    Partial<Pick<ColumnPlan, "unitColumn">>,
  special: Readonly<Record<number, string>> = {},
): { name: string; use: string }[] {
  const uses = new Map<number, string>(Object.entries(special).map(([at, use]) => [Number(at), use]));
  const { date } = plan;
  if (date.kind === "cell" || date.kind === "serial") uses.set(date.column, "date");
  if (date.kind === "day_of_year") uses.set(date.year, "year").set(date.day, "day of the year");
  if (date.kind === "parts") {
    uses.set(date.year, "year").set(date.month, "month").set(date.day, "day");
  }
  if (plan.time !== null) uses.set(plan.time, "time of day");
  if (plan.station !== null) uses.set(plan.station, "station");
  if (plan.unitColumn != null) uses.set(plan.unitColumn, "unit");
  for (const extra of plan.extras) uses.set(extra.column, EXTRA_USES[extra.name]);
  uses.set(plan.rain, "rain");
  return cells.map((cell, at) => ({
    name: cell.trim() || `column ${at + 1}`,
    use: uses.get(at) ?? reasonIgnored(cell),
  }));
}

const MIDNIGHT_RULE = { text: "Each reading is taken for the day it is dated.", shift: 0 } as const;

/** A plan with the usual answers, to be overridden where a format differs. */
export function basePlan(
  required: Pick<ColumnPlan, "id" | "name" | "header" | "dataFrom" | "date" | "rain"> & Partial<ColumnPlan>,
): ColumnPlan {
  const filled = {
    unit: null,
    unitTold: null,
    temperature: NO_TEMPERATURE,
    columns: [],
    dayRule: MIDNIGHT_RULE,
    notes: [],
    rows: null,
    apartBy: null,
    windowHours: null,
    tenthsIfWhole: false,
    time: null,
    minutes: null,
    extras: [],
    station: null,
    unitColumn: null,
    isWide: required.id !== "table",
    minusOne: null,
    codes: [],
    judge: null,
    keep: null,
    ...required,
  };
  return filled.columns.length ? filled : { ...filled, columns: columnUses(filled.header, filled) };
}
