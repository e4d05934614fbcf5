// How the answer that was pressed was worked out, under the answers, where the eye is.

import { createMemo, Show } from "solid-js";
import { Working } from "../rows/Working.tsx";
import { useSheet } from "../sheet.ts";

export function AnswerWorking() {
  const sheet = useSheet();
  const id = () => (sheet.looking.openedAt() === "answers" ? sheet.looking.opened() : null);
  const card = createMemo(() => sheet.worksheet().cards.find((one) => one.id === id()?.split(".")[0]));
  const row = () => sheet.kinds[card()?.kind ?? ""]?.rows.find(({ name }) => name === id()?.split(".")[1]);
  const close = () => sheet.looking.openWorking(null);
  return (
    <Show when={id()}>
      {(quantity) => (
        <Show when={card()}>
          {(of) => (
            <Show when={row()}>
              {(held) => (
                <section
                  class="answer-working"
                  aria-label={`How it was worked out: ${sheet.place(quantity())}`}
                >
                  <p class="head">
                    <b>{sheet.place(quantity())}</b>
                    <button type="button" class="small" onClick={() => sheet.edit.goTo(quantity())}>
                      Go to its part
                    </button>
                    <button type="button" class="small" onClick={close}>
                      Close
                    </button>
                  </p>
                  <Working quantity={quantity()} card={of()} row={held()} />
                </section>
              )}
            </Show>
          )}
        </Show>
      )}
    </Show>
  );
}
