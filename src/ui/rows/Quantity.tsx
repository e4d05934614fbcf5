// A number where it stands in a sentence or a row: bold, in the colour of what it is about, with how far it moved.

import { Show } from "solid-js";
import { shownIn } from "../../graph/readers.ts";
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

/** A quantity in a sentence; pressing it opens its working where it stands, and makes it the answer that is asked after. */
export function InlineQuantity(props: { readonly quantity: string; readonly tone: string }) {
  const sheet = useSheet();
  const old = () => sheet.result(props.quantity)?.state === "pending";
  const open = () => sheet.opened() === props.quantity && sheet.looking.openedAt() === "answers";
  const press = (): void => {
    sheet.looking.openWorking(open() ? null : props.quantity, "answers");
    if (typeof shownIn(sheet.result(props.quantity)) === "number") sheet.looking.chooseAnswer(props.quantity);
  };
  return (
    <button
      type="button"
      class="number"
      classList={{ old: old() }}
      data-tone={props.tone}
      aria-expanded={open()}
      onClick={press}
    >
      {sheet.shown(props.quantity)}
    </button>
  );
}
