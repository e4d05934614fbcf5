// What of the notes still tells of a day, and so what the season takes in.

import { AS_READ, saysSo } from "../happened/dip.ts";
import { type Happened, isHappenedWord, tellsFor } from "../happened/happened.ts";
import { parseIsoDate } from "../units/calendar.ts";
import { parseUnit, toSi } from "../units/unit.ts";
import { inForce } from "./note-order.ts";
import type { Note } from "./worksheet.ts";

/** How much a note says, in its unit's SI unit; null where it says nothing that can be read. */
export const amountOf = ({ value, unit = "" }: Pick<Note, "value" | "unit">): number | null =>
  value === undefined || parseUnit(unit) === null ? null : toSi(value, unit);

const sideOf = ({ minute, text }: Note): Happened["side"] =>
  minute !== undefined ? null : saysSo(text, "before") ? "before" : saysSo(text, "after") ? "after" : null;

/** A note as what happened; null: nothing that the season takes in. */
export function happenedOf(note: Note): Happened | null {
  const { what, minute = null, where, by = null } = note;
  const date = parseIsoDate(note.day);
  if (date === null || !isHappenedWord(what)) return null;
  const asRead = saysSo(note.text, AS_READ) ? { asRead: true as const } : {};
  return { date, minute, side: sideOf(note), what, where, amount: amountOf(note), by, ...asRead };
}

/**
 * Notes in force that tell of a day, in order.
 *
 * @param today [days since 1970-01-01]
 */
export function tellingOf(notes: readonly Note[], today: number): readonly Note[] {
  return inForce(notes).filter(({ day, what }) => {
    if (!isHappenedWord(what)) return false;
    const date = parseIsoDate(day);
    return date !== null && date <= today && date >= today - tellsFor(what);
  });
}
