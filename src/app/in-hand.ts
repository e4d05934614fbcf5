// The number in hand: what it is, the axis it is turned over, and every way of turning it, all of them one step of undo
// until it is put down.

import { type Accessor, createComputed, createMemo, createSignal, on, untrack } from "solid-js";
import { sameData } from "../document/same.ts";
import type { Entry, Origin, Worksheet } from "../document/worksheet.ts";
import { nodeOf } from "../graph/nodes.ts";
import { numberIn, shownIn } from "../graph/readers.ts";
import { shownOf } from "../graph/shown.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { movedBy } from "../studies/moved-by.ts";
import {
  type Axis,
  axisHolding,
  axisIn,
  entryAtPlace,
  entryAtTarget,
  entryStepped,
  placeOnAxis,
  type Turn,
  targetOf,
  turnedUnit,
  turnOf,
} from "../studies/turn.ts";
import type { AxisView, Before, Hand } from "../ui/hand/hand.ts";
import type { Looking } from "../ui/looking.ts";
import type { Edits } from "../ui/sheet.ts";
import { MEASURES } from "../units/measures.ts";
import { displayParts, type ShowOptions, showNumber, showQuantity } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Session } from "./session.ts";
import { createTrying } from "./trying.ts";

export type InHandTools = {
  readonly session: Session;
  readonly looking: Looking;
  readonly edits: () => Edits;
  readonly options: Accessor<ShowOptions>;
  readonly asker: Asker;
};

const FIGURES = 12;
const STEP_FIGURES = 4;

/** What is in hand, and what stands there now. */
function createTurned({ session, looking }: InHandTools) {
  const { engine } = session;
  const turn = createMemo<Turn | null>(
    on(looking.inHand, (id) => {
      if (id === null) return null;
      const { worksheet, results } = engine.view();
      const held = session.held()?.results;
      return turnOf(worksheet, CARD_KINDS, id, held ? [results, held] : [results]);
    }),
  );
  const worksheet = (): Worksheet => engine.view().worksheet;
  const target = () => {
    const now = turn();
    return now && targetOf(worksheet(), now.target.card, now.row);
  };
  const entry = createMemo<Entry | null>(
    () => {
      const at = target();
      return at && entryAtTarget(worksheet(), at);
    },
    null,
    { equals: sameData },
  );
  /** In SI, a word or a date; also where it lies outside the row's limits and nothing is worked out from it. */
  const value = createMemo<number | string | null>(() => {
    const [now, of] = [turn(), entry()];
    if (!now) return null;
    if (typeof of?.value === "number") return toSi(of.value, of.unit || "1");
    if (typeof of?.value === "string") return of.value;
    const shown = shownIn(engine.view().results.get(now.id));
    return typeof shown === "number" || typeof shown === "string" ? shown : null;
  });
  const unit = createMemo(() => {
    const now = turn();
    return now?.row.row === "given" ? turnedUnit(now.row, entry(), worksheet()) : "";
  });
  return { turn, target, entry, value, unit };
}

type Turned = ReturnType<typeof createTurned>;

function createAxis({ turn, value, unit }: Turned): Accessor<Axis | null> {
  const standing = createMemo<{ readonly of: Turn; readonly axis: Axis | null } | null>((before) => {
    const now = turn();
    if (!now) return null;
    const last = before?.of === now ? before.axis : now.axis;
    const axis = last && axisHolding(last, now.row, value());
    return before?.of === now && before.axis === axis ? before : { of: now, axis };
  }, null);
  return createMemo<Axis | null>((before) => {
    const axis = standing()?.axis ?? null;
    const shown = axis && axisIn(axis, unit());
    return before && sameData(before, shown) ? before : shown;
  }, null);
}

/** What values and steps are called. */
function createTexts({ session, options }: InHandTools, { turn, value, unit }: Turned) {
  const said = (of: number | string): string => {
    const { graph, worksheet } = untrack(session.engine.view);
    const node = nodeOf(graph, turn()?.id ?? "");
    return node ? shownOf(worksheet, node, of, options()) : "";
  };
  /** Without its unit, where that stands beside the large value anyway. */
  const placeText = (of: number | string): string => {
    const row = turn()?.row;
    if (row?.row !== "given" || typeof of !== "number") return said(of);
    return displayParts(of, row.measure, { ...options(), unit: unit() }).number;
  };
  const stepText = (next: Entry | null, sign: string): string | null => {
    const [row, now] = [turn()?.row, value()];
    if (!next) return null;
    if (row?.row !== "given" || typeof next.value !== "number") return sign;
    const { form } = MEASURES[row.measure];
    const by = Math.abs(next.value - fromSi(typeof now === "number" ? now : 0, next.unit));
    if (form === "duration" || form === "clock") {
      return `${sign}${showQuantity(toSi(by, next.unit), "duration", options())}`;
    }
    return `${sign}${showNumber(Number(by.toPrecision(FIGURES)), STEP_FIGURES, options().locale)}`;
  };
  return { said, placeText, stepText };
}

/** Setting what stands there. */
function createPutting({ session, edits }: InHandTools, { turn, target, entry, value, unit }: Turned) {
  const card = () => session.worksheet().cards.find(({ id }) => id === turn()?.target.card);
  const put = (next: Entry | null): void => {
    const [of, now, at] = [card(), turn(), target()];
    if (!of || !now || !at) return;
    if (at.part === "measured") {
      edits().measured(of, now.row, next && { ...next, from: "measured" }, true);
    } else edits().given(of, now.row, next, true);
  };
  /** Where it came from goes with it; but what was borrowed or usual is the grower's own once it is turned. */
  const keeping = (next: Entry): Entry => {
    const from = entry()?.from;
    return from && from !== "default" && from !== "borrowed" ? { ...next, from } : next;
  };
  const bare = (): Entry | null => {
    const [of, si] = [entry(), value()];
    if (of) return { value: of.value, unit: of.unit, ...(of.spread === undefined ? {} : { spread: of.spread }) };
    if (typeof si === "string") return { value: si, unit: "" };
    return si === null ? null : { value: Number(fromSi(si, unit()).toPrecision(FIGURES)), unit: unit() };
  };
  const setOrigin = (from: Origin | ""): void => {
    const [of, now, at, kept] = [card(), turn(), target(), bare()];
    if (!of || !now || !at || !kept) return;
    const isMeasurable = now.row.row === "given" && now.row.measurable !== undefined;
    if (isMeasurable && from === "measured") {
      return edits().measured(of, now.row, { ...kept, from }, true);
    }
    if (at.part === "measured") edits().measured(of, now.row, null, true);
    const next = from === "default" ? null : { ...kept, ...(from ? { from } : {}) };
    // The card of before the first of the two edits: an edit looks for its own by id.
    edits().given(of, now.row, next, true);
  };
  const restore = (): boolean => {
    const now = turn();
    if (!now) return false;
    const isDropped = session.drop(now.id);
    const stands = entryAtTarget(session.engine.view().worksheet, now.target);
    const isOther = !sameData(stands, now.entry);
    if (isOther) {
      put(now.entry);
      session.settle();
    }
    return isDropped || isOther;
  };
  const origin = (): Origin | "" => {
    if (target()?.part === "measured") return "measured";
    return entry() ? (entry()?.from ?? "") : "default";
  };
  return { put, keeping, setOrigin, restore, origin };
}

/** Where on the axis it stands, and stood. */
function createPlaces(
  { session }: InHandTools,
  { turn, value }: Turned,
  axis: Accessor<Axis | null>,
  placeText: (of: number | string) => string,
) {
  const placeOf = (of: unknown): number | null => {
    const over = axis();
    return over && (typeof of === "number" || typeof of === "string") ? placeOnAxis(over, of) : null;
  };
  const before = createMemo<Before | null>(() => {
    const [results, now] = [session.baseline(), turn()];
    const was = shownIn(now ? results?.get(now.id) : undefined);
    if (!results || (typeof was !== "number" && typeof was !== "string") || was === value()) return null;
    const place = placeOf(was);
    if (place === null || place < 0 || place > 1) return null;
    const held = session.held() !== null;
    const text = `${held ? "held" : "was"} ${placeText(was)}`;
    return { place, text, held, answer: (id) => numberIn(results.get(id)) };
  });
  const view = createMemo<AxisView | null>(() => {
    const over = axis();
    if (!over) return null;
    const words = over.form === "word" ? over.words : null;
    const places = words ? words.map((_, at) => at / Math.max(1, words.length - 1)) : [0, 1];
    const marks = places.map((place) => {
      const { value: stands, unit } = entryAtPlace(over, place);
      const end = over.form === "number" ? (place === 0 ? over.scale.low : over.scale.high) : stands;
      const of = typeof end === "number" ? toSi(end, over.form === "number" ? over.scale.unit || "1" : unit) : end;
      return { place, text: typeof of === "number" || typeof of === "string" ? placeText(of) : "" };
    });
    return { form: words ? "words" : "span", marks };
  });
  return { before, view, place: createMemo(() => placeOf(value())) };
}

/** Which answers it can move, and which of them are drawn. */
function createAnswers({ session, looking }: InHandTools, { turn }: Turned) {
  const { view } = session.engine;
  const graph = createMemo(() => view().graph);
  const may = createMemo(() => {
    const now = turn();
    const kind = view().worksheet.cards.find(({ id }) => id === now?.target.card)?.kind ?? "";
    return now ? movedBy(graph(), now.id, CARD_KINDS[kind]?.rows ?? [], looking.answer()) : [];
  });
  const sameList = (a: readonly string[], b: readonly string[]) => a.join() === b.join();
  const answers = createMemo<readonly string[]>(
    () =>
      may().filter((id) => {
        const result = view().results.get(id);
        return result?.state === "pending" || typeof shownIn(result) === "number";
      }),
    [],
    { equals: sameList },
  );
  const answer = createMemo(() => {
    const chosen = looking.answer();
    return answers().includes(chosen) ? chosen : (answers()[0] ?? null);
  });
  const second = createMemo(() => {
    const chosen = looking.second();
    return chosen !== null && chosen !== answer() && answers().includes(chosen) ? chosen : null;
  });
  const drawn = createMemo<readonly string[]>(
    () => [answer(), second()].filter((id) => id !== null),
    [],
    { equals: sameList },
  );
  return { answers, answer, second, drawn };
}

export function createInHand(tools: InHandTools): Hand {
  const { session, options, asker } = tools;
  const turned = createTurned(tools);
  const { turn, entry, value } = turned;
  const axis = createAxis(turned);
  const texts = createTexts(tools, turned);
  const putting = createPutting(tools, turned);
  const { before, view, place } = createPlaces(tools, turned, axis, texts.placeText);
  const { answers, answer, second, drawn } = createAnswers(tools, turned);
  const [text, setText] = createSignal<string | null>(null);
  // What another number's turning joined is a step of its own, and so is what this one's will.
  createComputed(
    on(
      turn,
      () => {
        setText(null);
        untrack(session.settle);
      },
      { defer: true },
    ),
  );
  const next = (by: 1 | -1, coarse = false): Entry | null => {
    const over = axis();
    return over && entryStepped(over, value(), by, coarse);
  };
  const curve = createTrying({
    engine: session.engine,
    asker,
    turn,
    axis,
    answers: drawn,
    options,
    placeText: texts.placeText,
  });
  return {
    turned: createMemo(() => {
      const now = turn();
      return now && { id: now.id, card: now.target.card, row: now.row };
    }),
    entry,
    axis: view,
    place,
    before,
    steps: createMemo(() => ({ down: texts.stepText(next(-1), "−"), up: texts.stepText(next(1), "+") })),
    step: (by, coarse) => {
      const to = next(by, coarse);
      if (to) putting.put(putting.keeping(to));
    },
    slide: (at) => {
      const over = axis();
      if (over) putting.put(putting.keeping(entryAtPlace(over, at)));
    },
    put: (to) => putting.put(to && putting.keeping(to)),
    origin: putting.origin,
    setOrigin: putting.setOrigin,
    restore: putting.restore,
    text,
    setText: (typed) => {
      setText(typed);
    },
    answers,
    answer,
    second,
    curve,
  };
}
