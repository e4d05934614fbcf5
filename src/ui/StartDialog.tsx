// Which worksheet to work on: those kept here, the starters, an empty one, or one from a file.

import { For, Show } from "solid-js";
import { useSheet } from "./sheet.ts";

export function StartDialog(props: { readonly register: (dialog: HTMLDialogElement) => void }) {
  const sheet = useSheet();
  let dialog: HTMLDialogElement | undefined;
  const act = (doing: () => void) => () => {
    dialog?.close();
    doing();
  };
  return (
    <dialog
      aria-label="Worksheets"
      ref={(element) => {
        dialog = element;
        props.register(element);
      }}
    >
      <button type="button" class="close" onClick={() => dialog?.close()}>
        Close
      </button>
      <h2>Worksheets</h2>
      <Show when={sheet.sheets().length > 0}>
        <h3>Kept on this device</h3>
        <ul>
          <For each={sheet.sheets()}>
            {(saved) => (
              <li>
                <button type="button" onClick={act(() => sheet.edit.openSheet(saved.id))}>
                  {saved.title} <small>{saved.when}</small>
                </button>
                <button
                  type="button"
                  class="small"
                  onClick={() => sheet.edit.removeSheet(saved.id)}
                  aria-label={`Throw away ${saved.title}`}
                >
                  Throw away
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <h3>Start from one that is made up</h3>
      <ul>
        <For each={sheet.templates}>
          {(template) => (
            <li>
              <button type="button" onClick={act(() => sheet.edit.start(template.id))}>
                {template.title} <small>{template.forWhom}</small>
                <small>{template.changeFirst}</small>
              </button>
            </li>
          )}
        </For>
        <li>
          <button type="button" onClick={act(() => sheet.edit.start(null))}>
            An empty one <small>Add roofs, tanks and beds one by one</small>
          </button>
        </li>
      </ul>
      <h3>From or to a file</h3>
      <p>
        <label class="button">
          Open a file
          <input
            class="unseen"
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              if (file) act(() => sheet.edit.openFile(file))();
            }}
          />
        </label>{" "}
        <button type="button" class="button" onClick={act(() => sheet.edit.saveFile())}>
          Save as a file
        </button>
      </p>
    </dialog>
  );
}
