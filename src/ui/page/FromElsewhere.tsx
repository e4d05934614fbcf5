// What is told of a worksheet that came from somebody else, and of numbers of another place in it; fetched where one did.

import { For, Show } from "solid-js";
import { receivedSaid } from "../../telling/told.ts";
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

export const FromElsewhere = () => (
  <>
    <Received />
    <Borrowed />
  </>
);
