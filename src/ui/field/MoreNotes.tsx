// What is noted more seldom at the bed: a battery charged, a bucket timed, all else that happens, and what an earlier day saw.

import { createSignal, Show } from "solid-js";
import { NotePanel, type Opened, useParts } from "./NotePanel.tsx";
import type { FieldPageProps } from "./pages.ts";
import { useTold } from "./told.ts";

/** The row under the beds, and the panels that it opens. */
export function MoreNotes(props: FieldPageProps) {
  const told = useTold();
  const parts = useParts();
  const [opened, setOpened] = createSignal<Opened | null>(null);
  const last = (...what: readonly string[]): string => {
    const latest = told.last(...what);
    return latest ? `last ${told.when(latest)}` : "";
  };
  return (
    <div class="field-more">
      <Show when={parts("charged").length > 0}>
        <button type="button" onClick={() => setOpened("charged")}>
          <b>Charged</b>
          <span class="aside">{last("charged", "swapped") || "or swapped"}</span>
        </button>
      </Show>
      <Show when={parts("bucket").length > 0}>
        <button type="button" onClick={() => setOpened("bucket")}>
          <b>Bucket</b>
          <span class="aside">{last("bucket") || "time a flow"}</span>
        </button>
      </Show>
      <button type="button" onClick={() => setOpened("more")}>
        <b>More</b>
        <span class="aside">of an earlier day</span>
      </button>
      <Show when={opened()} keyed>
        {(which) => (
          <NotePanel which={which} onClose={() => setOpened(null)}>
            <Show when={which === "more"}>
              <div class="field-choices">
                <button type="button" onClick={() => props.go("notes")}>
                  All that was noted
                </button>
              </div>
            </Show>
          </NotePanel>
        )}
      </Show>
    </div>
  );
}
