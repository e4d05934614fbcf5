// How far a number has moved, beside it.

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
