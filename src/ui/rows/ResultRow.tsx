// A number that was worked out: its value, how far it moved, and on pressing it the working.

import { Match, Show, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Row } from "../../graph/types.ts";
import type { Tone } from "../../telling/asked.ts";
import { useSheet } from "../sheet.ts";
import { toneOf } from "../tones.ts";
import { Cautions } from "./Cautions.tsx";
import { Moved } from "./Quantity.tsx";
import { Working } from "./Working.tsx";

/** Letters of a text that still fits beside its label. */
const ONE_LINE = 34;

export function ResultRow(props: { readonly card: Card; readonly row: Row }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const result = () => sheet.result(id());
  const open = () => sheet.opened() === id();
  const tone = (): Tone | undefined => toneOf(props.row);
  const isSentence = () =>
    "measure" in props.row && props.row.measure === "text" && sheet.shown(id()).length > ONE_LINE;
  return (
    <div class="row result" classList={{ said: isSentence() }} id={id()} tabindex="-1">
      <button
        type="button"
        class="label"
        aria-expanded={open()}
        onClick={() => sheet.edit.openWorking(open() ? null : id())}
      >
        {sheet.label(id())}
      </button>
      <Switch>
        <Match when={result()?.state === "none" && result()}>
          <span class="value none">none: {sheet.shown(id())}</span>
        </Match>
        <Match when={result()?.state === "failed"}>
          <span class="value failed">{sheet.failure(id()) ?? sheet.shown(id())}</span>
        </Match>
        <Match when={true}>
          <button
            type="button"
            class="value"
            classList={{ old: result()?.state === "pending" }}
            data-tone={tone()}
            tabindex="-1"
            onClick={() => sheet.edit.openWorking(open() ? null : id())}
          >
            {sheet.shown(id())}
            <Show when={sheet.originOf(id())}>{(origin) => <span class="from">{origin()}</span>}</Show>
            <Moved quantity={id()} />
          </button>
        </Match>
      </Switch>
      <Show when={open()}>
        <Working quantity={id()} card={props.card} row={props.row} />
      </Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
