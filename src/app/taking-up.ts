// What pages that are gone had noted and not yet kept, taken up at the start of the next one.

import { apart } from "../document/title-apart.ts";
import type { InstantStore } from "../storage/instant-store.ts";
import { dropNote, hasNotes, isNoteLeft, type Note, notesLeft } from "../storage/journal.ts";
import type { Shelf } from "../storage/shelf.ts";
import { fetchReading, NOT_FETCHED } from "./reading.ts";
import type { Tab } from "./this-tab.ts";

export type TakenUp = {
  /** Sheet with the newest note, that of this tab before all others; null where there was none. */
  readonly sheet: string | null;
  /** The newest note that the slow store refused, to be opened as it is. */
  readonly refused: Note | null;
  /** Something the reader must be told. */
  readonly notice: string;
};

type Places = {
  readonly notes: InstantStore;
  readonly shelf: Pick<Shelf, "save">;
  readonly tab: Pick<Tab, "before" | "isGone">;
};

/** Puts on the shelf what is newer than what lies there, and what another tab has changed meanwhile beside it. */
export async function takeUp({ notes, shelf, tab }: Places): Promise<TakenUp> {
  let taken: TakenUp = { sheet: null, refused: null, notice: "" };
  if (!hasNotes(notes)) return taken;
  const reading = await fetchReading();
  if (reading === null) return { ...taken, notice: NOT_FETCHED };
  let isOwn = false;
  for (const note of notesLeft(notes, reading.readWorksheet)) {
    const left = { writer: note.by.writer, at: note.at };
    if (!(await tab.isGone(left, () => isNoteLeft(notes, note)))) continue;
    const saved = await shelf.save(note);
    if (!saved.ok) {
      taken = { ...taken, refused: note };
      continue;
    }
    dropNote(notes, note);
    const { id, conflict } = saved.value;
    const ours = note.by.writer === tab.before?.writer;
    if (ours || !isOwn) taken = { ...taken, sheet: id };
    isOwn ||= ours;
    if (conflict) {
      const notice = `Two tabs had changed the same worksheet. Both are kept: one goes on as "${apart(conflict.title)}".`;
      taken = { ...taken, notice };
    }
  }
  return taken;
}
