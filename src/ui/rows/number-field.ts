// State and doings of a field in which a number is typed: its text, what it is read as, what is wrong with it.

import { createEffect, createSignal, on } from "solid-js";
import type { Card, Entry } from "../../document/worksheet.ts";
import type { NumberGiven } from "../../graph/types.ts";
import type { Sheet } from "../sheet.ts";
import { readTyped, startText, stepped } from "./number-text.ts";

type Of = { readonly card: Card; readonly row: NumberGiven };

/** What is given on a row; prices and lives are kept on the card itself. */
export function entryOf(card: Card, row: NumberGiven): Entry | undefined {
  if (row.stored === "card") return row.name === "price" ? card.price : card.life;
  return card.givens[row.name];
}

/** State and doings of one number field. */
export function createField(sheet: Sheet, props: Of) {
  const id = () => `${props.card.id}.${props.row.name}`;
  const entry = () => entryOf(props.card, props.row);
  const [text, setText] = createSignal<string | null>(null);
  const unit = () => entry()?.unit || sheet.unitOf(id());
  const reading = () =>
    readTyped(sheet, text() ?? startText(sheet, entry(), id(), props.row.measure), props.row.measure, unit());
  const wrong = () => {
    const typed = text();
    if (typed === null || typed.trim() === "") return null;
    const read = reading();
    return read.ok ? null : { ...read, typed };
  };
  const put = (typed: string) => {
    setText(typed);
    const read = readTyped(sheet, typed, props.row.measure, unit());
    if (!read.ok) return;
    const from = entry()?.from;
    sheet.edit.given(
      props.card,
      props.row,
      {
        value: read.value,
        unit: read.unit,
        ...(from && from !== "default" && from !== "borrowed" ? { from } : {}),
      },
      true,
    );
  };
  // Undo, or another tab, put something else there: what was typed before is not what stands there any more.
  createEffect(
    on(
      entry,
      (now, before) => {
        const typed = text();
        if (now === before || typed === null) return;
        const read = readTyped(sheet, typed, props.row.measure, unit());
        if (!read.ok || read.value !== now?.value || read.unit !== now.unit) setText(null);
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

export type Field = ReturnType<typeof createField>;

export function onFieldKey(
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
  } else if (event.key === "Enter") {
    // Entered, it keeps the focus: the next number typed replaces it.
    field.leave();
    event.currentTarget.select();
  }
}
