// The pages of the season in one dialog: a line at its head, the page below it, each page in a script of its own.

import { type Component, For, lazy, Show } from "solid-js";
import { Dynamic, Portal } from "solid-js/web";
import { useSheet } from "../sheet.ts";
import { shortDateWords } from "../words.ts";
import { AtTheBed } from "./AtTheBed.tsx";
import "./columns.css";
import "./field.css";
import "./panel.css";
import { NotingHere } from "./noting-here.tsx";
import type { FieldPageName, FieldPageProps } from "./pages.ts";

/** Each further page is in a script of its own. */
const PAGES: Readonly<Record<FieldPageName, Component<FieldPageProps>>> = {
  bed: AtTheBed,
  lasts: lazy(async () => ({ default: (await import("./Lasts.tsx")).Lasts })),
  today: lazy(async () => ({ default: (await import("./Today.tsx")).Today })),
  pour: lazy(async () => ({ default: (await import("./Pour.tsx")).Pour })),
  notes: lazy(async () => ({ default: (await import("./Notes.tsx")).Notes })),
  year: lazy(async () => ({ default: (await import("./YearMoments.tsx")).YearMoments })),
};

const NAMES: Readonly<Record<FieldPageName, string>> = {
  bed: "At the bed",
  today: "Today",
  lasts: "How long",
  pour: "What to water",
  notes: "Notes",
  year: "The year",
};

/** The way back to it, which is on every other page: short, so that a phone has room for all ways in a line. */
const BACK = "Bed";

/** Where each page leads, besides back to the bed. */
const NEIGHBORS: Readonly<Record<FieldPageName, readonly FieldPageName[]>> = {
  bed: ["today", "lasts"],
  today: ["lasts", "pour"],
  lasts: ["today", "pour"],
  pour: ["today", "lasts"],
  notes: ["year"],
  year: ["notes"],
};

function Head(props: { readonly page: FieldPageName; readonly go: FieldPageProps["go"] }) {
  const sheet = useSheet();
  return (
    <form method="dialog" class="field-head">
      <Show
        when={props.page !== "bed"}
        fallback={<b>{shortDateWords(sheet.today(), sheet.worksheet().locale)}</b>}
      >
        <button type="button" aria-label={NAMES.bed} onClick={() => props.go("bed")}>
          ‹ {BACK}
        </button>
      </Show>
      <span class="field-ways">
        <For each={NEIGHBORS[props.page]}>
          {(name) => (
            <button type="button" onClick={() => props.go(name)}>
              {NAMES[name]}
            </button>
          )}
        </For>
        <button type="submit">Sheet</button>
      </span>
    </form>
  );
}

export function InSeason(props: { readonly page: FieldPageName; readonly onClose: () => void }) {
  let dialog: HTMLDialogElement | undefined;
  const go = (to: FieldPageName): void => {
    // A step of the browser's own, so that its way back leads back.
    location.hash = to;
  };
  return (
    <Portal>
      <dialog
        class="field"
        aria-label={NAMES[props.page]}
        ref={(element) => {
          dialog = element;
          queueMicrotask(() => element.showModal());
        }}
        onClose={() => props.onClose()}
      >
        <NotingHere>
          <Head page={props.page} go={go} />
          <Dynamic component={PAGES[props.page]} go={go} leave={() => dialog?.close()} />
        </NotingHere>
      </dialog>
    </Portal>
  );
}
