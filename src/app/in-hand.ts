// The number in hand: what it is, the axis it is turned over, and every way of turning it, all of them one step of undo
// until it is put down.

import {
  type Accessor,
  batch,
  createComputed,
  createEffect,
  createMemo,
  createSignal,
  on,
  untrack,
} from "solid-js";
import type { Entry } from "../document/worksheet.ts";
import { numberIn, shownIn } from "../graph/readers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { movedBy } from "../studies/moved-by.ts";
import { type Axis, entryAtPlace, entryStepped, marksOf, placeOnAxis, type Turn } from "../studies/turn.ts";
import type { AxisView, Before, Curve, Hand } from "../ui/hand/hand.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { later } from "./later.ts";
import { createPutting } from "./putting.ts";
import type { Tried, Trying } from "./trying.ts";
import { createAxis, createTexts, createTurned, type InHandTools, type Turned } from "./turned.ts";

/** Where on the axis it stands, and stood. */
function createPlaces(
  { session }: InHandTools,
  { turn, value }: Turned,
  axis: Accessor<Axis | null>,
  { placeText, saidOf }: ReturnType<typeof createTexts>,
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
    // As it was read: of a usual value no finer than its table had it.
    const text = `${held ? "held" : "was"} ${placeText(was, undefined, !held && now?.entry === null)}`;
    const answer = (id: string) => numberIn(results.get(id));
    const said = (id: string) => (answer(id) === null ? "" : saidOf(id, answer(id) ?? 0));
    return { place, text, held, answer, said };
  });
  const view = createMemo<AxisView | null>(() => {
    const over = axis();
    if (!over) return null;
    const marks = marksOf(over).map(({ place, value: of }) => ({ place, text: placeText(of) }));
    return { form: over.form === "word" ? "words" : "span", marks };
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
  const hasNumber = (id: string): boolean => {
    const result = view().results.get(id);
    return result?.state === "pending" || typeof shownIn(result) === "number";
  };
  // What was chosen or is looked at goes on being so, and says why it has no number, where it has none any more.
  const kept = createMemo<{ readonly of: Turn | null; readonly answer: string | null }>(
    (last) => {
      const [of, chosen] = [turn(), looking.answer()];
      const wasShown = last.of === of && last.answer === chosen;
      const isShown = may().includes(chosen) && (looking.hasChosen() || wasShown || hasNumber(chosen));
      return { of, answer: isShown ? chosen : (may().find(hasNumber) ?? null) };
    },
    { of: null, answer: null },
  );
  const answer = createMemo(() => kept().answer);
  const answers = createMemo<readonly string[]>(
    () => may().filter((id) => id === answer() || id === looking.second() || hasNumber(id)),
    [],
    { equals: sameList },
  );
  const second = createMemo(() => {
    const chosen = looking.second();
    return chosen !== null && chosen !== answer() && answers().includes(chosen) ? chosen : null;
  });
  const drawn = createMemo<readonly string[]>(() => [answer(), second()].filter((id) => id !== null), [], {
    equals: sameList,
  });
  return { answers, answer, second, drawn };
}

/** The number in hand, and what others who turn it need of it. */
export type InHand = { readonly hand: Hand; readonly inside: InHandInside };

export type InHandInside = {
  readonly turned: Turned;
  readonly axis: Accessor<Axis | null>;
  readonly texts: ReturnType<typeof createTexts>;
  readonly putting: ReturnType<typeof createPutting>;
  readonly curve: Accessor<Curve>;
  readonly made: Accessor<Tried | null>;
};

/** What stands in the field of the number in hand; another number's field begins as it is. */
function createTyped({ session, edits }: InHandTools, turn: Turned["turn"]): Pick<Hand, "text" | "setText"> {
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
  return {
    text,
    setText: (typed) => {
      const now = turn();
      setText(typed);
      if (now) edits().typed(now.id, typed);
    },
  };
}

/** The curve is fetched once a number is in hand; until it is there, its answers have their room. */
function createTriedLater(trying: Trying) {
  const [made, setMade] = createSignal<Tried | null>(null);
  const fetched = later(async () => {
    const { createTrying } = await import("./trying.ts");
    return () => createTrying(trying);
  });
  createEffect(() => {
    if (trying.turn() !== null && made() === null) void fetched().then(setMade, () => undefined);
  });
  const waiting = (): Curve => ({
    panels: trying.answers().map((answer) => ({ answer, points: [], enough: null })),
    state: "working",
    reason: "",
  });
  return { made, curve: () => made()?.curve() ?? waiting() };
}

export function createInHand(tools: InHandTools, asker: Asker): InHand {
  const { session, options } = tools;
  const turned = createTurned(tools);
  const { turn, entry, stands } = turned;
  const axis = createAxis(turned);
  const texts = createTexts(tools, turned);
  const putting = createPutting(tools, turned);
  const { before, view, place } = createPlaces(tools, turned, axis, texts);
  const { answers, answer, second, drawn } = createAnswers(tools, turned);
  const typed = createTyped(tools, turn);
  const next = (by: 1 | -1, coarse = false): Entry | null => {
    const over = axis();
    return over && entryStepped(over, stands(), by, coarse);
  };
  const stepText = (by: 1 | -1): string | null => {
    const [to, now, over] = [next(by), turn(), axis()];
    const sign = by === 1 ? "+" : "−";
    if (!to || !now || !over) return null;
    return made()?.stepSaid({ row: now.row, axis: over }, stands(), to, by, options()) ?? sign;
  };
  const turnTo = (to: Entry): void => {
    // Together, so that what reads both is told once.
    batch(() => {
      tools.looking.stir();
      putting.put(putting.keeping(to));
    });
  };
  const { made, curve } = createTriedLater({
    engine: session.engine,
    asker,
    turn,
    axis,
    answers: drawn,
    options,
    placeText: texts.placeText,
  });
  const hand: Hand = {
    turned: createMemo(() => {
      const now = turn();
      return now && { id: now.id, card: now.target.card, row: now.row };
    }),
    entry,
    axis: view,
    place,
    before,
    steps: createMemo(() => ({ down: stepText(-1), up: stepText(1) })),
    step: (by, coarse) => {
      const to = next(by, coarse);
      if (to) turnTo(to);
    },
    slide: (at) => {
      const over = axis();
      if (over) turnTo(entryAtPlace(over, at));
    },
    put: (to) => putting.put(to && putting.keeping(to)),
    origin: putting.origin,
    setOrigin: putting.setOrigin,
    restore: putting.restore,
    ...typed,
    answers,
    answer,
    second,
    without: (id) => made()?.without(id) ?? "",
    curve,
  };
  return { hand, inside: { turned, axis, texts, putting, curve, made } };
}
