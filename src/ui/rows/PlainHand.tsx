// The number in hand: its value to type, to step with the arrow keys, to slide.

import { createMemo, onMount, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { NumberGiven } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { createField, onFieldKey } from "./number-field.ts";
import { rangeFor, slid, startText } from "./number-text.ts";

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

function Field(props: { readonly card: Card; readonly row: NumberGiven }) {
  const sheet = useSheet();
  const field = createField(sheet, props);
  const range = () => rangeFor(props.row, field.reading());
  const value = () => {
    const read = field.reading();
    return read.ok ? read : null;
  };
  const putDown = (): void => {
    const id = field.id();
    field.setText(null);
    sheet.looking.take(null);
    document.getElementById(id)?.focus({ preventScroll: true });
  };
  let input: HTMLInputElement | undefined;
  // Where fingers type, a keyboard comes up with the focus and takes half of the screen: there it is asked for.
  onMount(() => {
    if (matchMedia("(pointer: coarse)").matches) return;
    input?.focus({ preventScroll: true });
    input?.select();
  });
  return (
    <section class="plain-hand" aria-label="In hand">
      <span class="what">{props.row.label}</span>
      <input
        ref={input}
        class="in-hand-value"
        aria-label={props.row.label}
        aria-invalid={field.wrong() ? "true" : "false"}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="done"
        value={field.text() ?? startText(sheet, field.entry(), field.id(), props.row.measure)}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => field.setText(event.currentTarget.value)}
        onBlur={() => field.leave()}
        onKeyDown={(event) => {
          if (event.key === "Escape") putDown();
          else onFieldKey(sheet, field, event);
        }}
      />
      <button type="button" class="tool" onClick={putDown}>
        Done
      </button>
      <Show when={field.wrong()}>{(wrong) => <Wrong wrong={wrong()} />}</Show>
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
              field.put(slid(sheet, event.currentTarget.valueAsNumber, value()?.unit ?? ""))
            }
            // Let go, it is entered: a text left in the field would come back at the next touch after an undo.
            onChange={() => field.leave()}
          />
        )}
      </Show>
    </section>
  );
}

export function PlainHand() {
  const sheet = useSheet();
  const card = () => sheet.worksheet().cards.find(({ id }) => id === sheet.looking.inHand()?.split(".")[0]);
  const row = createMemo((): NumberGiven | null => {
    const name = sheet.looking.inHand()?.split(".")[1];
    const found = sheet.kinds[card()?.kind ?? ""]?.rows.find((candidate) => candidate.name === name);
    return found?.row === "given" ? found : null;
  });
  return (
    <Show when={row()} keyed>
      {(given) => <Show when={card()}>{(of) => <Field card={of()} row={given} />}</Show>}
    </Show>
  );
}
