// What is wrong with a worksheet, as a value that carries its place.

import type { QuantityId } from "./quantity-id.ts";

export type ProblemCode =
  | "missing"
  | "upstream"
  | "cycle"
  | "dimension"
  | "limit"
  | "formula"
  | "unit"
  | "unknown_kind"
  | "dead_link"
  | "wrong_link"
  | "duplicate_id"
  | "missing_card"
  | "bad_value"
  | "not_finite"
  | "model"
  | "record";

export type Problem = {
  readonly code: ProblemCode;
  /** Quantity id, or card id, or "" for the worksheet itself. */
  readonly at: string;
  /** One plain sentence for the reader. */
  readonly text: string;
  /** Quantity at which the trouble began, for `upstream`. */
  readonly cause?: QuantityId;
  /** The given that is to be changed, where the trouble shows only in what is worked out from it. */
  readonly by?: QuantityId;
  /** Closed path of a cycle: first and last are the same. */
  readonly path?: readonly QuantityId[];
  /** Columns [start, end) in a formula text. */
  readonly span?: { readonly start: number; readonly end: number };
};
