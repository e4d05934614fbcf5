// The notes of a file that was opened, joined with those of the same worksheet that is here.

import { united, withNotes } from "../document/notes.ts";
import { sameData } from "../document/same.ts";
import type { Note, Worksheet } from "../document/worksheet.ts";

const bare = ({ notes: _notes, made_on: _on, ...rest }: Worksheet): object => rest;

export type JoinedNotes = {
  /** Notes of both, each once; the very same where the file has none more. */
  readonly notes: readonly Note[];
  readonly more: number;
  /** Whether the file is this worksheet but for its notes. */
  readonly isSame: boolean;
};

/** What a file of the open worksheet brings; null where it is another's. */
export function joinedNotes(open: Worksheet, file: Worksheet): JoinedNotes | null {
  if (open.id === undefined || open.id !== file.id) return null;
  const own = open.notes ?? [];
  const notes = united(own, file.notes ?? []);
  return { notes, more: notes.length - own.length, isSame: sameData(bare(open), bare(file)) };
}

/** A file's worksheet with the notes of both. */
export const withJoined = (file: Worksheet, { notes }: JoinedNotes): Worksheet => withNotes(file, notes);

/** What is said of notes that came in. */
export const joinedSaid = (file: string, more: number): string =>
  more === 0
    ? `All notes of ${file} are here already.`
    : `${more} ${more === 1 ? "note" : "notes"} of ${file} came in, each once.`;
