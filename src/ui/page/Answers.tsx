// The answers: one long sentence in large type, then the shorter ones.

import { For, Show } from "solid-js";
import type { Piece, Sentence } from "../../telling/asked.ts";
import { InlineQuantity, Moved } from "../rows/Quantity.tsx";
import { useSheet } from "../sheet.ts";

const STOP = /^[,.;:]/;

/** A comma or full stop that must not part from the number before it. */
function stopAfter(next: Piece | undefined): string {
  return typeof next === "string" ? (STOP.exec(next)?.[0] ?? "") : "";
}

function afterNumber(pieces: readonly Piece[], index: number, text: string): string {
  return index > 0 && typeof pieces[index - 1] !== "string" ? text.replace(STOP, "") : text;
}

function Pieces(props: { readonly sentence: Sentence }) {
  return (
    <>
      <For each={props.sentence.pieces}>
        {(piece, index) =>
          typeof piece === "string" ? (
            afterNumber(props.sentence.pieces, index(), piece)
          ) : (
            <span class="together">
              <InlineQuantity quantity={piece.quantity} tone={piece.tone} />
              {stopAfter(props.sentence.pieces[index() + 1])}
            </span>
          )
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
        <Show when={sheet.givesOut()}>{(said) => <li class="gives-out">{said()}</li>}</Show>
      </ul>
    </section>
  );
}
