// What is wrong with the worksheet, each leading to its place.

import { For, Show } from "solid-js";
import type { Problem } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";

export function Problems() {
  const sheet = useSheet();
  // Many a problem begins with its row's label; then the card's title is all that is still to be said.
  const head = ({ at, text }: Problem): string =>
    text.startsWith(`${sheet.label(at)}:`) ? sheet.place(at.split(".")[0] ?? at) : sheet.place(at);
  return (
    <Show when={sheet.problems().length > 0}>
      <section class="width">
        <div class="problems" role="alert">
          <h2>
            {sheet.problems().length === 1
              ? "One thing is wrong"
              : `${sheet.problems().length} things are wrong`}
          </h2>
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
        </div>
      </section>
    </Show>
  );
}
