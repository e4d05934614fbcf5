// What a quantity was before the last change, beside it.

import { Show } from "solid-js";
import { wasText } from "../../telling/was.ts";
import { useSheet } from "../sheet.ts";

/** What a quantity was before the last edit, or as the answers were held. */
export function Moved(props: { readonly quantity: string }) {
  const sheet = useSheet();
  return (
    <Show when={sheet.moved(props.quantity)}>
      {(movement) => <span class="moved">was {wasText(movement().was, sheet.shown(props.quantity))}</span>}
    </Show>
  );
}
