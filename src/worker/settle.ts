// Works a whole worksheet out without a screen: supplies made-up records and runs heavy models until nothing is asked.

import { effective } from "../document/effective.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { buildGraph, type Graph } from "../graph/build.ts";
import { evaluate, type Results } from "../graph/evaluate.ts";
import type { CardKinds, Outputs } from "../graph/types.ts";
import { recordFromNormals } from "../rainfall/made-up.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { runHeavy } from "./heavy.ts";

const NORMALS = "normals:";

/** Makes up the record that a worksheet without one asks for; true where one was added. */
export function supplyRecord(results: Results, records: Map<string, DailyRecord>): boolean {
  const wanted = results.get("weather.record_in_use");
  if (wanted?.state !== "ready" || typeof wanted.value !== "string") return false;
  const key = wanted.value;
  if (records.has(key) || !key.startsWith(NORMALS)) return false;
  records.set(key, { ...recordFromNormals(JSON.parse(key.slice(NORMALS.length))), key });
  return true;
}

export type Whole = { readonly worksheet: Worksheet; readonly graph: Graph; readonly results: Results };

/** Everything worked out, heavy models included. */
export function workOut(worksheet: Worksheet, kinds: CardKinds, given: readonly DailyRecord[] = []): Whole {
  const applied = effective(worksheet);
  const graph = buildGraph(applied, kinds);
  const records = new Map(given.map((record) => [record.key, record]));
  const answers = new Map<string, Outputs>();
  let results = evaluate(graph, applied, { answers, records });
  if (supplyRecord(results, records)) results = evaluate(graph, applied, { answers, records }, results);
  while (results.requests.length > 0) {
    for (const request of results.requests) {
      answers.set(
        request.key,
        runHeavy(kinds, request, request.record === null ? null : (records.get(request.record) ?? null)),
      );
    }
    results = evaluate(graph, applied, { answers, records }, results);
  }
  return { worksheet: applied, graph, results };
}
