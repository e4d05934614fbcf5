// A number where it stands in a sentence or a row: bold, in the colour of what it is about, with how far it moved.

import { Show } from "solid-js";
import { useSheet } from "../sheet.ts";

/** How far a quantity has moved since the last edit or since the answers were held. */
export function Moved(props: { readonly quantity: string }) {
  const sheet = useSheet();
  return (
    <Show when={sheet.moved(props.quantity)}>
      {(movement) => (
        <span class="moved">
          <span aria-hidden="true">
            {movement().sign === "up" ? "▲" : movement().sign === "down" ? "▼" : "◆"}
          </span>
          <span class="unseen">
            {movement().sign === "up" ? "up by" : movement().sign === "down" ? "down by" : "was"}
          </span>{" "}
          {movement().text}
        </span>
      )}
    </Show>
  );
}

/** A quantity in a sentence; pressing it leads to its row. */
export function InlineQuantity(props: { readonly quantity: string; readonly tone: string }) {
  const sheet = useSheet();
  const old = () => sheet.result(props.quantity)?.state === "pending";
  return (
    <button
      type="button"
      class="number"
      classList={{ old: old() }}
      data-tone={props.tone}
      onClick={() => sheet.edit.openWorking(props.quantity)}
    >
      {sheet.shown(props.quantity)}
    </button>
  );
}
