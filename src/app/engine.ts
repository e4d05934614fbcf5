// Turns a worksheet into results: graph, evaluation, and the worker's answers as they come. What reads the record day by
// day runs in the worker, so that nothing long stands in the way of a touch.

import { createSignal } from "solid-js";
import { withSeen } from "../document/notes.ts";
import { titlesApart } from "../document/title-apart.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { type Graph, graphFor, partFor } from "../graph/build.ts";
import { readAhead } from "../graph/card-plans.ts";
import { evaluate, type Results } from "../graph/evaluate.ts";
import { wordIn } from "../graph/readers.ts";
import type { Outputs } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { forgetOldest, isMadeUpKey } from "../studies/made-up-records.ts";
import { FRAME_ASKED, firstAsked } from "../telling/first-asked.ts";
import { firstPaint, wholeIsWorked } from "../ui/after-paint.ts";
import type { WorkerClient } from "../worker/client.ts";
import type { Ran } from "../worker/messages.ts";
import { today } from "./clock.ts";

/** Answers that undo may want; those in use are kept besides. */
const KEPT_ANSWERS = 150;
const KEPT_MADE_UP = 4;

/** Graph and results that belong together. */
export type View = { readonly worksheet: Worksheet; readonly graph: Graph; readonly results: Results };

/** What was made of worksheets before they were opened. */
const ahead = new WeakMap<Worksheet, Pick<View, "graph"> & Partial<View>>();

/** What of a worksheet its frame is drawn from. */
const frameGraph = (applied: Worksheet, previous?: Graph): Graph =>
  partFor(applied, CARD_KINDS, FRAME_ASKED, previous, true);

/** What of a worksheet the lead is worked out from. */
const leadGraph = (applied: Worksheet): Graph => partFor(applied, CARD_KINDS, firstAsked(applied.cards));

/**
 * Works out the frame of a worksheet that may be opened next, in two short tasks, while the store is still being asked what
 * is.
 *
 * @param isWanted whether nothing else has been opened meanwhile
 * @returns once that is done, or not wanted any more: who opens it sooner does it all in one long task
 */
export function workAhead(worksheet: Worksheet, isWanted: () => boolean): Promise<void> {
  const applied = titlesApart(withSeen(worksheet, today()));
  const graph = (): Graph => frameGraph(applied, ahead.get(worksheet)?.graph);
  const settled = { answers: new Map(), records: new Map(), elsewhere: isMadeUpKey };
  return inTasks(
    [
      () => ahead.set(worksheet, { graph: graph() }),
      () => ahead.set(worksheet, { graph: graph(), results: evaluate(graph(), applied, settled) }),
    ],
    isWanted,
  );
}

/** Works one after the other, each in a task of its own, for as long as they are wanted. */
function inTasks(works: readonly (() => unknown)[], isWanted: () => boolean): Promise<void> {
  const left = [...works];
  return new Promise((resolve) => {
    const next = (): void => {
      const work = isWanted() ? left.shift() : undefined;
      work?.();
      if (work) setTimeout(next);
      else resolve();
    };
    setTimeout(next);
  });
}

/** What was answered so far, and the records that are here, as evaluating asks for them. */
function createKnown(given: readonly DailyRecord[]) {
  const answers = new Map<string, Outputs>();
  const records = new Map(given.map((record) => [record.key, record]));
  return {
    records,
    // A record that can be made up is made up where it is read.
    settled: { answers, records, elsewhere: (key: string): boolean => records.has(key) || isMadeUpKey(key) },
    /** Keeps answers, beside those that are used; where there is none everything that waits for it fails with the reason. */
    keep: (ran: readonly Ran[], asked: readonly string[]): void => {
      for (const one of ran)
        answers.set(one.key, "outputs" in one ? one.outputs : { failure: { failed: one.failed } });
      const used = new Set(asked);
      forgetOldest(answers, KEPT_ANSWERS, (key) => !used.has(key));
    },
    /** The made-up record, once the worker has made it: to be looked at and handed on, not to be worked with here. */
    showMadeUp: (record: DailyRecord): void => {
      records.set(record.key, record);
      forgetOldest(records, KEPT_MADE_UP, isMadeUpKey);
    },
  };
}

/**
 * The engine of one open worksheet. It begins with what the frame is drawn from, or the lead is worked out from where there is
 * no frame; the rest is worked out once that is painted, in tasks of its own, or sooner where a change asks for it.
 *
 * @param forecast what this device keeps of the coming days
 * @param hasFrame whether the sheet's frame is drawn, in which numbers may be still to come
 */
export function createEngine(
  first: Worksheet,
  given: readonly DailyRecord[],
  forecast: () => string = () => "",
  hasFrame = false,
) {
  const { records, settled, keep, showMadeUp } = createKnown(given);
  let client: WorkerClient | null = null;

  const apply = (worksheet: Worksheet): Worksheet => titlesApart(withSeen(worksheet, today(), forecast()));
  const begin = (previous?: Pick<View, "graph"> & Partial<View>): View => {
    const worksheet = apply(first);
    const graph = hasFrame ? frameGraph(worksheet, previous?.graph) : leadGraph(worksheet);
    return { worksheet, graph, results: evaluate(graph, worksheet, settled, previous?.results) };
  };
  const work = (worksheet: Worksheet, { graph: before, results }: View): View => {
    const applied = apply(worksheet);
    const graph = graphFor(applied, CARD_KINDS, before);
    return { worksheet: applied, graph, results: evaluate(graph, applied, settled, results.all) };
  };
  const ask = ({ results }: View): void => client?.ask(results.requests, (key) => records.get(key));
  const [view, setView] = createSignal<View>(begin(ahead.get(first)));
  const isPart = (): boolean => view().graph.whole !== null;
  const complete = (): void => {
    const { worksheet, results } = view();
    const { all } = results;
    setView({ worksheet, graph: all.inside.graph, results: all });
    ask(view());
  };

  const rest = [
    () => readAhead(view().worksheet, CARD_KINDS),
    () => view().graph.whole?.graph(),
    () => view().results.all,
    complete,
  ];
  void firstPaint.then(() => inTasks(rest, isPart)).then(wholeIsWorked);

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
    /** Takes in what the worker answered. */
    accept: (ran: readonly Ran[]): void => {
      const { worksheet, results } = view();
      const { graph } = results.all.inside;
      keep(ran, results.all.askedKeys);
      const next = { worksheet, graph, results: evaluate(graph, worksheet, settled, results.all) };
      setView(next);
      ask(next);
    },
    showMadeUp,
  };
}

/** The record that the worksheet names or makes up, in a list as a question wants it; empty where it is not here. */
export function recordsInUse({ view, records }: Pick<Engine, "view" | "records">): readonly DailyRecord[] {
  const record = records.get(wordIn(view().results.get("weather.record_in_use")));
  return record ? [record] : [];
}

export type Engine = ReturnType<typeof createEngine>;
