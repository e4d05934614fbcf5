// The order of notes, and which of them are in force.

import { saysSo } from "../happened/dip.ts";
import { MINUTES_A_DAY } from "../units/constants.ts";
import type { Note } from "./worksheet.ts";

/** Earlier first: by day, then by the time of day, those without one first but for what was after the watering, then by id. */
export function inOrder(notes: readonly Note[]): readonly Note[] {
  const key = ({ day, minute, text }: Note) =>
    `${day} ${String(minute ?? (saysSo(text, "after") ? MINUTES_A_DAY : -1)).padStart(4, "0")}`;
  return [...notes].sort(
    (a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
}

/** Notes that no other note in force undoes, in order; those that undo are not among them. */
export function inForce(notes: readonly Note[]): readonly Note[] {
  const undoing = new Map<string, Note[]>();
  for (const note of notes)
    if (note.undoes !== undefined) undoing.set(note.undoes, [...(undoing.get(note.undoes) ?? []), note]);
  const stands = (note: Note, seen: ReadonlySet<string>): boolean => {
    if (seen.has(note.id)) return false;
    const beyond = new Set([...seen, note.id]);
    return !(undoing.get(note.id) ?? []).some((other) => stands(other, beyond));
  };
  return inOrder(notes.filter((note) => note.undoes === undefined && stands(note, new Set())));
}
