// What stands before the open part and what after it, so that one goes through the place as the water does.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Tie } from "../../telling/neighbours.ts";
import { useSheet } from "../sheet.ts";
import { PartMenu } from "./PartMenu.tsx";
import type { Parts } from "./parts.ts";

function Ties(props: { readonly ties: readonly Tie[]; readonly parts: Parts }) {
  const sheet = useSheet();
  return (
    <For each={props.ties}>
      {(tie) => (
        <span class="tie">
          {tie.words}{" "}
          <For each={tie.ids}>
            {(id, at) => (
              <>
                {at() > 0 ? ", " : ""}
                <button type="button" onClick={() => sheet.edit.goTo(id)}>
                  {props.parts.titleOf(id)}
                </button>
              </>
            )}
          </For>
        </span>
      )}
    </For>
  );
}

function Named(props: { readonly card: Card; readonly parts: Parts }) {
  const beside = createMemo(() => props.parts.neighbours(props.card.id));
  return (
    <Show when={beside().before.length + beside().after.length > 0}>
      <nav class="beside" aria-label={`Beside ${props.card.title}`}>
        <span>
          <Ties ties={beside().before} parts={props.parts} />
        </span>
        <span class="after">
          <Ties ties={beside().after} parts={props.parts} />
        </span>
      </nav>
    </Show>
  );
}

/** On a phone the part before, its own name, the part after. */
function OneLine(props: { readonly card: Card; readonly parts: Parts }) {
  const sheet = useSheet();
  const step = (by: 1 | -1) => () => {
    const id = props.parts.along(by);
    return id === props.card.id ? null : id;
  };
  return (
    <nav class="beside one-line" aria-label={`Beside ${props.card.title}`}>
      <Show when={step(-1)()} fallback={<span />}>
        {(id) => (
          <button type="button" onClick={() => sheet.edit.goTo(id())}>
            <span aria-hidden="true">‹</span>
            <span class="name">{props.parts.titleOf(id())}</span>
          </button>
        )}
      </Show>
      <h2>{props.card.title}</h2>
      <PartMenu card={props.card} />
      <Show when={step(1)()} fallback={<span />}>
        {(id) => (
          <button type="button" onClick={() => sheet.edit.goTo(id())}>
            <span class="name">{props.parts.titleOf(id())}</span>
            <span aria-hidden="true">›</span>
          </button>
        )}
      </Show>
    </nav>
  );
}

export function Beside(props: { readonly card: Card; readonly parts: Parts }) {
  const sheet = useSheet();
  return (
    <Show when={sheet.looking.width() === "phone"} fallback={<Named {...props} />}>
      <OneLine {...props} />
    </Show>
  );
}
