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

const STOPS = "button, a[href], input, select, summary";

const seen = (elements: Iterable<HTMLElement>): readonly HTMLElement[] =>
  [...elements].filter((one) => one.checkVisibility() && !one.matches(":disabled"));

/** Tab goes from the pressed number into its working, at the end of the answers, and from there on to the next number. */
function goByTab(event: KeyboardEvent, panel: HTMLElement, pressed: HTMLElement | null): void {
  const answers = panel.closest(".answers");
  if (event.key !== "Tab" || event.altKey || event.ctrlKey || event.metaKey || !answers || !pressed) return;
  const inside = seen(panel.querySelectorAll<HTMLElement>(STOPS));
  const outside = seen(answers.querySelectorAll<HTMLElement>(STOPS)).filter((one) => !panel.contains(one));
  const at = outside.indexOf(pressed);
  if (at < 0) return;
  const order = [...outside.slice(0, at + 1), ...inside, ...outside.slice(at + 1)];
  const here = order.indexOf(event.target as HTMLElement);
  const next = here < 0 ? undefined : order[here + (event.shiftKey ? -1 : 1)];
  if (next) {
    event.preventDefault();
    next.focus();
  } else if (here === order.length - 1 && !event.shiftKey) inside.at(-1)?.focus();
}

type Props = {
  readonly onPress: OnPress;
  readonly onClose: () => void;
  /** The number whose working it is, where it was pressed. */
  readonly pressed: () => HTMLElement | null;
};

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
export function AnswerWorking(props: Props) {
  const sheet = useSheet();
  const quantity = () => sheet.looking.opened() ?? "";
  const place = () => rowAt(sheet, quantity());
  const beside = () => sheet.beside(quantity());
  const meaning = (): string => {
    const working = beside().length === 0 ? sheet.explain(quantity()) : null;
    return working ? working.words || working.help : "";
  };
  let panel: HTMLElement | undefined;
  const onKey = (event: KeyboardEvent): void => {
    if (panel) goByTab(event, panel, props.pressed());
    if (event.key !== "Escape") return;
    event.stopPropagation();
    props.onClose();
  };
  onMount(() => document.addEventListener("keydown", onKey, true));
  onCleanup(() => document.removeEventListener("keydown", onKey, true));
  return (
    <section class="answer-working" aria-label="How it is worked out" ref={panel}>
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
    </section>
  );
}
