// What stands typed in a field and is not entered: told at once, and found again where the field was away or the page left.

import { createEffect, createSignal, on } from "solid-js";
import type { Sheet } from "../sheet.ts";

/** The text typed in a field, null where it shows what is kept. */
export function createTyped(sheet: Sheet, field: () => string) {
  const [text, setText] = createSignal<string | null>(sheet.typed(field()));
  createEffect(on(text, (now) => sheet.edit.typed(field(), now), { defer: true }));
  return [text, setText] as const;
}

const TITLE = "/title";

/** The field of a name: a part's, or with null the worksheet's own. */
export const titleField = {
  of: (card: string | null): string => `${card ?? ""}${TITLE}`,
  /** Whose name is typed in a field: a part's, null for the worksheet's, undefined where it is no name. */
  ownerOf: (field: string): string | null | undefined =>
    field.endsWith(TITLE) ? field.slice(0, -TITLE.length) || null : undefined,
};
