// A sentence at the head of a card: what matters now; pressing it opens how it was worked out.

import { Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Row } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { Cautions } from "./Cautions.tsx";
import { Working } from "./Working.tsx";

export function LeadRow(props: { readonly card: Card; readonly row: Row }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const open = () => sheet.opened() === id();
  return (
    <div class="lead-row" id={id()} tabindex="-1">
      <button
        type="button"
        class="value"
        classList={{ old: sheet.result(id())?.state === "pending" }}
        title={props.row.label}
        aria-expanded={open()}
        onClick={() => sheet.edit.openWorking(open() ? null : id())}
      >
        {sheet.failure(id()) ?? sheet.shown(id())}
      </button>
      <Show when={open()}>
        <Working quantity={id()} card={props.card} row={props.row} />
      </Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
