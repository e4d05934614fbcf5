// What is told of a worksheet that came from somebody else, and of numbers of another place in it; fetched where one did.

import { For, Show } from "solid-js";
import { receivedSaid } from "../../telling/told.ts";
import { useSheet } from "../sheet.ts";

function Borrowed() {
  const sheet = useSheet();
  const said = (): string => {
    const many = sheet.keep.borrowed().length;
    // Beside who sent it, it goes without saying from where.
    if (sheet.keep.received()) return `${many} borrowed`;
    return many === 1
      ? "1 number is borrowed from another place"
      : `${many} numbers are borrowed from another place`;
  };
  return (
    <Show when={sheet.keep.borrowed().length > 0}>
      <details class="told">
        <summary>{said()}</summary>
        <div class="borrowed">
          <p>Put your own in the stead of what is of another place:</p>
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
        </div>
      </details>
    </Show>
  );
}

function Received() {
  const sheet = useSheet();
  return (
    <Show when={sheet.keep.received()}>
      {(sent) => (
        <p class="told received" role="status">
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
