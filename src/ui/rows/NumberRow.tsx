// A given number, edited where it stands: type any unit or simple sums, arrow keys, or the slider that comes with focus.

import { createEffect, createSignal, For, on, Show } from "solid-js";
import type { Card, Origin } from "../../document/worksheet.ts";
import { isReady } from "../../graph/readers.ts";
import type { NumberGiven } from "../../graph/types.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { Cautions } from "./Cautions.tsx";
import { enterNumber, entryOf, readNumber } from "./enter-number.ts";
import { rangeFor, slid, startText, stepped } from "./number-text.ts";
import { createTyped } from "./typed-text.ts";
import { Working } from "./Working.tsx";

const ORIGINS: readonly (readonly [Origin, string])[] = [
  ["guessed", "guessed"],
  ["borrowed", "borrowed from somebody"],
  ["label", "read off a label"],
  ["measured", "measured"],
];

type Props = { readonly card: Card; readonly row: NumberGiven };

/** State and doings of one number field. */
function createField(sheet: Sheet, props: Props) {
  const id = () => `${props.card.id}.${props.row.name}`;
  const entry = () => entryOf(props.card, props.row);
  const [text, setText] = createTyped(sheet, id);
  const read = (typed: string) => readNumber(sheet, props.card, props.row, typed);
  const reading = () => read(text() ?? startText(sheet, entry(), id(), props.row.measure));
  const wrong = () => {
    const typed = text();
    if (typed === null || typed.trim() === "") return null;
    const found = reading();
    return found.ok ? null : { ...found, typed };
  };
  const put = (typed: string) => {
    setText(typed);
    enterNumber(sheet, props.card, props.row, typed);
  };
  // Undo, or another tab, put something else there: what was typed before is not what stands there any more.
  createEffect(
    on(
      entry,
      (now, before) => {
        const typed = text();
        if (now === before || typed === null) return;
        const found = read(typed);
        if (!found.ok || found.value !== now?.value || found.unit !== now.unit) setText(null);
      },
      { defer: true },
    ),
  );
  // Typing the usual value is saying it: from then on it is the grower's own.
  const isUsual = () => !entry() || entry()?.from === "default";
  const leave = () => {
    const typed = text();
    if (typed !== null && typed.trim() === "" && entry()) sheet.edit.given(props.card, props.row, null);
    else if (typed !== null && (isUsual() || typed !== startText(sheet, entry(), id(), props.row.measure)))
      put(typed);
    if (!wrong()) setText(null);
    sheet.edit.settle();
  };
  return { id, entry, text, setText, reading, wrong, put, leave };
}

type Field = ReturnType<typeof createField>;

function onKey(
  sheet: Sheet,
  field: Field,
  event: KeyboardEvent & { readonly currentTarget: HTMLInputElement },
): void {
  if (event.key === "ArrowUp" || event.key === "ArrowDown") {
    const next = stepped(sheet, field.reading(), event.key === "ArrowUp" ? 1 : -1, event.shiftKey);
    if (next !== null) {
      event.preventDefault();
      field.put(next);
    }
  } else if (event.key === "Enter") event.currentTarget.blur();
  else if (event.key === "Escape") {
    field.setText(null);
    event.currentTarget.blur();
  }
}

function Wrong(props: {
  readonly wrong: {
    readonly typed: string;
    readonly message: string;
    readonly start: number;
    readonly end: number;
  };
}) {
  return (
    <p class="wrong" role="alert">
      {props.wrong.typed.slice(0, props.wrong.start)}
      <mark>{props.wrong.typed.slice(props.wrong.start, props.wrong.end) || " "}</mark>
      {props.wrong.typed.slice(props.wrong.end)}: {props.wrong.message}
    </p>
  );
}

function Tune(props: { readonly field: Field; readonly card: Card; readonly row: NumberGiven }) {
  const sheet = useSheet();
  const range = () => rangeFor(props.row, props.field.reading());
  const value = () => {
    const read = props.field.reading();
    return read.ok ? read : null;
  };
  return (
    <div class="tune">
      <Show when={range()}>
        {(ends) => (
          <input
            type="range"
            aria-label={`${props.row.label}, slider`}
            min={ends().min}
            max={ends().max}
            step={ends().step}
            value={value()?.value ?? 0}
            onInput={(event) =>
              props.field.put(slid(sheet, event.currentTarget.valueAsNumber, value()?.unit ?? ""))
            }
            // Let go, it is entered: a text left in the field would come back at the next touch after an undo.
            onChange={() => props.field.leave()}
          />
        )}
      </Show>
      <p class="help">{sheet.help(props.card, props.row)}</p>
      <Show when={props.field.entry()}>
        {(entry) => (
          <label>
            Where the number comes from
            <select
              value={entry().from ?? ""}
              onChange={(event) => {
                const from = event.currentTarget.value as Origin | "";
                const { value, unit, spread } = entry();
                sheet.edit.given(props.card, props.row, {
                  value,
                  unit,
                  ...(spread === undefined ? {} : { spread }),
                  ...(from ? { from } : {}),
                });
              }}
            >
              <option value="">not said</option>
              <For each={ORIGINS}>{([word, label]) => <option value={word}>{label}</option>}</For>
            </select>
          </label>
        )}
      </Show>
    </div>
  );
}

export function NumberRow(props: Props) {
  const sheet = useSheet();
  const field = createField(sheet, props);
  const [focused, setFocused] = createSignal(false);
  const open = () => sheet.opened() === field.id();
  const isKnown = () => isReady(sheet.result(field.id()));
  const shown = () =>
    field.text() ??
    (focused() || !isKnown()
      ? startText(sheet, field.entry(), field.id(), props.row.measure)
      : sheet.shown(field.id()));
  const absent = () => {
    const result = sheet.result(field.id());
    return result?.state === "none" ? result.reason : "none";
  };
  return (
    <div
      class="row"
      onFocusIn={(event) => {
        const entered = !focused();
        setFocused(true);
        // Only now does the field show the text to be edited: all of it is marked, so that typing replaces it.
        if (entered && event.target instanceof HTMLInputElement && event.target.id === field.id())
          event.target.select();
      }}
      onFocusOut={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setFocused(false);
      }}
    >
      <button
        type="button"
        class="label"
        aria-expanded={open()}
        onClick={() => sheet.edit.openWorking(open() ? null : field.id())}
      >
        {props.row.label}
      </button>
      <span class="value">
        <input
          class="measure"
          id={field.id()}
          aria-label={props.row.label}
          aria-invalid={field.wrong() ? "true" : "false"}
          placeholder={absent()}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          enterkeyhint="done"
          value={shown()}
          onInput={(event) => field.setText(event.currentTarget.value)}
          onBlur={() => field.leave()}
          onKeyDown={(event) => onKey(sheet, field, event)}
        />
        <Show when={sheet.originOf(field.id())}>{(origin) => <span class="from">{origin()}</span>}</Show>
      </span>
      <Show when={field.wrong()}>{(wrong) => <Wrong wrong={wrong()} />}</Show>
      <Show when={focused()}>
        <Tune field={field} card={props.card} row={props.row} />
      </Show>
      <Show when={sheet.failure(field.id())}>{(text) => <p class="wrong">{text()}</p>}</Show>
      <Show when={open()}>
        <Working quantity={field.id()} card={props.card} row={props.row} />
      </Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
