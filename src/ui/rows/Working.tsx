// How a number was worked out: in words, with the numbers put in, its source, what it reads and what it feeds.

import { For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Row } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { Measured } from "./Measured.tsx";

type Props = { readonly quantity: string; readonly card: Card; readonly row: Row };

/** So many links are shown, those that matter first; the rest are folded away: a reader looks for the sum. */
const FEW = 6;

function Links(props: { readonly head: string; readonly ids: readonly string[] }) {
  const sheet = useSheet();
  const each = (ids: readonly string[]) => (
    <For each={ids}>
      {(id) => (
        <button type="button" onClick={() => sheet.edit.openWorking(id)}>
          {sheet.place(id)}
        </button>
      )}
    </For>
  );
  // One more would take the room of the line that folds it away.
  const isMany = () => props.ids.length > FEW + 1;
  return (
    <Show when={props.ids.length > 0}>
      <p class="links">
        <span>{props.head}:</span>
        {each(isMany() ? props.ids.slice(0, FEW) : props.ids)}
      </p>
      <Show when={isMany()}>
        <details class="many">
          <summary>and {props.ids.length - FEW} more numbers</summary>
          <p class="links">{each(props.ids.slice(FEW))}</p>
        </details>
      </Show>
    </Show>
  );
}

export function Working(props: Props) {
  const sheet = useSheet();
  const explanation = () => sheet.explain(props.quantity);
  const measurable = () => {
    const row = props.row;
    if (!("measurable" in row) || !row.measurable || row.measure === "text" || row.measure === "series")
      return null;
    return { ...row.measurable, measure: row.measure };
  };
  return (
    <Show when={explanation()}>
      {(working) => (
        <div class="working" role="note">
          <p>{working().words || working().help}</p>
          <Show when={working().numbers}>
            <p class="sum">
              {working().numbers} = {working().shown}
            </p>
          </Show>
          <Show when={!working().numbers && working().inputs.length > 0}>
            <ul class="inputs">
              <For each={working().inputs}>
                {(input) => (
                  <li>
                    {input.label}: <b>{input.shown}</b>
                  </li>
                )}
              </For>
            </ul>
          </Show>
          <Show when={!working().numbers && working().shown !== sheet.shown(props.quantity)}>
            <p>In full: {working().shown}.</p>
          </Show>
          <Show when={working().computedTwin}>{(twin) => <p>Worked out without it: {twin().shown}.</p>}</Show>
          <p class="source">Source: {working().source}.</p>
          <Show when={measurable()}>
            {(about) => (
              <Measured
                {...props}
                teaches={about().teaches}
                lesson={about().lesson}
                measure={about().measure}
              />
            )}
          </Show>
          <Links head="Comes from" ids={working().reads} />
          <Links head="Feeds" ids={working().feeds} />
        </div>
      )}
    </Show>
  );
}
