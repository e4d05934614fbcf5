// Work back, in the working of an answer: what is wished of it, the number to turn for it, and the values that do it.

import { createEffect, createMemo, createSignal, For, on, onCleanup, Show } from "solid-js";
import { type Sentence, textOf } from "../../telling/asked.ts";
import { MEASURES } from "../../units/measures.ts";
import { rowAt } from "../row-at.ts";
import { readTyped } from "../rows/number-text.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { withoutSaid } from "./counted-words.ts";
import type { Sense, WorkBackTools, WorkedBack } from "./work-back.ts";

const says = ({ pieces }: Sentence, answer: string): boolean =>
  pieces.some((piece) => typeof piece !== "string" && piece.quantity === answer);

/** The sentence in which an answer stands on top. */
const sentenceOf = (sheet: Sheet, answer: string): Sentence | null =>
  sheet.answers().find((one) => says(one, answer)) ?? null;

/** Words that stand by an answer: those of its sentence and of its row. */
function wordsAbout(sheet: Sheet, answer: string): string {
  const sentence = sentenceOf(sheet, answer);
  return `${sentence ? textOf(sentence, sheet.shown) : ""} ${sheet.place(answer)}`;
}

/** What stands behind the number there: " days", " of 20". */
function afterOf(sheet: Sheet, answer: string): string {
  const piece = sentenceOf(sheet, answer)?.pieces.find(
    (one) => typeof one !== "string" && one.quantity === answer,
  );
  return typeof piece === "object" ? (piece.after ?? "").trim() : "";
}

/** What a text says of an answer [SI], or why it says nothing. */
function readTarget(
  sheet: Sheet,
  answer: string,
  text: string,
): { readonly si: number } | { readonly wrong: string } {
  const row = rowAt(sheet, answer)?.row;
  if (!row || !("measure" in row) || !row.measure || row.measure === "text" || row.measure === "series")
    return { wrong: "no number" };
  const isCount = MEASURES[row.measure].form === "count";
  const number = isCount ? withoutSaid(text, wordsAbout(sheet, answer)) : text;
  const read = readTyped(sheet, number, row.measure, sheet.unitOf(answer));
  return read.ok ? { si: read.si } : { wrong: read.message };
}

/** Asks, and holds what was said until the worksheet changes. */
function createAsking(tools: WorkBackTools, answer: string) {
  const sheet = useSheet();
  const [worked, setWorked] = createSignal<WorkedBack | null>(null);
  const [busy, setBusy] = createSignal(false);
  const [wrong, setWrong] = createSignal("");
  let asked = 0;
  const clear = (): void => {
    asked += 1;
    tools.callOff();
    setBusy(false);
    setWorked(null);
    setWrong("");
  };
  const ask = async (number: string, sense: Sense, text: string): Promise<void> => {
    clear();
    const own = asked;
    const target = readTarget(sheet, answer, text);
    if ("wrong" in target) return void setWrong(target.wrong);
    const told = (tell: () => void): void => {
      if (own !== asked) return;
      setBusy(false);
      tell();
    };
    setBusy(true);
    await tools.work({ answer, number, sense, target: target.si }).then(
      (found) => told(() => setWorked(found)),
      (error: Error) => told(() => setWrong(error.message)),
    );
  };
  createEffect(on(sheet.worksheet, clear, { defer: true }));
  onCleanup(clear);
  return { worked, busy, wrong, ask, clear };
}

function Options(props: { readonly ids: readonly string[]; readonly value: string }) {
  const sheet = useSheet();
  return (
    <For each={props.ids}>
      {(id) => (
        <option value={id} selected={id === props.value}>
          {sheet.place(id)}
        </option>
      )}
    </For>
  );
}

/** Those that move the answer first; the others, once it is known which they are, after them. */
function Numbers(props: {
  readonly ids: readonly string[];
  readonly moving: readonly string[] | null;
  readonly value: string;
  readonly onPick: (id: string) => void;
}) {
  const moving = () => props.moving ?? props.ids;
  const others = () => props.ids.filter((id) => !moving().includes(id));
  return (
    <select
      aria-label="The number to turn for it"
      value={props.value}
      onChange={(event) => props.onPick(event.currentTarget.value)}
    >
      <Options ids={moving()} value={props.value} />
      <Show when={others().length > 0}>
        <optgroup label="No different at either end">
          <Options ids={others()} value={props.value} />
        </optgroup>
      </Show>
    </select>
  );
}

function Outcome(props: { readonly worked: WorkedBack; readonly onSet: (at: number) => void }) {
  return (
    <>
      <Show when={props.worked.said}>{(said) => <p>{said()}</p>}</Show>
      <ul>
        <For each={props.worked.values}>
          {(value, at) => (
            <li>
              <span>{value.said}</span>{" "}
              <button type="button" class="does" onClick={() => props.onSet(at())}>
                Set it to {value.shown}
              </button>
            </li>
          )}
        </For>
      </ul>
    </>
  );
}

type Wish = NonNullable<ReturnType<WorkBackTools["wish"]>>;

/** The number to turn: the likeliest, until it is known which helps or its grower picks one. */
function createNumber(tools: WorkBackTools, answer: string, wish: Wish) {
  const all = tools.numbers(answer);
  const [picked, pick] = createSignal<string | null>(null);
  const [helps, setHelps] = createSignal<string | null>(null);
  const [moving, setMoving] = createSignal<readonly string[] | null>(null);
  let isOpen = true;
  onCleanup(() => {
    isOpen = false;
  });
  const hear = <T,>(asked: Promise<T>, told: (found: T) => void): Promise<void> =>
    asked.then(
      (found) => void (isOpen && told(found)),
      () => undefined,
    );
  const first = hear(tools.helping(answer, wish), setHelps);
  let isAsked = false;
  return {
    all,
    moving,
    number: createMemo(() => picked() ?? helps() ?? all[0] ?? ""),
    pick,
    // All of them are many seasons: asked once somebody means to work back at all, and after the first.
    askMoving: (): void => {
      if (isAsked) return;
      isAsked = true;
      void first.then(() => hear(tools.moving(answer), setMoving));
    },
  };
}

/** What was said is brought into view within the working, which may be lower than what it says. */
function createInView(said: () => unknown) {
  let status: HTMLElement | undefined;
  createEffect(
    on(
      said,
      (is) => {
        if (is) queueMicrotask(() => status?.scrollIntoView({ block: "nearest" }));
      },
      { defer: true },
    ),
  );
  return (element: HTMLElement): void => {
    status = element;
  };
}

function Asking(props: { readonly answer: string; readonly wish: Wish; readonly tools: WorkBackTools }) {
  const sheet = useSheet();
  const { tools, answer, wish } = props;
  const [sense, setSense] = createSignal<Sense>(wish.sense);
  const [text, setText] = createSignal(wish.text);
  const { all, moving, number, pick, askMoving } = createNumber(tools, answer, wish);
  const { worked, busy, wrong, ask, clear } = createAsking(tools, answer);
  const watch = createInView(() => worked() ?? wrong());
  const changed = (change: () => void): void => {
    clear();
    change();
  };
  // What was asked of one number is no answer of another.
  createEffect(on(number, clear, { defer: true }));
  const set = (at: number): void => {
    const value = worked()?.values[at];
    if (value) tools.set(number(), value.entry);
  };
  return (
    <Show when={all.length > 0}>
      <form
        class="work-back"
        aria-label="Work back"
        onFocusIn={askMoving}
        onSubmit={(event) => {
          event.preventDefault();
          pick(number());
          void ask(number(), sense(), text());
        }}
      >
        <h3>Work back</h3>
        <p>
          <select
            aria-label="At most or at least"
            value={sense()}
            onChange={(event) => changed(() => setSense(event.currentTarget.value as Sense))}
          >
            <option value="at most">at most</option>
            <option value="at least">at least</option>
          </select>
          <input
            aria-label={`Wished: ${sheet.place(answer)}`}
            autocomplete="off"
            value={text()}
            aria-invalid={wrong() ? "true" : "false"}
            onInput={(event) => changed(() => setText(event.currentTarget.value))}
          />
          {afterOf(sheet, answer)} by turning
        </p>
        <p>
          <Numbers ids={all} moving={moving()} value={number()} onPick={(id) => changed(() => pick(id))} />
          <button type="submit" class="does" disabled={busy()}>
            {busy() ? "Working …" : "Work it out"}
          </button>
        </p>
        <div role="status" ref={watch}>
          <Show when={wrong()}>{(why) => <p class="wrong">{why()}</p>}</Show>
          <Show when={worked()}>{(found) => <Outcome worked={found()} onSet={set} />}</Show>
        </div>
      </form>
    </Show>
  );
}

/** Stands only where some number that matters moves the answer. */
export function WorkBack(props: { readonly answer: string }) {
  const sheet = useSheet();
  const [tools, setTools] = createSignal<WorkBackTools | null>(null);
  void sheet.workBack().then((made) => setTools(() => made));
  return (
    <Show when={tools()} keyed>
      {(made) => (
        <Show when={props.answer} keyed>
          {(answer) => {
            const wish = made.wish(answer);
            return wish && <Asking answer={answer} wish={wish} tools={made} />;
          }}
        </Show>
      )}
    </Show>
  );
}
