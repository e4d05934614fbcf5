// Which worksheet to work on: those kept here, the starters, an empty one, or one from a file.

import { createSignal, For, Show } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import { beginAnew } from "../begin/beginning.ts";
import { type SavedSheet, useSheet } from "../sheet.ts";

type Act = (doing: () => void) => () => void;

function Kept(props: { readonly saved: SavedSheet; readonly act: Act }) {
  const sheet = useSheet();
  const [naming, setNaming] = createSignal(false);
  const name = (event: { readonly currentTarget: HTMLInputElement }) => {
    setNaming(false);
    const title = event.currentTarget.value.trim();
    if (title && title !== bare(props.saved.title)) sheet.keep.renameSheet(props.saved.id, title);
  };
  return (
    <li>
      <Show
        when={naming()}
        fallback={
          <button type="button" onClick={() => props.act(() => sheet.edit.openSheet(props.saved.id))()}>
            {props.saved.title} <small>{props.saved.open ? "open now" : props.saved.when}</small>
          </button>
        }
      >
        <input
          aria-label={`New name of ${props.saved.title}`}
          dir="auto"
          value={bare(props.saved.title)}
          ref={(field) => queueMicrotask(() => field.select())}
          onBlur={name}
          onKeyDown={(event) => event.key === "Enter" && event.currentTarget.blur()}
        />
      </Show>
      <span class="options">
        <button
          type="button"
          class="small"
          aria-label={`Rename ${props.saved.title}`}
          onClick={() => setNaming(true)}
        >
          Rename
        </button>
        <button
          type="button"
          class="small"
          aria-label={`Copy ${props.saved.title}`}
          onClick={() => sheet.keep.copySheet(props.saved.id)}
        >
          Copy
        </button>
        <button
          type="button"
          class="small"
          aria-label={`Throw away ${props.saved.title}`}
          onClick={() => sheet.keep.removeSheet(props.saved.id)}
        >
          Throw away
        </button>
      </span>
    </li>
  );
}

function KeptHere(props: { readonly act: Act }) {
  const sheet = useSheet();
  return (
    <>
      <Show when={sheet.keep.thrown()}>
        {(title) => (
          <p class="told" role="status">
            {title()} was thrown away.{" "}
            <button type="button" class="button" onClick={() => sheet.keep.bringBack()}>
              Bring it back
            </button>
          </p>
        )}
      </Show>
      <Show when={sheet.sheets().length > 0}>
        <h3>Kept on this device</h3>
        <ul>
          <For each={sheet.sheets()}>{(saved) => <Kept saved={saved} act={props.act} />}</For>
        </ul>
      </Show>
      <Show when={sheet.keep.aside().length > 0}>
        <h3>Set aside, since they could not be read</h3>
        <ul>
          <For each={sheet.keep.aside()}>
            {(key, at) => (
              <li>
                <button type="button" onClick={() => sheet.keep.saveAside(key)}>
                  Save number {at() + 1} as a file
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </>
  );
}

function Starters(props: { readonly act: Act }) {
  const sheet = useSheet();
  return (
    <>
      <h3>Start from one that is made up</h3>
      <ul>
        <For each={sheet.templates}>
          {(template) => (
            <li>
              <button type="button" onClick={() => props.act(() => sheet.edit.start(template.id))()}>
                {template.title} <small>{template.forWhom}</small>
                <small>{template.changeFirst}</small>
              </button>
            </li>
          )}
        </For>
        <li>
          <button type="button" onClick={() => props.act(() => beginAnew(sheet))()}>
            A place of my own <small>Say what is there, then one number after the other</small>
          </button>
        </li>
        <li>
          <button type="button" onClick={() => props.act(() => sheet.edit.start(null))()}>
            An empty one <small>Add its roofs, tanks and beds one by one</small>
          </button>
        </li>
      </ul>
    </>
  );
}

export function StartDialog(props: { readonly onClose: () => void }) {
  const sheet = useSheet();
  let dialog: HTMLDialogElement | undefined;
  const act: Act = (doing) => () => {
    dialog?.close();
    doing();
  };
  return (
    <dialog
      aria-label="Worksheets"
      ref={(element) => {
        dialog = element;
        queueMicrotask(() => element.showModal());
      }}
      onClose={() => props.onClose()}
    >
      <button type="button" class="close" onClick={() => dialog?.close()}>
        Close
      </button>
      <h2>Worksheets</h2>
      <KeptHere act={act} />
      <Starters act={act} />
      <h3>From or to a file</h3>
      <p>
        <label
          class="button"
          onDragOver={(event) => event.preventDefault()}
          onDrop={(event) => {
            event.preventDefault();
            const file = event.dataTransfer?.files[0];
            if (file) act(() => sheet.edit.openFile(file))();
          }}
        >
          Open a file
          <input
            class="unseen"
            type="file"
            aria-label="Worksheet file"
            accept=".json,application/json,.csv,.txt,text/csv,text/plain"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              event.currentTarget.value = "";
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
