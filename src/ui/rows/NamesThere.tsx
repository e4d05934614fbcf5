// The names by which a formula of one's own reads other numbers, part by part; pressing one writes it into the formula.

import { createSignal, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { measureOf } from "../../graph/rows.ts";
import type { Row } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";

/** Whether a row of another part is a number that a formula can read. */
function isNumber(row: Row): boolean {
  if (row.hidden) return false;
  return row.row === "user_formula" || measureOf(row) !== null;
}

function OfPart(props: { readonly card: Card; readonly onPick: (name: string) => void }) {
  const sheet = useSheet();
  const [open, setOpen] = createSignal(false);
  const rows = () => sheet.kinds[props.card.kind]?.rows.filter(isNumber) ?? [];
  return (
    <Show when={rows().length > 0}>
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{props.card.title}</summary>
        <Show when={open()}>
          <For each={rows().map(({ name }) => `${props.card.id}.${name}`)}>
            {(id) => (
              <button type="button" onClick={() => props.onPick(id)}>
                <b>{id}</b> {sheet.label(id)}, {sheet.shown(id)}
              </button>
            )}
          </For>
        </Show>
      </details>
    </Show>
  );
}

export function NamesThere(props: { readonly card: Card; readonly onPick: (name: string) => void }) {
  const sheet = useSheet();
  const [open, setOpen] = createSignal(false);
  const others = () => sheet.worksheet().cards.filter(({ id }) => id !== props.card.id);
  return (
    // The field keeps the focus and what is typed in it: leaving it would enter it, and move what is being pressed.
    <details
      class="names-there"
      onMouseDown={(event) => event.preventDefault()}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>Names of the numbers there are</summary>
      <Show when={open()}>
        <For each={others()}>{(card) => <OfPart card={card} onPick={props.onPick} />}</For>
      </Show>
    </details>
  );
}
