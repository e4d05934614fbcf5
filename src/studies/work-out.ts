// Works a worksheet out without a screen: supplies made-up records and runs heavy models until nothing more is asked.

import type { Worksheet } from "../document/worksheet.ts";
import { buildGraph, type Graph } from "../graph/build.ts";
import { evaluate, type Results } from "../graph/evaluate.ts";
import { wordIn } from "../graph/readers.ts";
import type { CardKinds, Outputs, Request } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { runHeavy } from "./heavy.ts";
import { isMadeUpKey, madeUpRecord } from "./made-up-records.ts";

/** Makes up the record that a worksheet without one asks for; true where one was added. */
export function supplyRecord(results: Results, records: Map<string, DailyRecord>): boolean {
  const key = wordIn(results.get("weather.record_in_use"));
  if (records.has(key) || !isMadeUpKey(key)) return false;
  records.set(key, madeUpRecord(key));
  return true;
}

/** What is known beside the worksheet: heavy answers and rain records by their keys; both grow as more is worked out. */
export type Known = { readonly answers: Map<string, Outputs>; readonly records: Map<string, DailyRecord> };

export type Whole = { readonly worksheet: Worksheet; readonly graph: Graph; readonly results: Results };

/** The light part: everything that needs no heavy model, the made-up record supplied. */
export function workOutLight(
  applied: Worksheet,
  graph: Graph,
  { answers, records }: Known,
  previous?: Results,
): Results {
  const results = evaluate(graph, applied, { answers, records }, previous);
  return supplyRecord(results, records) ? evaluate(graph, applied, { answers, records }, results) : results;
}

/** Runs the heavy models that are asked for, and those that only then can be asked for, as far as they are wanted. */
export function settleHeavy(
  { worksheet, graph, results: light }: Whole,
  { answers, records }: Known,
  isWanted: (request: Request) => boolean,
): Results {
  let results = light;
  for (;;) {
    const open = results.requests.filter((request) => !answers.has(request.key) && isWanted(request));
    if (open.length === 0) return results;
    for (const request of open) {
      const record = request.record === null ? null : (records.get(request.record) ?? null);
      answers.set(request.key, runHeavy(graph.kinds, request, record));
    }
    results = evaluate(graph, worksheet, { answers, records }, results);
  }
}

/** Everything worked out, heavy models included. */
export function workOut(worksheet: Worksheet, kinds: CardKinds, given: readonly DailyRecord[] = []): Whole {
  const graph = buildGraph(worksheet, kinds);
  const known: Known = {
    answers: new Map(),
    records: new Map(given.map((record) => [record.key, record])),
  };
  const light = { worksheet, graph, results: workOutLight(worksheet, graph, known) };
  return { ...light, results: settleHeavy(light, known, () => true) };
}
