// One value of a reference table with its unit, as a row's default or as a number in SI.

import type { Typed } from "../graph/types.ts";
import { toSi } from "../units/unit.ts";

export type Tabled = { readonly value: number; readonly unit: string };

/** As a default. */
export const typed = ({ value, unit }: Tabled): Typed => [value, unit];

/** In SI. */
export const si = ({ value, unit }: Tabled): number => toSi(value, unit);

type Listed = { readonly word: string; readonly label: string };

/** A column of a table as the defaults of a row, by the word that is chosen. */
export function column<Row extends Listed>(
  rows: readonly Row[],
  take: (row: Row) => Tabled,
): Readonly<Record<string, Typed>> {
  return Object.fromEntries(rows.map((row) => [row.word, typed(take(row))]));
}

/** Words and labels of a table. */
export function options(rows: readonly Listed[]): Readonly<Record<string, string>> {
  return Object.fromEntries(rows.map(({ word, label }) => [word, label]));
}

/** The word of the row whose number is nearest, by their ratio. */
export function nearest<Row extends { readonly word: string }>(
  rows: readonly Row[],
  take: (row: Row) => Tabled,
  to: number,
): string {
  const apart = (row: Row): number => Math.abs(Math.log(to / si(take(row))));
  return rows.reduce((best, row) => (apart(row) < apart(best) ? row : best)).word;
}
