// What must be told above the answers: a refused save, what came from somebody else, a version that waits.

import { For, Show } from "solid-js";
import { FIRST_VISIT, receivedSaid } from "../../telling/told.ts";
import { beginAnew } from "../begin/beginning.ts";
import { useSheet } from "../sheet.ts";

function Borrowed() {
  const sheet = useSheet();
  return (
    <Show when={sheet.keep.borrowed().length > 0}>
      <details class="told">
        <summary>
          {sheet.keep.borrowed().length === 1
            ? "1 number is borrowed from another place: put your own in its stead"
            : `${sheet.keep.borrowed().length} numbers are borrowed from another place: put your own in their stead`}
        </summary>
        <ul>
          <For each={sheet.keep.borrowed()}>
            {(id) => (
              <li>
                <button type="button" class="link" onClick={() => sheet.edit.goTo(id)}>
                  {sheet.place(id)}
                </button>
              </li>
            )}
          </For>
        </ul>
        <button type="button" class="small" onClick={() => sheet.keep.mine()}>
          The place is mine: nothing is borrowed
        </button>
      </details>
    </Show>
  );
}

function Received() {
  const sheet = useSheet();
  return (
    <Show when={sheet.keep.received()}>
      {(sent) => (
        <p class="told" role="status">
          {receivedSaid(sent())}{" "}
          <button type="button" class="act" onClick={() => sheet.keep.keepReceived()}>
            Keep this
          </button>
          <Show when={sent().hasOwn}>
            {" "}
            <button type="button" class="act" onClick={() => sheet.keep.backToMine()}>
              Back to mine
            </button>
          </Show>
        </p>
      )}
    </Show>
  );
}

function FirstVisit() {
  const sheet = useSheet();
  /** The first number of the first part that holds water. */
  const turned = (): string | null => {
    const card = sheet.worksheet().cards.find(({ kind }) => sheet.kinds[kind]?.uses?.includes("holds_water"));
    const row = card && sheet.kinds[card.kind]?.rows.find((one) => one.row === "given" && !one.hidden);
    return card && row ? `${card.id}.${row.name}` : null;
  };
  const turn = (id: string): void => {
    sheet.looking.take(id);
    sheet.edit.goTo(id);
  };
  return (
    <Show when={sheet.keep.firstVisit()}>
      <p class="told first-visit">
        {FIRST_VISIT}{" "}
        <button type="button" class="act" onClick={() => beginAnew(sheet)}>
          Start my own
        </button>{" "}
        <Show when={turned()}>
          {(id) => (
            <button type="button" class="act" onClick={() => turn(id())}>
              Turn its numbers
            </button>
          )}
        </Show>
      </p>
    </Show>
  );
}

export function KeepingBar() {
  const sheet = useSheet();
  return (
    <aside class="width keeping" aria-label="To know">
      <Show when={sheet.keep.waiting()}>
        <p class="told" role="status">
          A newer version lies ready.{" "}
          <button type="button" class="button" onClick={() => sheet.keep.update()}>
            Open it now
          </button>
        </p>
      </Show>
      <Show when={sheet.keep.notice()}>
        {(text) => (
          <p class="told" role="alert">
            {text()}{" "}
            <Show when={sheet.keep.refused()}>
              <button type="button" class="button" onClick={() => sheet.edit.saveFile()}>
                Save as a file
              </button>
            </Show>{" "}
            <button type="button" class="small" onClick={() => sheet.keep.dismiss()}>
              All right
            </button>
          </p>
        )}
      </Show>
      <FirstVisit />
      <Received />
      <Borrowed />
    </aside>
  );
}
