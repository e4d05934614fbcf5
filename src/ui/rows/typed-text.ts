// What stands typed in a field and is not entered: told at once, and found again where the field was away or the page left.

import { createEffect, createSignal, on } from "solid-js";
import type { Sheet } from "../sheet.ts";

/** The text typed in a field, null where it shows what is kept. */
export function createTyped(sheet: Sheet, field: () => string) {
  const [text, setText] = createSignal<string | null>(sheet.typed(field()));
  createEffect(on(text, (now) => sheet.edit.typed(field(), now), { defer: true }));
  return [text, setText] as const;
}
