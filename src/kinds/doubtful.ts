// What a kind's room says of how well its numbers are known: the spread of each default that a table gives, and how a
// number is best measured.

import { type DoubtfulTable, type Spread, tableSpread } from "./table-doubt.ts";

/** What it is measured with. */
export type Tool = "tape" | "bucket" | "dip" | "clock" | "gauge" | "label";

export type Measuring = {
  readonly with: Tool;
  /** What to do, as an order: "dip the tank before and after a rain". */
  readonly how: string;
  /** Rows of the same card that hold what was measured: where one is there, the number is known already. */
  readonly into?: readonly string[];
};

/** The spread of a row's default: one for all, or by the word of a choice row of the same card. */
export type DefaultSpread =
  | { readonly spread: Spread | null }
  | { readonly by: string; readonly spreadOf: (word: string) => Spread | null };

export type Doubtful = {
  readonly spreads?: Readonly<Record<string, DefaultSpread>>;
  readonly measuring?: Readonly<Record<string, Measuring>>;
};

/** The spread of one number of a table. */
export const spreadAt = (name: string, table: DoubtfulTable, way: string): DefaultSpread => ({
  spread: tableSpread(name, table, way),
});

/** The spread of a column of a table, by the word that is chosen. */
export const spreadBy = (
  by: string,
  name: string,
  table: DoubtfulTable,
  rows: string,
  column: string,
): DefaultSpread => ({ by, spreadOf: (word) => tableSpread(name, table, `${rows}.${word}.${column}`) });
