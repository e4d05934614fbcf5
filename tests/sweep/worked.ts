// One random place worked out once along the real path, with what properties ask of it.

import type { Worksheet } from "../../src/document/worksheet.ts";
import { buildGraph } from "../../src/graph/build.ts";
import type { Results } from "../../src/graph/evaluate.ts";
import { shownValue } from "../../src/graph/shown.ts";
import type { Result, Value } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { settleHeavy, type Whole, workOutLight } from "../../src/studies/work-out.ts";
import { answers } from "../../src/telling/answers.ts";
import { type Sentence, textOf } from "../../src/telling/asked.ts";
import { allBeside } from "../../src/telling/beside.ts";
import type { Place } from "./place.ts";

export const OPTIONS = { units: "us", locale: "en-US", currency: "$", rounded: true } as const;

export type Worked = Whole & {
  /** Number of the random place. */
  readonly seed: number;
  readonly records: readonly DailyRecord[];
  /** Results as the page has them before the season has been run. */
  readonly before: Results;
  /** The sentences on top with all that their workings say beside them, and those while the season is still running. */
  readonly sentences: readonly Sentence[];
  /** Those on top alone. */
  readonly onTop: readonly Sentence[];
  readonly sentencesBefore: readonly Sentence[];
  /** A sentence as it is read. */
  readonly textOf: (sentence: Sentence) => string;
  /** A ready number in SI, else null. */
  readonly number: (id: string) => number | null;
  /** A ready word, id or text, else "". */
  readonly word: (id: string) => string;
  /** A ready value of that type, by the caller's word; null where it is not ready. */
  readonly value: (id: string) => Value | null;
  /** Ids of the cards of a kind. */
  readonly cardsOf: (kind: string) => readonly string[];
};

/** The results as they stand before the season has been run, and those after it: what `workOut` does, stopped on its way. */
function twoLooks({ worksheet, records }: Place): { readonly before: Results; readonly whole: Whole } {
  const graph = buildGraph(worksheet, CARD_KINDS);
  const known = { answers: new Map(), records: new Map(records.map((record) => [record.key, record])) };
  const before = workOutLight(worksheet, graph, known);
  const light = { worksheet, graph, results: before };
  return { before, whole: { ...light, results: settleHeavy(light, known, () => true) } };
}

const sentencesOf = (worksheet: Worksheet, results: Results): readonly Sentence[] =>
  answers({ result: (id) => results.get(id), cards: worksheet.cards });

const besideOf = (worksheet: Worksheet, results: Results): readonly Sentence[] =>
  allBeside({ result: (id) => results.get(id), cards: worksheet.cards });

const readyIn =
  (results: Results) =>
  (id: string): Value | null => {
    const result: Result | undefined = results.get(id);
    return result?.state === "ready" ? result.value : null;
  };

export function workedOut(place: Place): Worked {
  const { before, whole } = twoLooks(place);
  const { seed, records } = place;
  const onTop = sentencesOf(whole.worksheet, whole.results);
  const value = readyIn(whole.results);
  const shown = (id: string): string => shownValue(whole.graph, whole.worksheet, whole.results, id, OPTIONS);
  return {
    ...whole,
    seed,
    records,
    before,
    sentences: [...onTop, ...besideOf(whole.worksheet, whole.results)],
    onTop,
    sentencesBefore: sentencesOf(whole.worksheet, before),
    textOf: (sentence) => textOf(sentence, shown),
    value,
    number: (id) => {
      const found = value(id);
      return typeof found === "number" ? found : null;
    },
    word: (id) => {
      const found = value(id);
      return typeof found === "string" ? found : "";
    },
    cardsOf: (kind) => whole.worksheet.cards.filter((card) => card.kind === kind).map(({ id }) => id),
  };
}
