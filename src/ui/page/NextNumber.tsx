// At the foot of a place of one's own: how many numbers are still to be said, and the next of them.

import { createMemo, createResource, createSignal, Show } from "solid-js";
import { asked, questionsOf } from "../../kinds/asking.ts";
import { useSheet } from "../sheet.ts";

export function NextNumber() {
  const sheet = useSheet();
  const [beginning] = createResource(() => sheet.beginning());
  const [isDone, setDone] = createSignal(false);
  const missing = createMemo(() => {
    const made = beginning();
    const open = made ? questionsOf(made.starts, sheet.worksheet().cards).filter(({ said }) => !said) : [];
    return sheet.looking.beginning() === null && !isDone() ? open : [];
  });
  return (
    <Show when={missing()[0]}>
      {(question) => (
        <aside class="next-number" aria-label="Numbers still to put in">
          <button
            type="button"
            class="button strong"
            onClick={() =>
              question().ask.onPage
                ? sheet.edit.askFor(question().id)
                : sheet.looking.begin({ step: "ask", wish: null, here: true })
            }
          >
            <small>{missing().length} to go. Next:</small>
            {asked(question())}
          </button>
          <button type="button" class="small" onClick={() => setDone(true)}>
            Not now
          </button>
        </aside>
      )}
    </Show>
  );
}
