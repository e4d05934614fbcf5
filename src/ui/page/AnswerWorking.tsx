// The working of a number in the answers, where it stands: over what is below, never somewhere far down the page.

import { For, lazy, onCleanup, onMount, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import { showInTime } from "../beside/show.ts";
import { rowAt } from "../row-at.ts";
import { Working } from "../rows/Working.tsx";
import { useSheet } from "../sheet.ts";
import { type OnPress, Pieces } from "./Sentence.tsx";

const WorkBack = lazy(async () => ({ default: (await import("../work-back/WorkBack.tsx")).WorkBack }));

export function AnswerWorking(props: { readonly onPress: OnPress; readonly onClose: () => void }) {
  const sheet = useSheet();
  const quantity = () => sheet.looking.opened();
  const place = () => rowAt(sheet, quantity() ?? "");
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
        <h2>{sheet.place(quantity() ?? "")}</h2>
        <button type="button" class="small" onClick={() => props.onClose()}>
          Close
        </button>
      </header>
      <For each={sheet.beside(quantity() ?? "")}>
        {(sentence) => (
          <p>
            <Pieces sentence={sentence} onPress={props.onPress} />
          </p>
        )}
      </For>
      <Show when={quantity() === "season.binding" && sheet.givesOut()}>
        {(said) => (
          <p>
            {said()}{" "}
            <button type="button" class="act" onClick={() => showInTime(sheet, "money")}>
              Next money
            </button>
          </p>
        )}
      </Show>
      <Show when={place()}>
        {(at) => <Working quantity={quantity() ?? ""} card={at().card} row={at().row} />}
      </Show>
      <Show when={numberIn(sheet.result(quantity() ?? "")) !== null}>
        <WorkBack answer={quantity() ?? ""} />
      </Show>
    </div>
  );
}
