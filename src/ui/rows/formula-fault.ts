// What is wrong with a formula of the user's own, at the field in which it can be mended.

import type { Card } from "../../document/worksheet.ts";
import type { Problem, Row, UserFormulaRow } from "../../graph/types.ts";
import type { Sheet } from "../sheet.ts";

/** What a formula is read from: its text and the unit it is shown in. */
type Field = "formula" | "unit";

/** The number that a text is the formula or the unit of, and which of them. */
export function feeds(
  sheet: Sheet,
  card: Card,
  row: Row,
): { readonly number: UserFormulaRow; readonly as: Field } | null {
  for (const number of sheet.kinds[card.kind]?.rows ?? []) {
    if (number.row !== "user_formula") continue;
    if (number.formula === row.name) return { number, as: "formula" };
    if (number.unit === row.name) return { number, as: "unit" };
  }
  return null;
}

/** Where a problem is mended: one with columns in the formula; null where neither field is to blame. */
function fieldOf({ code, span }: Problem): Field | null {
  if (span) return "formula";
  return code === "unit" || code === "dimension" ? "unit" : null;
}

/** The problem of a number of one's own that one of its fields is to blame for. */
export function faultOf(sheet: Sheet, card: Card, number: Row): (Problem & { readonly as: Field }) | null {
  const id = `${card.id}.${number.name}`;
  const result = number.row === "user_formula" ? sheet.result(id) : undefined;
  if (result?.state !== "failed" || result.problem.at !== id || result.problem.cause) return null;
  const as = fieldOf(result.problem);
  return as && { ...result.problem, as };
}
