// Tries the number in hand all along its axis: nine values at once, then those between, and again when something else of
// the place has changed; the curve of before stays, marked old, until there is a new one.

import { type Accessor, createComputed, createMemo, createSignal, on, onCleanup, untrack } from "solid-js";
import type { Change } from "../document/changes.ts";
import { withChanges } from "../document/changes.ts";
import { sameData } from "../document/same.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { nodeOf } from "../graph/nodes.ts";
import { numberIn, wordIn } from "../graph/readers.ts";
import { shownOf, shownResult } from "../graph/shown.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { enoughOf, hasEnough } from "../studies/enough.ts";
import { stepSaid } from "../studies/step-said.ts";
import { coarseThenFine, sheetToTry, valueTrials } from "../studies/try.ts";
import { type Axis, placeOnAxis, type Turn, trialsAlong } from "../studies/turn.ts";
import type { Curve, Panel, TriedPoint } from "../ui/hand/hand.ts";
import type { ShowOptions } from "../units/show.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Engine } from "./engine.ts";
import { type AskFor, askedWith, type Raw, triedOf, withoutAt } from "./tried.ts";

/** Something else being changed goes on changing; a new curve waits until it rests [ms]. */
const REST = 400;
/** Values tried along an axis. */
const FINE = 25;
/** Figures of a value that is enough: as its step of the hand is read. */
const EDGE_FIGURES = 4;

type Job = {
  readonly turn: Turn;
  readonly axis: Axis;
  /** The worksheet with the number in hand as it was when it was taken: turning it begins nothing anew. */
  readonly sheet: Worksheet;
  readonly record: string;
};

export type Trying = {
  readonly engine: Engine;
  readonly asker: Asker;
  readonly turn: Accessor<Turn | null>;
  readonly axis: Accessor<Axis | null>;
  readonly answers: Accessor<readonly string[]>;
  readonly options: Accessor<ShowOptions>;
  /** What a value is called beside the axis. */
  readonly placeText: (value: number | string, figures?: number) => string;
};

type PointsOf = (answer: string) => readonly TriedPoint[];

export type Tried = {
  readonly curve: Accessor<Curve>;
  /** Asks at some values more [SI], which do not join the curve: for whoever waits until that stands. */
  readonly askAt: (values: readonly number[], onPoints: (of: PointsOf) => void) => void;
  /** "without Long bed": what an answer is without as it stands now; "" where all are in it. */
  readonly without: (answer: string) => string;
  readonly stepSaid: typeof stepSaid;
};

const sameJob = (a: Job | null, b: Job | null): boolean =>
  a === b ||
  (!!a && !!b && a.turn === b.turn && a.axis === b.axis && a.record === b.record && a.sheet === b.sheet);

function createJob({ engine, turn, axis }: Trying): Accessor<Job | null> {
  const record = createMemo(() => wordIn(engine.view().results.get("weather.record_in_use")));
  const sheet = createMemo<Worksheet | null>((before) => {
    const now = turn();
    if (!now) return null;
    const asTaken = withChanges(engine.view().worksheet, [{ ...now.target, entry: now.entry }]);
    return before && sameData(before, asTaken) ? before : asTaken;
  }, null);
  return createMemo<Job | null>(
    () => {
      const [now, over, of] = [turn(), axis(), sheet()];
      return now && over && of ? { turn: now, axis: over, sheet: of, record: record() } : null;
    },
    null,
    { equals: sameJob },
  );
}

/** A point more, or what more is answered there, in their order. */
function withPoint(known: readonly Raw[], raw: Raw): readonly Raw[] {
  const there = known.find(({ place }) => place === raw.place);
  const merged = there ? { ...raw, answers: { ...there.answers, ...raw.answers } } : raw;
  return [...known.filter(({ place }) => place !== raw.place), merged].sort((a, b) => a.place - b.place);
}

/** Runs that are asked for one after the other: the picture, then the edge of enough. */
function createRuns({ engine, asker }: Trying) {
  const [points, setPoints] = createSignal<readonly Raw[]>([]);
  const [state, setState] = createSignal<Curve["state"]>("still");
  const [reason, setReason] = createSignal("");
  /** Whether it is known where enough begins; what was tried first lies too far apart to say. */
  const [edged, setEdged] = createSignal(false);

  const put = (raw: Raw): void => {
    setPoints((known) => withPoint(known, raw));
  };
  const ask = (
    { turn, sheet, record }: Job,
    trials: readonly { readonly change: Change; readonly value: number | string; readonly place: number }[],
    wanted: readonly string[],
    events: {
      readonly onFirst?: () => void;
      /** What becomes of an answer; else it is put into the picture. */
      readonly onRaw?: (raw: Raw) => void;
      readonly onEnd: () => void;
    },
  ): void => {
    const [first] = trials;
    const held = engine.records.get(record);
    if (!first) {
      events.onEnd();
      return;
    }
    const question = {
      worksheet: sheetToTry(sheet, CARD_KINDS, turn.row, first),
      records: held ? [held] : [],
      runs: trials.map(({ change }) => [change]),
      wanted: askedWith(untrack(engine.view).graph, wanted),
    };
    let isFirst = true;
    asker.ask(question, {
      onAnswers: (at, answers) => {
        if (isFirst) events.onFirst?.();
        isFirst = false;
        const trial = trials[at];
        if (trial) (events.onRaw ?? put)({ place: trial.place, value: trial.value, answers });
      },
      onEnd: (failure) => {
        if (failure === null) return events.onEnd();
        setReason(failure);
        setState("failed");
      },
    });
  };
  const begun = (isFresh: boolean): void => {
    if (isFresh) setPoints([]);
    setEdged(false);
    setState("working");
  };
  const end = (): void => {
    setEdged(true);
    setState("ready");
  };
  return { points, setPoints, put, state, setState, reason, edged, setEdged, ask, begun, end };
}

/** What is tried along the axis: far apart first, then all that lies between. */
function trialsOf({ turn, axis }: Job) {
  const along = trialsAlong(turn, axis, FINE);
  return coarseThenFine(along.length).flatMap((at) => along[at] ?? []);
}

const isOtherNumber = (before: Job | null, now: Job): boolean =>
  before?.turn !== now.turn || before.axis !== now.axis;

/** Where enough begins; null where it cannot be told. */
async function edgeOf(now: Job, answer: string, points: readonly Raw[], askFor: AskFor): Promise<Raw | null> {
  try {
    const { edgeFound } = await import("./enough-edge.ts");
    return await edgeFound(now, answer, points, askFor);
  } catch {
    return null;
  }
}

/** Asks at some values more than the curve has. */
function createAskAt(
  trying: Trying,
  runs: ReturnType<typeof createRuns>,
  job: Accessor<Job | null>,
): Tried["askAt"] {
  return (values, onPoints) => {
    const [now, over] = [job(), trying.axis()];
    if (!now || over?.form !== "number") return;
    const { unit } = over.scale;
    const trials = valueTrials(
      now.turn.target,
      values.map((si) => tidy(fromSi(si, unit))),
      unit,
    ).map((trial) => ({ ...trial, place: placeOnAxis(over, trial.value) ?? 0 }));
    const raws: Raw[] = [];
    const onEnd = () => onPoints((answer) => pointsOf(trying, raws, answer));
    runs.ask(now, trials, trying.answers(), { onRaw: (raw) => raws.push(raw), onEnd });
  };
}

/** The curve of the number in hand. */
export function createTrying(trying: Trying): Tried {
  const job = createJob(trying);
  const runs = createRuns(trying);
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Counts the runs: what was called off must ask nothing any more, its asking would call off what came after it. */
  let run = 0;
  const wanted = () => trying.answers();

  /** Finds where enough begins as what is worked back is; that alone joins the picture. */
  const refine = (now: Job): void => {
    const [answer] = wanted();
    if (answer === undefined || !hasEnough(now.turn.row)) {
      runs.end();
      return;
    }
    const mine = run;
    const askFor: AskFor = (trials, onRaw) =>
      new Promise((onEnd) => {
        if (mine === run) runs.ask(now, trials, wanted(), { onRaw, onEnd });
      });
    void edgeOf(now, answer, runs.points(), askFor).then((found) => {
      if (mine !== run) return;
      if (found) runs.put(found);
      runs.end();
    });
  };
  const begin = (now: Job, isFresh: boolean): void => {
    runs.ask(now, trialsOf(now), wanted(), {
      onFirst: () => runs.begun(isFresh),
      onEnd: () => refine(now),
    });
  };
  const stop = (): void => {
    run += 1;
    clearTimeout(timer);
    trying.asker.callOff();
  };
  createComputed(
    on([job, wanted], ([now, answers], before) => {
      stop();
      if (!now || answers.length === 0) {
        runs.setPoints([]);
        return void runs.setState("still");
      }
      const last = before?.[0] ?? null;
      const isOther = isOtherNumber(last, now);
      if (isOther) runs.setPoints([]);
      const isFresh = !sameJob(last, now);
      const waits = isFresh && !isOther;
      runs.setEdged((is) => is && waits);
      runs.setState(waits ? "old" : "working");
      timer = setTimeout(() => untrack(() => begin(now, isFresh)), waits ? REST : 0);
    }),
  );
  onCleanup(stop);
  const panels = createMemo(() =>
    wanted().map((answer) => panelOf(trying, runs.points(), answer, runs.edged())),
  );
  return {
    curve: () => ({ panels: panels(), state: runs.state(), reason: runs.reason() }),
    askAt: createAskAt(trying, runs, job),
    without: (answer) => withoutAt(trying.engine.view(), answer, {}),
    stepSaid,
  };
}

const HOW = { from: "enough from", "up to": "enough up to", "little more": "little more past" } as const;

/** What was tried as it stands on the curve of an answer. */
function pointsOf({ engine, turn, options }: Trying, points: readonly Raw[], answer: string) {
  const view = untrack(engine.view);
  const { graph, worksheet } = view;
  const [node, own] = [nodeOf(graph, answer), nodeOf(graph, turn()?.id ?? "")];
  return points.map(({ place, value, answers }): TriedPoint => {
    const result = answers[answer];
    const number = numberIn(result);
    const without = number === null ? "" : withoutAt(view, answer, answers);
    const said = node && result ? shownResult(worksheet, node, result, options()) : "";
    return {
      place,
      text: own ? shownOf(worksheet, own, value, options()) : "",
      answer: number,
      said: without === "" ? said : `${said}, ${without}`,
      ...(without === "" ? {} : { without: true as const }),
    };
  });
}

function panelOf(trying: Trying, points: readonly Raw[], answer: string, isEdged: boolean): Panel {
  const { turn, axis, placeText } = trying;
  const tried = pointsOf(trying, points, answer);
  const row = turn()?.row;
  const enough = isEdged && row && hasEnough(row) ? enoughOf(answer, triedOf(points, answer)) : null;
  // Days are tried weeks apart, and not searched any closer.
  const about = axis()?.form === "day" ? "about " : "";
  const at = points.find(({ place }) => place === enough?.place);
  return {
    answer,
    points: tried,
    enough:
      enough && at
        ? { place: at.place, text: `${HOW[enough.how]} ${about}${placeText(at.value, EDGE_FIGURES)}` }
        : null,
  };
}
