// One open worksheet: gives the components the sheet they stand in, and listens to keys and to the page being left.

import { createSignal, onCleanup, Show } from "solid-js";
import { Page } from "../ui/page/Page.tsx";
import { SheetContext } from "../ui/sheet.ts";
import type { Laid, PageShared } from "./page-shared.ts";
import { createSheet } from "./sheet-maker.ts";
import { enterLeft } from "./typed-left.ts";

export function Workbench(props: { readonly laid: Laid; readonly shared: PageShared }) {
  // A worksheet laid open stays the same for as long as the bench stands; another one gets a bench of its own.
  const { sheet, session, typing } = createSheet(props.laid, props.shared);
  if (!props.laid.readOnly) enterLeft(sheet, props.shared.typed.of(props.laid.id));

  // In a task of its own, so that a touch need not wait for both.
  const [isWorked, setWorked] = createSignal(false);
  const drawing = setTimeout(() => {
    // Not before: an empty page would be painted in between.
    document.querySelector(".at-first")?.remove();
    setWorked(true);
  });

  const onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    // What is typed is entered first; the field keeps the focus, so that the number stays in hand.
    if (event.shiftKey) sheet.edit.redo();
    else sheet.edit.undo();
  };
  /** What is only typed counts as entered where the page is left, and all of it is kept. */
  const keepAll = (): void => {
    typing.enter();
    void session.saver.flush();
  };
  const onGone = (): void => {
    keepAll();
    props.shared.leaves();
  };
  const onLeave = (): void => {
    if (document.visibilityState === "hidden") keepAll();
  };
  document.addEventListener("keydown", onKey);
  document.addEventListener("visibilitychange", onLeave);
  // A page on its way out may still count as seen.
  window.addEventListener("pagehide", onGone);
  window.addEventListener("pageshow", props.shared.returns);
  onCleanup(() => {
    clearTimeout(drawing);
    document.removeEventListener("keydown", onKey);
    document.removeEventListener("visibilitychange", onLeave);
    window.removeEventListener("pagehide", onGone);
    window.removeEventListener("pageshow", props.shared.returns);
    void session.saver.flush();
  });
  return (
    <SheetContext.Provider value={sheet}>
      <Show when={isWorked()}>
        <Page />
      </Show>
    </SheetContext.Provider>
  );
}
