// What the answers become where numbers are not sure: the whole worksheet worked out at many places between their ends, in
// the background, and again when it rests after a change.

import { batch, createEffect, createMemo, createSignal, on, onCleanup, untrack } from "solid-js";
import { isUnsure } from "../document/unsure.ts";
import { nodeOf } from "../graph/nodes.ts";
import { numberIn } from "../graph/readers.ts";
import type { QuantityId } from "../graph/types.ts";
import { shownMeasure } from "../graph/unit-of.ts";
import type { Answers } from "../studies/ask.ts";
import { type SpanSaid, spanSaid } from "../studies/not-sure/named.ts";
import {
  type Ends,
  endsSoFar,
  type NotSure,
  notSure,
  RUNS,
  spannedOf,
} from "../studies/not-sure/not-sure.ts";
import { answerName, OF_THE_PLACE } from "../telling/answer-names.ts";
import { askedSaid, manySaid, othersSaid } from "../telling/not-sure.ts";
import type { Doubting, NotSureSaid } from "../ui/hand/doubting.ts";
import { showSpan } from "../units/show-span.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { recordsInUse, type View } from "./engine.ts";
import type { InHandTools } from "./turned.ts";

/** A number being turned goes on changing; the runs wait until it rests [ms]. */
const REST = 700;
/** Ends are told anew after so many runs. */
const TOLD_EVERY = 16;
const WANTED: readonly QuantityId[] = [...OF_THE_PLACE, "season.longest_short_run"];

type Known = ReadonlyMap<QuantityId, SpanSaid & { readonly first: QuantityId | null }>;

/** Lets whatever else waits go first. */
const breathe = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

/** What is told of the runs as they come in, and once all of them are. */
function createTold(options: InHandTools["options"]) {
  const [known, setKnown] = createSignal<Known>(new Map());
  const [done, setDone] = createSignal(0);
  const told = (view: View, id: QuantityId, { low, high }: Ends): SpanSaid | null => {
    const node = nodeOf(view.graph, id);
    const measure = node && shownMeasure(node);
    return measure
      ? { shown: showSpan(low, high, measure, options()), most: "", measuring: "", beyond: "" }
      : null;
  };
  const soFar = (view: View, of: NotSure, answered: readonly Answers[]): void => {
    const spans = of.reached.flatMap((id) => {
      const ends = endsSoFar(answered.map((answers) => answers && numberIn(answers[id])));
      const said = ends && told(view, id, ends);
      return said ? [[id, { ...said, first: null }] as const] : [];
    });
    setKnown(new Map(spans));
  };
  const tellAll = async (
    view: View,
    of: NotSure,
    answered: readonly Answers[],
    isCalledOff: () => boolean,
  ) => {
    const spans = new Map<QuantityId, SpanSaid & { readonly first: QuantityId | null }>();
    for (const id of of.reached) {
      await breathe();
      if (isCalledOff()) return;
      const spanned = spannedOf(
        of.places,
        answered.map((answers) => answers && numberIn(answers[id])),
      );
      const said = spanned && spanSaid(view, of, id, spanned, options());
      const first = of.doubts.taken[spanned?.mostFrom[0]?.doubt ?? -1]?.numbers[0].id ?? null;
      if (said) spans.set(id, { ...said, first });
    }
    batch(() => {
      setKnown(spans);
      setDone(of.runs.length);
    });
  };
  return { known, setKnown, done, setDone, soFar, tellAll };
}

/** Runs that are asked, and what is told of them. */
function createRuns({ session: { engine }, options }: InHandTools, asker: Asker) {
  const [question, setQuestion] = createSignal<NotSure | null>(null);
  const { known, setKnown, done, setDone, soFar, tellAll } = createTold(options);
  let asked = 0;
  const stop = (): void => {
    asked++;
    asker.callOff();
  };
  const clear = (): void => {
    stop();
    batch(() => {
      setKnown(new Map());
      setQuestion(null);
      setDone(0);
    });
  };
  const begin = (): void => {
    stop();
    const mine = asked;
    const view = engine.view();
    const of = notSure({ worksheet: view.worksheet, whole: view }, WANTED, RUNS);
    const answered: Answers[] = [];
    let count = 0;
    batch(() => {
      setQuestion(of);
      setDone(0);
    });
    asker.ask(
      { worksheet: of.sheet, records: recordsInUse(engine), runs: of.runs, wanted: of.reached },
      {
        onAnswers: (at, answers) => {
          answered[at] = answers;
          count++;
          if (count % TOLD_EVERY !== 0 || count === of.runs.length) return;
          batch(() => {
            soFar(view, of, answered);
            setDone(count);
          });
        },
        onEnd: (failure) => {
          if (failure === null) void tellAll(view, of, answered, () => mine !== asked);
          else clear();
        },
      },
    );
  };
  return { known, done, setDone, question, begin, clear, stop };
}

/** Spans of the answers, and what stands under them. */
export function createNotSure(
  tools: InHandTools,
  asker: Asker,
): Pick<Doubting, "spanOf" | "withOthers" | "isOld" | "said"> {
  const { session, looking } = tools;
  const runs = createRuns(tools, asker);
  const { view } = session.engine;
  const ready = createMemo(() => view().results.get("season.plan")?.state === "ready");
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(
    on([() => view().worksheet, ready], ([worksheet, isReady]) => {
      clearTimeout(timer);
      runs.stop();
      if (!isUnsure(worksheet)) return runs.clear();
      // What was told before stays, marked old, until the first of the next runs are in.
      runs.setDone(0);
      if (isReady) timer = setTimeout(() => untrack(runs.begin), REST);
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    runs.stop();
  });
  /** The answer that is looked at, or the first that is not sure. */
  const about = (): QuantityId | null => {
    const spans = runs.known();
    const chosen = looking.answer();
    return spans.has(chosen) ? chosen : ([...spans.keys()][0] ?? null);
  };
  const said = createMemo<NotSureSaid | null>(() => {
    const of = runs.question();
    if (!of) return null;
    const id = about();
    const span = id === null ? undefined : runs.known().get(id);
    const { taken, held } = of.doubts;
    return {
      done: runs.done(),
      of: of.runs.length,
      about: id && span ? `${answerName(id) ?? id}: ${span.shown}` : "",
      many: manySaid(taken.length),
      beyond: span?.beyond ?? "",
      most: span?.most ?? "",
      measuring: span?.measuring ?? "",
      first: span?.first ?? null,
      asked: askedSaid(
        taken.length,
        held.length,
        of.runs.length,
        numberIn(view().results.get("season.seasons")),
      ),
    };
  });
  return {
    spanOf: (id) => runs.known().get(id)?.shown ?? null,
    withOthers: (id) => {
      const span = runs.known().get(id)?.shown;
      const now = looking.inHand();
      const taken = runs.question()?.doubts.taken ?? [];
      const isOne = taken.some(({ numbers }) => numbers.some((number) => number.id === now));
      return span === undefined ? "" : othersSaid(taken.length - (isOne ? 1 : 0), span);
    },
    isOld: () => runs.done() < (runs.question()?.runs.length ?? 0),
    said,
  };
}
