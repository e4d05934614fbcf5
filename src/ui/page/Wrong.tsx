// What is wrong on the sheet beyond what the lead shows already: one line among the answers that opens the list of it.

import { For, Show } from "solid-js";
import type { Problem } from "../../graph/types.ts";
import type { Act } from "../../telling/asked.ts";
import { useSheet } from "../sheet.ts";

/** The number to be changed, or where the trouble shows. */
const toChange = ({ at, by }: Problem): string => by ?? at;

export function Wrong(props: { readonly shown: readonly Act[] }) {
  const sheet = useSheet();
  // Many a problem begins with its row's label; then the card's title is all that is still to be said.
  const head = ({ at, text }: Problem): string =>
    text.startsWith(`${sheet.label(at)}:`) ? sheet.place(at.split(".")[0] ?? at) : sheet.place(at);
  const isMore = () =>
    sheet.problems().some((problem) => !props.shown.some(({ at }) => at === toChange(problem)));
  return (
    <Show when={isMore()}>
      <li>
        <details class="ill">
          <summary>
            {sheet.problems().length === 1
              ? "One thing is wrong"
              : `${sheet.problems().length} things are wrong`}
          </summary>
          <ul>
            <For each={sheet.problems()}>
              {(problem) => (
                <li>
                  <button type="button" onClick={() => sheet.edit.goTo(toChange(problem))}>
                    {head(problem) || "This worksheet"}
                  </button>
                  : {problem.text}
                </li>
              )}
            </For>
          </ul>
        </details>
      </li>
    </Show>
  );
}
