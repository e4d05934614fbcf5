// Saving by itself: the newest worksheet is noted at once and kept within a second of the edit, one save at a time, never two
// in each other's way.

import type { Worksheet } from "../document/worksheet.ts";
import type { Journal, Written } from "./journal.ts";
import type { Saved, Shelf } from "./shelf.ts";
import type { Kept } from "./store-failure.ts";

export type SaverOptions = {
  readonly shelf: Pick<Shelf, "save">;
  /** Where the newest state is noted until it is kept. */
  readonly journal: Journal;
  readonly id: string;
  /** Revision that was opened, 0 for a new sheet. */
  readonly revision: number;
  /** Quiet time before a save [ms]. */
  readonly delay?: number;
  /** Now [ms since 1970-01-01 UTC]. */
  readonly now: () => number;
  /** Told of every save; after a conflict the work goes on in the copy, under the id and title given. */
  readonly onSaved: (outcome: Kept<Saved>) => void;
};

export type Saver = {
  /** Says that this is now the worksheet. */
  readonly change: (worksheet: Worksheet) => void;
  /** Saves at once what waits, as when the page is being hidden; resolves when it is kept or refused. */
  readonly flush: () => Promise<void>;
  /** Where the work is kept now. */
  readonly place: () => { readonly id: string; readonly revision: number };
  /** Whether everything is kept that was changed. */
  readonly isIdle: () => boolean;
  /** What another tab kept under this revision was taken over: the work goes on from there. */
  readonly follow: (revision: number) => void;
};

const USUAL_DELAY = 400;

/** Saves one worksheet by itself. A refused save is told and tried again with the next change or flush. */
export function makeSaver(options: SaverOptions): Saver {
  let place = { id: options.id, revision: options.revision };
  let waiting: Worksheet | null = null;
  let written: Written | null = null;
  let saving = false;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let running: Promise<void> = Promise.resolve();

  const note = (worksheet: Worksheet): void => {
    waiting = worksheet;
    written = options.journal.note({ id: place.id, basedOn: place.revision, at: options.now(), worksheet });
  };
  /** After a save the note goes, or says from where the newer state goes on. */
  const settleNote = (from: string): void => {
    if (waiting) note(waiting);
    if (!waiting || from !== place.id) options.journal.clear(from);
  };
  const saveOne = async () => {
    const worksheet = waiting;
    if (!worksheet) return;
    waiting = null;
    saving = true;
    const by = written ? { by: written } : {};
    const request = { id: place.id, basedOn: place.revision, worksheet, at: options.now(), ...by };
    const outcome = await options.shelf.save(request);
    saving = false;
    if (outcome.ok) {
      place = { id: outcome.value.id, revision: outcome.value.revision };
      settleNote(request.id);
    } else waiting ??= worksheet;
    options.onSaved(outcome);
  };

  const flush = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    // Even where a listener threw, the next save goes ahead.
    running = running.then(saveOne, saveOne);
    return running;
  };

  return {
    change: (worksheet) => {
      note(worksheet);
      // The clock is not set back by further edits: a long drag is saved on the way.
      timer ??= setTimeout(flush, written ? (options.delay ?? USUAL_DELAY) : 0);
    },
    flush,
    place: () => place,
    isIdle: () => waiting === null && !saving,
    follow: (revision) => {
      place = { ...place, revision };
    },
  };
}
