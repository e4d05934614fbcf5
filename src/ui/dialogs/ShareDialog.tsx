// Handing the worksheet on: as a link, a picture code, a file, by the device's own way; and tables and charts to keep.

import { createResource, createSignal, For, Show } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import { INSTEAD_OF_LINK, LINK_OPENS } from "../../telling/told.ts";
import { useSheet } from "../sheet.ts";
import type { ShareMade, TableName } from "./keeping.ts";
import { PictureCode } from "./PictureCode.tsx";

const TABLES: readonly { readonly name: TableName; readonly label: string }[] = [
  { name: "quantities", label: "Every quantity" },
  { name: "shopping", label: "The shopping list" },
  { name: "days", label: "The season, day by day" },
  { name: "rain", label: "The rain record" },
];

type Made = Extract<ShareMade, { ok: true }>;

function TooLong(props: { readonly made: Made; readonly onLeaveOut: () => void }) {
  return (
    <Show
      when={props.made.hasRecord}
      fallback={<p class="help">This worksheet is too long for a picture code.</p>}
    >
      <p class="help">
        With your rain record in it the link is too long for a picture code.{" "}
        <button type="button" class="small" onClick={() => props.onLeaveOut()}>
          Make a link and a code without the record
        </button>
      </p>
    </Show>
  );
}

function Link(props: { readonly made: Made; readonly onLeaveOut: () => void }) {
  const sheet = useSheet();
  const [copied, setCopied] = createSignal("");
  let field: HTMLInputElement | undefined;
  const copy = async () => {
    field?.select();
    setCopied((await sheet.keep.copyText(props.made.address)) ? "Copied." : "Marked: copy it by hand.");
  };
  return (
    <>
      <input
        ref={field}
        class="address"
        aria-label="The link"
        readOnly
        value={props.made.address}
        onFocus={(event) => event.currentTarget.select()}
      />
      <p class="options">
        <button type="button" class="button" onClick={copy}>
          Copy the link
        </button>
        <Show when={sheet.keep.passOn}>
          {(pass) => (
            <button type="button" class="button" onClick={() => pass()(props.made.address)}>
              Pass the link on
            </button>
          )}
        </Show>
        <span role="status">{copied()}</span>
      </p>
      <For each={props.made.leftOut}>{(left) => <p class="wrong">{left}</p>}</For>
      <PictureCode
        text={props.made.address}
        tooLong={<TooLong made={props.made} onLeaveOut={props.onLeaveOut} />}
      />
    </>
  );
}

function Check(props: {
  readonly label: string;
  readonly checked: boolean;
  readonly onCheck: (on: boolean) => void;
}) {
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={props.checked}
        onChange={(event) => props.onCheck(event.currentTarget.checked)}
      />{" "}
      {props.label}
    </label>
  );
}

function MadeLink() {
  const sheet = useSheet();
  const [exactPlace, setExactPlace] = createSignal(false);
  const [withoutRecord, setWithoutRecord] = createSignal(false);
  const [withNotes, setWithNotes] = createSignal(false);
  const [made] = createResource(
    () => ({
      exactPlace: exactPlace(),
      withoutRecord: withoutRecord(),
      withNotes: withNotes(),
      worksheet: sheet.worksheet(),
    }),
    (wish) => sheet.keep.link(wish),
  );
  const good = () => {
    const now = made();
    return now?.ok ? now : null;
  };
  const bad = () => {
    const now = made();
    return now && !now.ok ? now.reason : null;
  };
  return (
    <>
      <Check
        label="with the latitude as I typed it, not rounded to a tenth of a degree"
        checked={exactPlace()}
        onCheck={setExactPlace}
      />
      <Show when={withoutRecord() || good()?.hasRecord}>
        <Check
          label="with twelve monthly figures in the stead of my rain record"
          checked={withoutRecord()}
          onCheck={setWithoutRecord}
        />
      </Show>
      <Show when={(sheet.worksheet().notes ?? []).length > 0}>
        <Check label="with what I noted in season" checked={withNotes()} onCheck={setWithNotes} />
      </Show>
      <Show when={good()}>{(link) => <Link made={link()} onLeaveOut={() => setWithoutRecord(true)} />}</Show>
      <Show when={bad()}>{(reason) => <p class="wrong">{reason()}</p>}</Show>
    </>
  );
}

function AsLink() {
  const { reach } = useSheet().keep;
  return (
    <>
      <h3>As a link</h3>
      <Show when={reach !== "anywhere"}>
        <p class="wrong">
          {LINK_OPENS[reach]} {INSTEAD_OF_LINK}
        </p>
      </Show>
      <Show when={reach !== "file"}>
        <p class="help">The whole worksheet is in the link itself; nothing is kept anywhere else.</p>
        <MadeLink />
      </Show>
    </>
  );
}

function AsPage() {
  const sheet = useSheet();
  const [said, setSaid] = createSignal("");
  const save = async () => {
    setSaid("Putting it together …");
    setSaid(await sheet.keep.savePage());
  };
  return (
    <>
      <h3>As a page in one file</h3>
      <p class="help">
        The program, this worksheet and its rain record in one file. A double click opens it, with no network
        and nothing to install; it works everything out itself.
      </p>
      <p class="options">
        <button type="button" class="button" onClick={save}>
          Save the page
        </button>
        <span role="status">{said()}</span>
      </p>
    </>
  );
}

function AsFile() {
  const sheet = useSheet();
  return (
    <>
      <h3>As a file, with the rain record inside</h3>
      <p class="options">
        <button type="button" class="button" onClick={() => sheet.edit.saveFile()}>
          Save as a file
        </button>
        <Show when={sheet.keep.passFileOn}>
          {(pass) => (
            <button type="button" class="button" onClick={() => pass()()}>
              Pass the file on
            </button>
          )}
        </Show>
      </p>
      <h3>As tables and pictures</h3>
      <p class="options">
        <For each={TABLES}>
          {({ name, label }) => (
            <button type="button" class="button" onClick={() => sheet.keep.saveTable(name)}>
              {label} (CSV)
            </button>
          )}
        </For>
        <button type="button" class="button" onClick={() => sheet.keep.saveCharts()}>
          Drawings and charts (SVG)
        </button>
      </p>
    </>
  );
}

export function ShareDialog(props: { readonly onClose: () => void }) {
  const sheet = useSheet();
  let dialog: HTMLDialogElement | undefined;
  return (
    <dialog
      class="share"
      aria-label="Share"
      ref={(element) => {
        dialog = element;
        queueMicrotask(() => element.showModal());
      }}
      onClose={() => props.onClose()}
    >
      <button type="button" class="close" onClick={() => dialog?.close()}>
        Close
      </button>
      <h2>Share</h2>
      <label class="row">
        <span class="label">Made by</span>
        <input
          class="text"
          aria-label="Made by"
          dir="auto"
          value={bare(sheet.worksheet().made_by)}
          onChange={(event) => sheet.edit.page({ made_by: event.currentTarget.value })}
        />
      </label>
      <Show
        when={sheet.keep.reach === "anywhere"}
        fallback={
          <>
            <AsPage />
            <AsLink />
          </>
        }
      >
        <AsLink />
        <AsPage />
      </Show>
      <AsFile />
    </dialog>
  );
}
