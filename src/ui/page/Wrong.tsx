// What is wrong on the sheet: one line beside the answers that opens the list of it.

import { For, Show } from "solid-js";
import type { Problem } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";

export function Wrong() {
  const sheet = useSheet();
  // Many a problem begins with its row's label; then the card's title is all that is still to be said.
  const head = ({ at, text }: Problem): string =>
    text.startsWith(`${sheet.label(at)}:`) ? sheet.place(at.split(".")[0] ?? at) : sheet.place(at);
  return (
    <Show when={sheet.problems().length > 0}>
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
                <button type="button" onClick={() => sheet.edit.goTo(problem.at)}>
                  {head(problem) || "This worksheet"}
                </button>
                : {problem.text}
              </li>
            )}
          </For>
        </ul>
      </details>
    </Show>
  );
}
