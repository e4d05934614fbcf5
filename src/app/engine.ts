// Turns a worksheet into results: graph, evaluation, the record it asks for, and the worker's answers as they come.

import { createSignal } from "solid-js";
import { effective } from "../document/effective.ts";
import { titlesApart } from "../document/title-apart.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { type Graph, graphFor } from "../graph/build.ts";
import { evaluate, type Results } from "../graph/evaluate.ts";
import type { Outputs } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { supplyRecord } from "../studies/work-out.ts";
import type { WorkerClient } from "../worker/client.ts";

const KEPT_ANSWERS = 40;

/** Graph and results that belong together. */
export type View = { readonly worksheet: Worksheet; readonly graph: Graph; readonly results: Results };

/** The engine of one open worksheet. */
export function createEngine(first: Worksheet, given: readonly DailyRecord[]) {
  const answers = new Map<string, Outputs>();
  const records = new Map(given.map((record) => [record.key, record]));
  let client: WorkerClient | null = null;

  const work = (worksheet: Worksheet, previous?: View): View => {
    const applied = effective(titlesApart(worksheet));
    const graph = graphFor(applied, CARD_KINDS, previous?.graph);
    const settled = { answers, records };
    let results = evaluate(graph, applied, settled, previous?.results);
    if (supplyRecord(results, records)) results = evaluate(graph, applied, settled, results);
    return { worksheet: applied, graph, results };
  };
  const ask = (view: View): void => {
    for (const request of view.results.requests) {
      client?.ask(request, request.record === null ? null : (records.get(request.record) ?? null));
    }
  };
  const [view, setView] = createSignal<View>(work(first));
  const accept = (key: string, outputs: Outputs): void => {
    answers.set(key, outputs);
    for (const old of answers.keys()) {
      if (answers.size <= KEPT_ANSWERS) break;
      answers.delete(old);
    }
    const now = view();
    const next = { ...now, results: evaluate(now.graph, now.worksheet, { answers, records }, now.results) };
    setView(next);
    ask(next);
  };

  return {
    view,
    records,
    /** Works the worksheet out anew, from what is known of the one before. */
    update: (worksheet: Worksheet): void => {
      const next = work(worksheet, view());
      setView(next);
      ask(next);
    },
    connect: (worker: WorkerClient): void => {
      client = worker;
      ask(view());
    },
    /** The worker could not answer: everything that waits for it fails with the reason. */
    fail: (key: string, reason: string): void => {
      accept(key, { failure: { failed: reason } });
    },
    answer: accept,
  };
}

export type Engine = ReturnType<typeof createEngine>;
