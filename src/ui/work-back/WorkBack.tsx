// Work back, in the working of an answer: what is wished of it, the number to turn for it, and the values that do it.

import { createEffect, createSignal, For, on, onCleanup, Show } from "solid-js";
import { rowAt } from "../row-at.ts";
import { readTyped } from "../rows/number-text.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import type { Sense, WorkBackTools, WorkedBack } from "./work-back.ts";

/** What a text says of an answer [SI], or why it says nothing. */
function readTarget(
  sheet: Sheet,
  answer: string,
  text: string,
): { readonly si: number } | { readonly wrong: string } {
  const row = rowAt(sheet, answer)?.row;
  if (!row || !("measure" in row) || !row.measure || row.measure === "text" || row.measure === "series")
    return { wrong: "no number" };
  const read = readTyped(sheet, text, row.measure, sheet.unitOf(answer));
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

function Numbers(props: {
  readonly ids: readonly string[];
  readonly value: string;
  readonly onPick: (id: string) => void;
}) {
  const sheet = useSheet();
  return (
    <select
      aria-label="The number to turn for it"
      value={props.value}
      onChange={(event) => props.onPick(event.currentTarget.value)}
    >
      <For each={props.ids}>
        {(id) => (
          <option value={id} selected={id === props.value}>
            {sheet.place(id)}
          </option>
        )}
      </For>
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

function Asking(props: { readonly answer: string; readonly tools: WorkBackTools }) {
  const sheet = useSheet();
  const { tools, answer } = props;
  const { all, first } = tools.numbers(answer);
  const wish = tools.wish(answer);
  const [sense, setSense] = createSignal<Sense>(wish.sense);
  const [text, setText] = createSignal(wish.text);
  const [number, setNumber] = createSignal(first ?? "");
  const { worked, busy, wrong, ask, clear } = createAsking(tools, answer);
  const changed = (change: () => void): void => {
    clear();
    change();
  };
  const set = (at: number): void => {
    const value = worked()?.values[at];
    if (value) tools.set(number(), value.entry);
  };
  return (
    <Show when={all.length > 0}>
      <form
        class="work-back"
        aria-label="Work back"
        onSubmit={(event) => {
          event.preventDefault();
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
          by turning
        </p>
        <p>
          <Numbers ids={all} value={number()} onPick={(id) => changed(() => setNumber(id))} />
          <button type="submit" class="does" disabled={busy()}>
            {busy() ? "Working …" : "Work it out"}
          </button>
        </p>
        <div role="status">
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
          {(answer) => <Asking answer={answer} tools={made} />}
        </Show>
      )}
    </Show>
  );
}
