// State and doings of a field in which a number is typed: its text, what it is read as, what is wrong with it.

import { createEffect, on } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { NumberGiven } from "../../graph/types.ts";
import type { Sheet } from "../sheet.ts";
import { enterNumber, entryOf, readNumber } from "./enter-number.ts";
import { startText, stepped } from "./number-text.ts";
import { createTyped } from "./typed-text.ts";

type Of = { readonly card: Card; readonly row: NumberGiven };

/** State and doings of one number field. */
export function createField(sheet: Sheet, props: Of) {
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
