// The answers: one long sentence in large type, then the shorter ones.

import { For, Show } from "solid-js";
import type { Sentence } from "../cards/answers.ts";
import { InlineQuantity, Moved } from "./Quantity.tsx";
import { useSheet } from "./sheet.ts";

function Pieces(props: { readonly sentence: Sentence }) {
  return (
    <>
      <For each={props.sentence.pieces}>
        {(piece) =>
          typeof piece === "string" ? piece : <InlineQuantity quantity={piece.quantity} tone={piece.tone} />
        }
      </For>
      <Moved quantity={props.sentence.watch} />
    </>
  );
}

export function Answers() {
  const sheet = useSheet();
  const lead = () => sheet.answers().find((sentence) => sentence.lead);
  return (
    <section class="width answers" aria-label="Answers" aria-live="polite" aria-busy={sheet.working()}>
      <Show when={lead()}>
        {(sentence) => (
          <h1 class="lead">
            <Pieces sentence={sentence()} />
          </h1>
        )}
      </Show>
      <ul>
        <For each={sheet.answers().filter((sentence) => !sentence.lead)}>
          {(sentence) => (
            <li>
              <Pieces sentence={sentence} />
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}
