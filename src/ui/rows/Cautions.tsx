// The cautions that stand beside a number.

import { For } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { useSheet } from "../sheet.ts";

const HEADS = { harm: "Caution", trouble: "Look at this", note: "Worth knowing" } as const;

function firstSentence(text: string): readonly [string, string] {
  const end = text.search(/[.](?=\s)/);
  return end < 0 ? [text, ""] : [text.slice(0, end + 1), text.slice(end + 1).trim()];
}

export function Cautions(props: { readonly card: Card; readonly beside: string }) {
  const sheet = useSheet();
  const here = () => sheet.cautionsAt(`${props.card.id}.${props.beside}`);
  return (
    <For each={here()}>
      {(caution) => (
        <details class="caution" data-weight={caution.weight} open={caution.weight === "trouble"}>
          <summary>
            <b>{HEADS[caution.weight]}:</b> {firstSentence(caution.text)[0]}
          </summary>
          <p>
            {firstSentence(caution.text)[1]} <small>Source: {caution.source}.</small>
          </p>
        </details>
      )}
    </For>
  );
}
