// The newest state of each open worksheet, noted at once until the slow store has it. A page that is left in between loses
// nothing: the next one takes the note up. One note for each page and worksheet, so that tabs never write over each other.

import type { WorksheetReading } from "../document/check.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { InstantStore } from "./instant-store.ts";

/** Who wrote, and at which of his steps: of two states by the same writer the later step is the later state. */
export type Written = { readonly writer: string; readonly step: number };

export type Note = {
  readonly by: Written;
  /** Worksheet that was worked on, and the kept revision that the work started from. */
  readonly id: string;
  readonly basedOn: number;
  /** [ms since 1970-01-01 UTC] */
  readonly at: number;
  readonly worksheet: Worksheet;
};

/** The notes of one page. */
export type Journal = {
  /** Notes the newest state; null where the browser keeps no such note, so that the slow store must be written at once. */
  readonly note: (note: Omit<Note, "by">) => Written | null;
  /** The slow store has it. */
  readonly clear: (id: string) => void;
};

const VERSION = 1;
const PREFIX = "eavesdrip:newest:";

/** Characters of a note at the most: several tabs must find room in the five million that browsers give. */
const LONGEST_NOTE = 1_000_000;

const keyOf = (writer: string, id: string): string => `${PREFIX}${writer}:${id}`;

/**
 * @param writer a name that no other page has
 */
export function makeJournal(store: InstantStore, writer: string): Journal {
  let step = 0;
  return {
    note: (note) => {
      step += 1;
      const by = { writer, step };
      const text = JSON.stringify({ version: VERSION, ...note, by });
      const key = keyOf(writer, note.id);
      if (text.length <= LONGEST_NOTE && store.set(key, text)) return by;
      // An older note must not outlive the newer state that found no room.
      store.del(key);
      return null;
    },
    clear: (id) => store.del(keyOf(writer, id)),
  };
}

function isWritten(data: unknown): data is Written {
  if (typeof data !== "object" || data === null) return false;
  const { writer, step } = data as Partial<Written>;
  return typeof writer === "string" && Number.isInteger(step);
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? "null");
  } catch {
    return null;
  }
}

/** A note whose worksheet was not read yet. */
type RawNote = Omit<Note, "worksheet"> & { readonly worksheet: unknown };

function noteOf(text: string | null): RawNote | null {
  const data = parsed(text);
  if (typeof data !== "object" || data === null) return null;
  const { version, by, id, basedOn, at, worksheet } = data as Partial<RawNote> & {
    readonly version?: unknown;
  };
  const isOurs = version === VERSION && isWritten(by) && typeof id === "string";
  if (!isOurs || typeof basedOn !== "number" || typeof at !== "number") return null;
  return { by, id, basedOn, at, worksheet };
}

const keysLeft = (store: InstantStore): readonly string[] =>
  store.keys().filter((key) => key.startsWith(PREFIX));

export const hasNotes = (store: InstantStore): boolean => keysLeft(store).length > 0;

/**
 * Every note left, the oldest first. What is no note of this version is left alone.
 *
 * @param read checks the worksheets inside
 */
export function notesLeft(
  store: InstantStore,
  read: (worksheet: unknown) => WorksheetReading,
): readonly Note[] {
  return keysLeft(store)
    .flatMap((key) => {
      const note = noteOf(store.get(key));
      const reading = note && read(note.worksheet);
      return note && reading?.ok ? { ...note, worksheet: reading.worksheet } : [];
    })
    .sort((a, b) => a.at - b.at || a.by.step - b.by.step);
}

/** Whether a note, or a newer one in its place, still lies there. */
export function isNoteLeft(store: InstantStore, { by, id }: Note): boolean {
  return store.get(keyOf(by.writer, id)) !== null;
}

/** Lets a note go that was taken up, unless something newer was noted in its place. */
export function dropNote(store: InstantStore, { by, id }: Note): void {
  const key = keyOf(by.writer, id);
  if (noteOf(store.get(key))?.by.step === by.step) store.del(key);
}
