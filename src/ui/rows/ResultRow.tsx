// A number that was worked out: its value, what it was, and on pressing it the working.

import { Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { shownIn } from "../../graph/readers.ts";
import type { Row } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { toneOf } from "../tones.ts";
import { Cautions } from "./Cautions.tsx";
import { faultOf } from "./formula-fault.ts";
import { Moved } from "./Quantity.tsx";
import { Shown } from "./Shown.tsx";
import { Working } from "./Working.tsx";

/** Letters of a text that still fits beside its label. */
const ONE_LINE = 26;

export function ResultRow(props: { readonly card: Card; readonly row: Row }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const state = () => sheet.result(id())?.state;
  const open = () => sheet.opened() === id() && sheet.looking.openedAt() === "row";
  const text = () => {
    if (state() === "none") return `none: ${sheet.shown(id())}`;
    // What is wrong stands at the field where it is mended.
    if (faultOf(sheet, props.card, props.row)) return "not worked out yet";
    if (state() === "failed") return sheet.failure(id()) ?? sheet.shown(id());
    return sheet.shown(id());
  };
  return (
    <div
      class="row result"
      classList={{ said: Math.max(text().length, sheet.moved(id())?.was.length ?? 0) > ONE_LINE }}
      id={id()}
      tabindex="-1"
    >
      <button
        type="button"
        class="line"
        classList={{ failed: state() === "failed" }}
        aria-expanded={open()}
        onClick={() => sheet.looking.openWorking(open() ? null : id())}
      >
        <span class="label">{sheet.label(id())}</span>
        <Shown
          text={text()}
          none={state() === "none"}
          old={state() === "pending"}
          tone={state() === "failed" ? "trouble" : toneOf(props.row, shownIn(sheet.result(id())))}
        />
        <span class="from">
          <Show when={sheet.moved(id())} fallback={sheet.originOf(id())}>
            <Moved quantity={id()} />
          </Show>
        </span>
      </button>
      <Show when={open() && sheet.looking.width() !== "wide"}>
        <Working quantity={id()} card={props.card} row={props.row} />
      </Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
