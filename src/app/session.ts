// One open worksheet at work: its history, its engine, its saving, and what the answers are compared with.

import { type Accessor, batch, createEffect, createSignal, onCleanup } from "solid-js";
import { setWorksheet } from "../document/edits.ts";
import {
  amended,
  commit,
  dropped,
  type History,
  redo,
  redoLabel,
  startHistory,
  stepEnded,
  undo,
  undoLabel,
} from "../document/history.ts";
import { united, withNotes } from "../document/notes.ts";
import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Results } from "../graph/evaluate.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { chanceId } from "../storage/shelf.ts";
import { fieldPageIn } from "../ui/field/pages.ts";
import { today } from "./clock.ts";
import { createEngine, type Engine, type View } from "./engine.ts";
import { followOtherTabs } from "./following.ts";
import { createForecast } from "./forecast.ts";
import { followDays } from "./new-day.ts";
import type { Laid, PageShared } from "./page-shared.ts";
import { createSaving } from "./saving.ts";

function keepRecords(shared: PageShared, records: readonly DailyRecord[]): void {
  for (const record of records) void shared.recordShelf.keep(record, Date.now());
}

/** Records that one worksheet names and the one before did not. */
function newlyNamed(
  now: Worksheet,
  before: Worksheet,
  records: ReadonlyMap<string, DailyRecord>,
): readonly DailyRecord[] {
  const known = recordNames(before);
  return recordNames(now).flatMap((key) => (known.includes(key) ? [] : (records.get(key) ?? [])));
}

/** The answers that are held to measure from, and the means to hold them or to let them go. */
function createHeld(engine: Engine, worksheet: () => Worksheet) {
  const [held, setHeld] = createSignal<(View & { readonly typed: Worksheet }) | null>(null);
  // What was still being worked out when it was held comes in as long as nothing else was changed.
  createEffect(() => {
    const view = engine.view();
    setHeld((kept) => (kept?.worksheet === view.worksheet ? { ...view, typed: kept.typed } : kept));
  });
  const hold = (): void => {
    setHeld(held() ? null : { ...engine.view(), typed: worksheet() });
  };
  return { held, hold };
}

/** The worksheet as it stands with all that came before it, and the means to show another. */
type Standing = {
  readonly history: Accessor<History<Worksheet>>;
  readonly setHistory: (next: History<Worksheet>) => void;
  readonly show: (next: History<Worksheet>) => void;
};

/** Edits, steps back and on, and the answers as they were before the last of them. */
function createSteps(engine: Engine, { history, setHistory, show }: Standing) {
  const [before, setBefore] = createSignal<Results | null>(null);
  let merging: string | null = null;
  /** One step back or on. Together, so that the page is redrawn once, never with new numbers beside old answers. */
  const step = (to: (at: History<Worksheet>) => History<Worksheet>): void =>
    batch(() => {
      setBefore(engine.view().results.all);
      merging = null;
      const next = to(history());
      show(amended(next, withNotes(next.present, history().present.notes ?? [])));
    });
  return {
    before,
    undo: (): void => step(undo),
    redo: (): void => step(redo),
    /** Makes an edit; edits with the same merge key in a row are one step. */
    edit: (label: string, change: (worksheet: Worksheet) => Worksheet, merge?: string): void => {
      const next = change(history().present);
      if (next === history().present) return;
      batch(() => {
        if (merge === undefined || merge !== merging) setBefore(engine.view().results.all);
        merging = merge ?? null;
        show(commit(history(), next, { label, ...(merge === undefined ? {} : { merge }) }));
      });
    },
    settle: (): void => {
      merging = null;
      setHistory(stepEnded(history()));
    },
    /** The edits that were joined under a key are gone as if they had not been made; false where there are none. */
    drop: (merge: string): boolean => {
      if (history().merging !== merge) return false;
      step(dropped);
      setBefore(null);
      return true;
    },
    /** Writes notes down: no step, as undo never takes them away. */
    note: (change: (worksheet: Worksheet) => Worksheet): void =>
      batch(() => {
        setBefore(engine.view().results.all);
        merging = null;
        show(amended(history(), change(history().present)));
      }),
    /** What another tab made of the worksheet: a step, from which nothing is measured; both tabs' notes stay. */
    takeOver: (worksheet: Worksheet): void => {
      merging = null;
      setBefore(null);
      const all = united(worksheet.notes ?? [], history().present.notes ?? []);
      setHistory(commit(history(), withNotes(worksheet, all), { label: "Change in another tab" }));
    },
  };
}

type Steps = ReturnType<typeof createSteps>;

/** Edits and notes, which a worksheet that is only looked at takes none of. */
function createWriting(
  laid: Laid,
  { edit, note }: Steps,
  { saver, refused }: ReturnType<typeof createSaving>,
  worksheet: () => Worksheet,
) {
  return {
    /** Writes notes down, and says once they are stored whether they are. */
    note: async (change: (worksheet: Worksheet) => Worksheet): Promise<boolean> => {
      if (laid.readOnly) return false;
      note(change);
      // What was changed meanwhile is saved with it, or after it.
      do await saver.flush();
      while (!refused() && !saver.isIdle());
      return !refused();
    },
    /** The worksheet with a name that tells it from all others wherever its copies go; it gets one as it first goes out. */
    identified: (): Worksheet => {
      if (!laid.readOnly) note((sheet) => (sheet.id === undefined ? { ...sheet, id: chanceId() } : sheet));
      return worksheet();
    },
    edit: (...asked: Parameters<Steps["edit"]>): void => {
      if (!laid.readOnly) edit(...asked);
    },
  };
}

/** The day here, with which all that is worked out moves on. */
function createDay(engine: Engine, worksheet: () => Worksheet) {
  const [day, setDay] = createSignal(today());
  const { look, stop } = followDays(
    (next) =>
      batch(() => {
        engine.update(worksheet());
        setDay(next);
      }),
    { document, window },
  );
  onCleanup(stop);
  return { day, look };
}

/** What is told of how it is kept. */
function keptSaid({ saver, saved, refused, notice, setNotice }: ReturnType<typeof createSaving>) {
  return {
    saver,
    saved,
    refused,
    notice,
    /** Tells the reader something that stays until it is put away. */
    say: (text: string): void => {
      setNotice(text);
    },
    dismiss: (): void => {
      setNotice("");
    },
  };
}

/** Everything that changes while a worksheet is open. */
export function createSession(laid: Laid, shared: PageShared) {
  const forecast = createForecast(shared.device, laid.id);
  const engine = createEngine(
    laid.worksheet,
    laid.records,
    forecast.text,
    fieldPageIn(location.hash) === null,
  );
  const [history, setHistory] = createSignal<History<Worksheet>>(startHistory(laid.worksheet));
  const worksheet = (): Worksheet => history().present;
  const { held, hold } = createHeld(engine, worksheet);
  const saving = createSaving(laid, shared, (title) =>
    show(commit(history(), setWorksheet(worksheet(), { title }), { label: "Keep as a copy" })),
  );
  const { saver, setSaved } = saving;
  const show = (next: History<Worksheet>): void => {
    if (next === history()) return;
    // A record that undo names again may have been let go meanwhile by another tab.
    keepRecords(shared, newlyNamed(next.present, history().present, engine.records));
    // First the results: what reads both they and the worksheet is then made once, not once for either.
    engine.update(next.present);
    setHistory(next);
    setSaved("Saving …");
    saver.change(next.present);
  };
  const expect = (text: string): void =>
    batch(() => {
      forecast.set(text);
      engine.update(worksheet());
    });
  const steps = createSteps(engine, { history, setHistory, show });
  const takeOver = (theirs: Worksheet): void =>
    batch(() => {
      steps.takeOver(theirs);
      setSaved("Saved");
      engine.update(theirs);
    });
  onCleanup(followOtherTabs({ shared, saver, records: engine.records, takeOver }));
  // What was sent by somebody is kept at once: closing the page must not lose it.
  if (laid.received || laid.unkept) saver.change(laid.worksheet);

  const { day, look } = createDay(engine, worksheet);

  return {
    /** The day it is here; and looks whether a new one has come. */
    day,
    lookAtClock: look,
    undo: steps.undo,
    redo: steps.redo,
    settle: steps.settle,
    drop: steps.drop,
    ...createWriting(laid, steps, saving, worksheet),
    engine,
    history,
    forecast: { ...forecast, set: (text: string) => expect(text) },
    ...keptSaid(saving),
    held,
    hold,
    /** What the answers are measured from: what was held, else the state before the last step. */
    baseline: (): Results | null => held()?.results ?? steps.before(),
    worksheet,
    undoLabel: (): string | null => undoLabel(history()),
    redoLabel: (): string | null => redoLabel(history()),
  };
}

export type Session = ReturnType<typeof createSession>;
