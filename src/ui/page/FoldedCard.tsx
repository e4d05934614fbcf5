// A card folded up: its name, its main answers, and a mark where something on it wants a look. Pressing it opens it.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Row } from "../../graph/types.ts";
import { Moved } from "../rows/Quantity.tsx";
import { isGiven } from "../rows/row-kinds.ts";
import { useSheet } from "../sheet.ts";
import { toneOf } from "../tones.ts";
import { Icon } from "./Icon.tsx";

/** As many as fit under a name on a phone. */
const AT_MOST = 2;

/** What wants a look on a card, in two or three words; "" where nothing does. */
function useMark(card: () => Card): () => string {
  const sheet = useSheet();
  return createMemo(() => {
    const { id } = card();
    if (sheet.problems().some(({ at }) => at === id || at.startsWith(`${id}.`))) return "something is wrong";
    return sheet.cautions().some(({ card: at, weight }) => at === id && weight === "trouble")
      ? "look at this"
      : "";
  });
}

export function FoldedCard(props: { readonly card: Card }) {
  const sheet = useSheet();
  const kind = () => sheet.kinds[props.card.kind];
  const rows = createMemo((): readonly Row[] => {
    const all = kind()?.rows ?? [];
    const named = kind()?.glance?.flatMap((name) => all.find((row) => row.name === name) ?? []);
    const could = named ?? all.filter((row) => !isGiven(row) && !row.hidden && !row.minor);
    const said = could.filter((row) => sheet.result(`${props.card.id}.${row.name}`)?.state !== "none");
    return (said.length > 0 ? said : could).slice(0, AT_MOST);
  });
  const leads = () => (kind()?.rows ?? []).filter((row) => row.lead);
  const mark = useMark(() => props.card);
  return (
    <button
      type="button"
      class="folded"
      aria-expanded="false"
      onClick={() => sheet.edit.unfold(props.card.id, true)}
    >
      <Icon kind={props.card.kind} />
      <span class="name">{props.card.title}</span>
      <span class="kind">{kind()?.label ?? props.card.kind}</span>
      <Show when={mark()}>{(text) => <span class="mark">{text()}</span>}</Show>
      <For each={leads()}>
        {(row) => <span class="says">{sheet.shown(`${props.card.id}.${row.name}`)}</span>}
      </For>
      <span class="facts">
        <For each={rows()}>
          {(row) => {
            const id = () => `${props.card.id}.${row.name}`;
            const state = () => sheet.result(id())?.state;
            return (
              <span class="fact">
                {sheet.label(id())}{" "}
                <Show when={state() !== "failed"} fallback={<b>not known</b>}>
                  <b data-tone={toneOf(row)} classList={{ old: state() === "pending" }}>
                    {state() === "none" ? "none" : sheet.shown(id())}
                  </b>
                </Show>
                <Moved quantity={id()} />
              </span>
            );
          }}
        </For>
      </span>
    </button>
  );
}
