// One open worksheet at work: its history, its engine, its saving, and what the answers are compared with.

import { createEffect, createSignal } from "solid-js";
import {
  commit,
  type History,
  redo,
  redoLabel,
  seal,
  startHistory,
  undo,
  undoLabel,
} from "../document/history.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Results } from "../graph/evaluate.ts";
import { makeSaver } from "../storage/saver.ts";
import type { Desk, Laid } from "./desk.ts";
import { createEngine, type View } from "./engine.ts";

/** Everything that changes while a worksheet is open. */
export function createSession(laid: Laid, desk: Desk) {
  const engine = createEngine(laid.worksheet, laid.records);
  const [history, setHistory] = createSignal<History<Worksheet>>(startHistory(laid.worksheet));
  const [before, setBefore] = createSignal<Results | null>(null);
  const [held, setHeld] = createSignal<View | null>(null);
  // What was still being worked out when it was held comes in as long as nothing else was changed.
  createEffect(() => {
    const view = engine.view();
    setHeld((kept) => (kept?.worksheet === view.worksheet ? view : kept));
  });
  const [saved, setSaved] = createSignal(
    laid.notice || (laid.readOnly ? "Made by a newer version: it can be read here, not changed." : ""),
  );
  let merging: string | null = null;

  const saver = makeSaver({
    shelf: desk.shelf,
    id: laid.id,
    revision: laid.revision,
    now: () => Date.now(),
    onSaved: (outcome) => {
      if (!outcome.ok) setSaved(outcome.failure.text);
      else if (outcome.value.conflict)
        setSaved(`Another tab changed it too; this one is now kept as ${outcome.value.conflict.title}`);
      else setSaved("Saved");
      if (outcome.ok) void desk.shelf.setCurrent(outcome.value.id);
    },
  });

  const show = (next: History<Worksheet>): void => {
    if (next === history()) return;
    setHistory(next);
    setSaved("Saving …");
    engine.update(next.present);
    saver.change(next.present);
  };

  return {
    engine,
    history,
    held,
    saved,
    saver,
    /** What the answers are measured from: what was held, else the state before the last step. */
    baseline: (): Results | null => held()?.results ?? before(),
    worksheet: (): Worksheet => history().present,
    undoLabel: (): string | null => undoLabel(history()),
    redoLabel: (): string | null => redoLabel(history()),
    /** Makes an edit; edits with the same merge key in a row are one step. */
    edit: (label: string, change: (worksheet: Worksheet) => Worksheet, merge?: string): void => {
      if (laid.readOnly) return;
      const next = change(history().present);
      if (next === history().present) return;
      if (merge === undefined || merge !== merging) setBefore(engine.view().results);
      merging = merge ?? null;
      show(commit(history(), next, { label, ...(merge === undefined ? {} : { merge }) }));
    },
    settle: (): void => {
      merging = null;
      setHistory(seal(history()));
    },
    undo: (): void => {
      setBefore(engine.view().results);
      merging = null;
      show(undo(history()));
    },
    redo: (): void => {
      setBefore(engine.view().results);
      merging = null;
      show(redo(history()));
    },
    /** Tells the reader something where saving is told. */
    say: (text: string): void => {
      setSaved(text);
    },
    hold: (): void => {
      setHeld(held() ? null : engine.view());
    },
  };
}

export type Session = ReturnType<typeof createSession>;
