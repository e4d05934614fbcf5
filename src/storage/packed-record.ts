// A rain record as plain data for files and links, exact to the last bit: read back, it has the same content key.

import type { DailyRecord } from "../rainfall/record.ts";
import { INCH, MILLIMETRE, ZERO_CELSIUS } from "../units/constants.ts";

type Numbers = readonly (number | null)[];

/** Numbers in the named unit; null where the day is missing. */
export type PackedColumn = { readonly unit: string; readonly days: Numbers };

export type PackedRecord = {
  readonly key: string;
  readonly title: string;
  readonly source: string;
  readonly made_up: boolean;
  readonly first_day: number;
  readonly columns: Readonly<Record<string, PackedColumn>>;
};

type Scale = {
  readonly unit: string;
  readonly digits: number;
  readonly to: (si: number) => number;
  readonly from: (typed: number) => number;
};

const PER_MILLIMETRE = 1 / MILLIMETRE;

const SAME = (value: number) => value;

/** Short ways to write a column, the shortest first; the SI numbers themselves always do. */
const SCALES: Readonly<Record<string, readonly Scale[]>> = {
  rain: [
    { unit: "mm", digits: 4, to: (m) => m / MILLIMETRE, from: (mm) => mm / PER_MILLIMETRE },
    { unit: "0.001 m", digits: 4, to: (m) => m / MILLIMETRE, from: (mm) => mm * MILLIMETRE },
    { unit: "in", digits: 4, to: (m) => m / INCH, from: (inches) => inches * INCH },
  ],
  temperature: [{ unit: "degC", digits: 3, to: (k) => k - ZERO_CELSIUS, from: (c) => c + ZERO_CELSIUS }],
};

const COLUMNS = {
  rain: { si: "m", scales: SCALES.rain ?? [] },
  highest: { si: "K", scales: SCALES.temperature ?? [] },
  lowest: { si: "K", scales: SCALES.temperature ?? [] },
  wind: { si: "m/s", scales: [] },
  vapour: { si: "Pa", scales: [] },
  sun: { si: "J/m2", scales: [] },
} as const satisfies Record<string, { si: string; scales: readonly Scale[] }>;

type ColumnName = keyof typeof COLUMNS;

const NAMES = Object.keys(COLUMNS) as ColumnName[];

function packColumn(name: ColumnName, values: Float64Array): PackedColumn {
  const { si, scales } = COLUMNS[name];
  for (const { unit, digits, to, from } of scales as readonly Scale[]) {
    const days = Array.from(values, (value) =>
      Number.isNaN(value) ? null : Number(to(value).toFixed(digits)),
    );
    if (days.every((day, index) => day === null || from(day) === values[index])) return { unit, days };
  }
  return { unit: si, days: Array.from(values, (value) => (Number.isNaN(value) ? null : value)) };
}

/** A record as plain data; every number reads back to the very same one. */
export function packRecord(record: DailyRecord): PackedRecord {
  const columns: Record<string, PackedColumn> = {};
  for (const name of NAMES) {
    const values = record[name];
    if (values) columns[name] = packColumn(name, values);
  }
  const { key, title, source, madeUp, firstDay } = record;
  return { key, title, source, made_up: madeUp, first_day: firstDay, columns };
}

/** Days of a record at the most: three centuries of them. */
const LONGEST_RECORD = 110_000;
const LONGEST_TEXT = 2000;
/** Days from 1970 within which a record may begin, either way: some five thousand years. */
const FARTHEST_DAY = 2_000_000;

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function unpackColumn(name: ColumnName, packed: unknown): Float64Array | null {
  if (!isObject(packed) || !Array.isArray(packed.days)) return null;
  const { si, scales } = COLUMNS[name];
  const scale = (scales as readonly Scale[]).find(({ unit }) => unit === packed.unit);
  if (!scale && packed.unit !== si) return null;
  const days: readonly unknown[] = packed.days;
  const isDay = (day: unknown) => day === null || (typeof day === "number" && Number.isFinite(day));
  if (days.length === 0 || days.length > LONGEST_RECORD || !days.every(isDay)) return null;
  const from = scale?.from ?? SAME;
  return Float64Array.from(days, (day) => (typeof day === "number" ? from(day) : Number.NaN));
}

function textOf(value: unknown): string | null {
  return typeof value === "string" && value.length <= LONGEST_TEXT ? value : null;
}

type Columns = { readonly [Name in ColumnName]: Float64Array | null };

function unpackColumns(packed: unknown): (Columns & { readonly rain: Float64Array }) | null {
  if (!isObject(packed)) return null;
  const columns: Record<ColumnName, Float64Array | null> = {
    rain: null,
    highest: null,
    lowest: null,
    wind: null,
    vapour: null,
    sun: null,
  };
  for (const name of NAMES) {
    if (packed[name] === undefined || packed[name] === null) continue;
    columns[name] = unpackColumn(name, packed[name]);
    if (!columns[name]) return null;
  }
  const { rain } = columns;
  if (!rain || rain.some((depth) => depth < 0)) return null;
  return NAMES.every((name) => (columns[name]?.length ?? rain.length) === rain.length)
    ? { ...columns, rain }
    : null;
}

/**
 * A record out of plain data from outside.
 *
 * @param packed what should be a packed record
 * @returns the record, or null where any part of it is wrong
 */
export function unpackRecord(packed: unknown): DailyRecord | null {
  if (!isObject(packed)) return null;
  const [key, title, source] = [textOf(packed.key), textOf(packed.title), textOf(packed.source)];
  const firstDay = packed.first_day;
  const columns = unpackColumns(packed.columns);
  if (!key || title === null || source === null || !columns) return null;
  if (!Number.isInteger(firstDay) || Math.abs(firstDay as number) > FARTHEST_DAY) return null;
  return Object.freeze({
    key,
    title,
    source,
    madeUp: packed.made_up === true,
    firstDay: firstDay as number,
    ...columns,
  });
}
