// Small worksheets out of a few words, worked out whole.

import { emptyWorksheet } from "../../src/document/blank.ts";
import type { Card, Entry, EntryValue, Worksheet } from "../../src/document/worksheet.ts";
import { type Graph, graphFor } from "../../src/graph/build.ts";
import { cautionsOf, type ShownCaution } from "../../src/graph/cautions.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { settleHeavy, type Whole, workOutLight } from "../../src/studies/work-out.ts";
import { tries } from "../tries.ts";

export type { Whole };

/** A number or list with its unit, a word or id, a list of ids, or null for "not fitted". */
export type GivenText = readonly [EntryValue, string] | string | readonly string[] | null;
export type Givens = Readonly<Record<string, GivenText>>;

const isWithUnit = (value: GivenText): value is readonly [EntryValue, string] =>
  Array.isArray(value) && value.length === 2 && typeof value[0] !== "string" && typeof value[1] === "string";

/** An entry as the document keeps it. */
export function given(value: GivenText): Entry {
  if (isWithUnit(value)) return { value: value[0], unit: value[1] };
  return { value: value as EntryValue, unit: "" };
}

const entries = (givens: Givens): Readonly<Record<string, Entry>> =>
  Object.fromEntries(Object.entries(givens).map(([name, value]) => [name, given(value)]));

/** Made-up years of the worksheets below: few of them run the same paths. */
const YEARS = { value: tries(20, 4), unit: "1" };

/** A worksheet of the single cards and these, by id: kind, givens, measured values. */
export function sheetOf(
  cards: Readonly<Record<string, readonly [kind: string, givens: Givens, measured?: Givens]>>,
): Worksheet {
  const blank = emptyWorksheet();
  const more = Object.entries(cards).map(
    ([id, [kind, givens, measured]]): Card => ({
      id,
      kind,
      title: id,
      givens: entries(givens),
      measured: entries(measured ?? {}),
    }),
  );
  const single = blank.cards.map((card) =>
    card.kind === "weather" ? { ...card, givens: { years: YEARS, ...card.givens } } : card,
  );
  return { ...blank, cards: [...single, ...more] };
}

/** Made-up records by the normals they are made of, and the last graph: most sheets of a test share both, as edits do. */
const records = new Map<string, DailyRecord>();
let last: Graph | undefined;

/** What `workOut` gives: everything worked out from nothing, but for the record and the graph where they are known. */
export function workedOut(worksheet: Worksheet): Whole {
  const graph = graphFor(worksheet, CARD_KINDS, last);
  last = graph;
  const known = { answers: new Map(), records };
  const light = { worksheet, graph, results: workOutLight(worksheet, graph, known) };
  return { ...light, results: settleHeavy(light, known, () => true) };
}

/** The number of a quantity that must be ready. */
export function numberAt(whole: Whole, id: string): number {
  const result = whole.results.get(id);
  if (result?.state !== "ready" || typeof result.value !== "number")
    throw new Error(`${id}: ${JSON.stringify(result)}`);
  return result.value;
}

/** The cautions that stand, as `card: id`. */
function cautionsIn({ graph, worksheet, results }: Whole): readonly ShownCaution[] {
  const options = { units: "us", locale: "en-US", currency: "$" } as const;
  return cautionsOf(graph, worksheet, results, options, KIND_WORDS);
}

export const cautionIds = (whole: Whole): readonly string[] =>
  cautionsIn(whole).map(({ card, id }) => `${card}: ${id}`);

/** What a caution says, by its card and its id. */
export const cautionText = (whole: Whole, at: string): string | undefined =>
  cautionsIn(whole).find(({ card, id }) => `${card}: ${id}` === at)?.text;
