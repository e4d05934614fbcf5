// One trial worked out whole, as the command line shows it.

import { valueIn } from "../graph/readers.ts";
import { shownValue } from "../graph/shown.ts";
import type { QuantityId, Value } from "../graph/types.ts";
import type { ShowOptions } from "../units/show.ts";
import { type Base, wholeWith } from "./ask.ts";
import type { Trial } from "./try.ts";

export type TriedPoint = {
  readonly value: number | string;
  readonly shown: string;
  /** Null where an answer is none or failed. */
  readonly answers: Readonly<Record<QuantityId, Value>>;
  /** The same as a reader sees them, the reason in place of a number that is none. */
  readonly said: Readonly<Record<QuantityId, string>>;
};

/** A trial worked out, with the value as a reader sees it. */
export function tryOne(
  base: Base,
  { change, value }: Trial,
  wanted: readonly QuantityId[],
  options: ShowOptions,
): TriedPoint {
  const { worksheet, graph, results } = wholeWith(base, [change], wanted);
  const said = (id: QuantityId) => shownValue(graph, worksheet, results, id, options);
  return {
    value,
    shown: said(`${change.card}.${change.row}`),
    answers: Object.fromEntries(wanted.map((id) => [id, valueIn(results.get(id))])),
    said: Object.fromEntries(wanted.map((id) => [id, said(id)])),
  };
}
