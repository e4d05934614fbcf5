// What a measurement was made under, written down with it: a bucket timed at one hose stays timed at that hose.

import { setGiven } from "../document/edits.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { unitFor } from "../units/show.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi } from "../units/unit.ts";
import { buildGraph } from "./build.ts";
import { evaluate } from "./evaluate.ts";
import type { CardKinds, NumberGiven, Result, Row } from "./types.ts";

function entryOf(row: NumberGiven, result: Result | undefined, worksheet: Worksheet): Entry | null {
  if (result?.state !== "ready" || typeof result.value !== "number") return null;
  const unit = unitFor(row.measure, worksheet.units);
  return { value: tidy(fromSi(result.value, unit)), unit, from: "measured" };
}

/**
 * Writes down, beside a row that was just typed, the present values of the givens that its kind says it was measured
 * under; takes them out where the row was taken out.
 *
 * @param isTyped whether the row now has a value
 * @returns the worksheet; the same one where the row keeps nothing
 */
export function keepConditions(
  worksheet: Worksheet,
  kinds: CardKinds,
  cardId: string,
  row: Row,
  isTyped: boolean,
): Worksheet {
  if (!row.keeps) return worksheet;
  const kind = worksheet.cards.find(({ id }) => id === cardId)?.kind ?? "";
  const kept = (kinds[kind]?.rows ?? []).filter(
    (other): other is NumberGiven => other.row === "given" && (row.keeps?.includes(other.name) ?? false),
  );
  const cleared = kept.reduce((sheet, { name }) => setGiven(sheet, cardId, name, null), worksheet);
  if (!isTyped) return cleared;
  const results = evaluate(buildGraph(cleared, kinds), cleared, { answers: new Map(), records: new Map() });
  return kept.reduce((sheet, other) => {
    const entry = entryOf(other, results.get(`${cardId}.${other.name}`), sheet);
    return entry === null ? sheet : setGiven(sheet, cardId, other.name, entry);
  }, cleared);
}
