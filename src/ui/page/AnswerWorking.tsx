// The working of a number in the answers, where it stands: over what is below, never somewhere far down the page.

import { For, lazy, onCleanup, onMount, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import type { Sentence } from "../../telling/asked.ts";
import { showInTime } from "../beside/show.ts";
import { rowAt } from "../row-at.ts";
import { Working } from "../rows/Working.tsx";
import { useSheet } from "../sheet.ts";
import { type OnPress, Pieces } from "./Sentence.tsx";

const WorkBack = lazy(async () => ({ default: (await import("../work-back/WorkBack.tsx")).WorkBack }));

function Said(props: { readonly sentences: readonly Sentence[]; readonly onPress: OnPress }) {
  return (
    <For each={props.sentences}>
      {(sentence) => (
        <p>
          <Pieces sentence={sentence} onPress={props.onPress} />
        </p>
      )}
    </For>
  );
}

/** What gives out first as a whole sentence, and the way to what can be bought against it. */
function GivesOut() {
  const sheet = useSheet();
  return (
    <Show when={sheet.givesOut()}>
      {(said) => (
        <p>
          {said()}{" "}
          <button type="button" class="act" onClick={() => showInTime(sheet, "money")}>
            Next money
          </button>
        </p>
      )}
    </Show>
  );
}

/** Its first sentence and what can be asked of it stand in sight at once; the sum and its sources are folded away. */
export function AnswerWorking(props: { readonly onPress: OnPress; readonly onClose: () => void }) {
  const sheet = useSheet();
  const quantity = () => sheet.looking.opened() ?? "";
  const place = () => rowAt(sheet, quantity());
  const beside = () => sheet.beside(quantity());
  const meaning = (): string => {
    const working = beside().length === 0 ? sheet.explain(quantity()) : null;
    return working ? working.words || working.help : "";
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    props.onClose();
  };
  onMount(() => document.addEventListener("keydown", onKey, true));
  onCleanup(() => document.removeEventListener("keydown", onKey, true));
  return (
    <div class="answer-working">
      <header>
        <h2>{sheet.place(quantity())}</h2>
        <button type="button" class="small" onClick={() => props.onClose()}>
          Close
        </button>
      </header>
      <Show when={meaning()}>{(text) => <p>{text()}</p>}</Show>
      <Said sentences={beside().slice(0, 1)} onPress={props.onPress} />
      <Show when={quantity() === "season.binding"}>
        <GivesOut />
      </Show>
      <Show when={numberIn(sheet.result(quantity())) !== null}>
        <WorkBack answer={quantity()} />
      </Show>
      <Said sentences={beside().slice(1)} onPress={props.onPress} />
      <Show when={place()}>
        {(at) => (
          <details class="worked-out">
            <summary>How it was worked out</summary>
            <Working quantity={quantity()} card={at().card} row={at().row} />
          </details>
        )}
      </Show>
    </div>
  );
}
